/** What is laid over the tiny house before the command runs. */
export type Layer =
  | { kind: 'file' | 'edit' | 'bytes'; path: string; lines: string[] }
  | { kind: 'link'; path: string; target: string }
  | { kind: 'remove'; path: string };

/** What a command printed and how it ended. */
export interface Outcome {
  exit: number;
  out: string[];
  err: string[];
}

/** One language case: a title, what is laid over the house, the command line, and what it must print. */
export interface Case {
  title: string;
  layers: Layer[];
  args: string[];
  input: string[];
  expected: Outcome | undefined;
  /** The file up to what is expected, as it stands. */
  head: string;
}

const firstExpected = /^=== exit\b/m;

/**
 * Reads a case. The first line is its title; every other part starts with a line `=== kind rest`:
 *
 *     === file PATH     the whole text of a file
 *     === edit PATH     lines of a file of the house: `-` as they are, `+` what replaces them
 *     === bytes PATH    hexadecimal, or text in double quotes with JSON escapes; `* 40` behind it repeats it
 *     === link PATH -> TARGET
 *     === remove PATH
 *     === input         lines on standard input
 *     === run ARGS      the command line without `rulebook`; single quotes keep blanks together
 *     === exit CODE     from here on `UPDATE_CASES=1` writes it: the exit code, then
 *     === out           what stands on standard output, and
 *     === err           on standard error
 *
 * @throws Error when a part is misspelt or missing.
 */
export function readCase(text: string): Case {
  const [title = '', ...lines] = text.split('\n');
  if (title.trim() === '' || title.startsWith('===')) throw new Error('the first line of a case is its title');
  const read: Case = { title, layers: [], args: [], input: [], expected: undefined, head: headOf(text) };
  for (const { kind, rest, body } of partsOf(lines)) addPart(read, kind, rest, body);
  if (read.args.length === 0) throw new Error('the case runs nothing: add `=== run`');
  return read;
}

/** The text of a case with what was printed as its expected part. */
export function writeCase({ head }: Case, { exit, out, err }: Outcome): string {
  const part = (name: string, lines: string[]) => (lines.length === 0 ? [] : [`=== ${name}`, ...lines]);
  return `${[head, `=== exit ${exit}`, ...part('out', out), ...part('err', err)].join('\n')}\n`;
}

function headOf(text: string): string {
  const end = firstExpected.exec(text)?.index ?? text.length;
  return text.slice(0, end).trimEnd();
}

function partsOf(lines: readonly string[]): { kind: string; rest: string; body: string[] }[] {
  const parts: { kind: string; rest: string; body: string[] }[] = [];
  for (const line of lines) {
    const [, kind, rest = ''] = /^=== ([a-z]+)(?: (.*))?$/.exec(line) ?? [];
    if (kind !== undefined) parts.push({ kind, rest, body: [] });
    else if (parts.length > 0) parts.at(-1)?.body.push(line);
    else if (line.trim() !== '') throw new Error(`\`${line}\` stands before the first \`===\``);
  }
  return parts.map((part) => ({ ...part, body: withoutLastBlanks(part.body) }));
}

function addPart(read: Case, kind: string, rest: string, body: string[]): void {
  switch (kind) {
    case 'file':
    case 'edit':
    case 'bytes':
      read.layers.push({ kind, path: rest, lines: body });
      break;
    case 'link': {
      const [path = '', target = ''] = rest.split(' -> ');
      read.layers.push({ kind, path, target });
      break;
    }
    case 'remove':
      read.layers.push({ kind, path: rest });
      break;
    case 'run':
      read.args = [...rest.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
      break;
    case 'input':
      read.input = body;
      break;
    case 'exit':
      read.expected = { exit: Number(rest), out: [], err: [] };
      break;
    case 'out':
    case 'err':
      if (read.expected === undefined) throw new Error(`\`=== ${kind}\` stands before \`=== exit\``);
      read.expected[kind] = body;
      break;
    default:
      throw new Error(`unknown part \`=== ${kind}\``);
  }
}

function withoutLastBlanks(lines: string[]): string[] {
  return lines.slice(0, lines.findLastIndex((line) => line !== '') + 1);
}
