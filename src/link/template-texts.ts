/** A line of a template that has words, with the blanks and marks of layout before and behind it. */
interface Line {
  before: string;
  text: string;
  after: string;
}

/** The texts of a template: each line that has words, without the blanks around it. */
export function templateTexts(template: string): { text: string; line: number; column: number }[] {
  return template.split('\n').flatMap((written, index) => {
    const line = lineOf(written);
    return line === undefined ? [] : [{ text: line.text, line: index + 1, column: line.before.length + 1 }];
  });
}

/** A template with other texts in its lines. */
export function mapTemplate(template: string, change: (text: string) => string): string {
  return template
    .split('\n')
    .map((written) => {
      const line = lineOf(written);
      return line === undefined ? written : `${line.before}${change(line.text)}${line.after}`;
    })
    .join('\n');
}

/** Expressions, references and marks of a template: all that is no word. */
export const tokenPattern = String.raw`\{\{[^}]*\}\}|\[\]\([^)]*\)|\{[\w-]+\}`;
const tokens = new RegExp(tokenPattern, 'g');

function lineOf(written: string): Line | undefined {
  const [, before = '', text = '', after = ''] = /^(\s*)(.*?)(\s*)$/.exec(written) ?? [];
  if (/^:{2,}/.test(text) || !/\p{L}/u.test(text.replace(tokens, ''))) return undefined;
  return { before, text, after };
}

/** Whose texts a template holds: `templates/manual` of `manual/procedure`. */
export function ownerOfTemplate(name: string): string {
  return ['templates', ...name.split('/').slice(0, -1)].join('/');
}
