import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { checkRulebook } from '../../src/check/check-rulebook.js';
import { tailorRules } from '../../src/decide/tailor-rules.js';
import type { Pack } from '../../src/link/choose-packs.js';
import { linkRules } from '../../src/link/link-rules.js';
import { packsAlone } from '../../src/link/packs-alone.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import type { Finding } from '../../src/read/finding.js';
import { createReader, type Located, type SourceFile } from '../../src/read/read-documents.js';
import type { FixtureDocument, PackDocument } from '../../src/read/types.gen.js';

const house = fileURLToPath(new URL('../language/house/', import.meta.url));
const schemas = fileURLToPath(new URL('../../rules/schema/', import.meta.url));

/** The texts of the tiny house of the language cases, by path. */
export function houseFiles(): Map<string, string> {
  const paths = readdirSync(house, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.yaml'));
  return new Map(paths.sort().map((path) => [path.replaceAll('\\', '/'), readFileSync(join(house, path), 'utf8')]));
}

/** Reads documents against the real schemas. */
export const read = createReader(
  readdirSync(schemas).map((name) => JSON.parse(readFileSync(join(schemas, name), 'utf8')) as object),
);

/** Reads, links, tailors and proves a house that is held in memory, as the command line does with folders. */
export function check(files: ReadonlyMap<string, string>, on = '2026-06-01'): { findings: Finding[]; rulebook?: Rulebook } {
  const sources = [...files].map(([file, text]): SourceFile => ({ file, bytes: new TextEncoder().encode(text) }));
  const { documents, findings } = read(sources);
  if (findings.length > 0) return { findings };
  const under = (folder: string) => documents.filter(({ file }) => file.startsWith(folder));
  const packs = ['rules/base', 'rules/regions/north'].flatMap((folder) => asPack(under(folder)) ?? []);
  const { rules, findings: linked } = linkRules(packs, under('clinic'), on, proveStrict);
  if (rules === undefined) return { findings: linked };
  const rulebook = tailorRules(rules);
  const isFixture = (each: Located): each is Located<FixtureDocument> => each.data.kind === 'fixture';
  const report = checkRulebook(rulebook, documents.filter(isFixture), packsAlone(packs, rulebook.clinic, on, proveStrict));
  return { findings: [...linked, ...report.findings], rulebook };
}

function asPack(documents: Located[]): Pack | undefined {
  const head = documents.find((each): each is Located<PackDocument> => each.data.kind === 'pack');
  return head && { id: head.data.id, head, documents };
}
