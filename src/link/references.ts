import type { Finding, Place } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
import type { Located, Path } from '../read/read-documents.js';
import { policyLinks } from './link-policies.js';
import { answerOf } from './link-requirements.js';
import { type Linking, listed, report } from './linking.js';
import type { LinkedRules } from './rulebook.js';

/** A reference in a text: `[](limit:holding.longest-dry-wait)`. */
export interface Reference {
  scheme: string;
  id: string;
}

/** The references in a text, in order. */
export function referencesIn(text: string): Reference[] {
  return [...text.matchAll(/\[\]\(([a-z]+):([^)\s]*)\)/g)].map(([, scheme = '', id = '']) => ({ scheme, id }));
}

/** Reports references in the texts of all layers that lead nowhere or cannot be read. */
export function checkReferences(linking: Linking, rules: LinkedRules): void {
  const known = knownIds(rules);
  for (const { documents } of linking.layers)
    for (const document of documents)
      for (const { text, path } of textsWithReferences(document.data)) {
        for (const [written = ''] of text.matchAll(/\[\]\([^)]*\)?/g)) {
          const [reference] = referencesIn(written);
          const place = document.atWords(path, written);
          if (reference !== undefined) checkReference(linking, known, reference, place);
          else report(linking, 'E321', place, `${quoted(written)} is no reference`, 'write `[](limit:id)`, without blanks');
        }
      }
}

/** What may answer a requirement. A section is looked for when the manual is written. */
const answering: ReadonlySet<string> = new Set(['policy', 'procedure', 'decision', 'task', 'form', 'limit', 'section']);

/** Reports an answer to a requirement that is of no use as one, or leads nowhere. */
function checkAnswers(linking: Linking, rules: LinkedRules): void {
  const all = knownIds(rules);
  const points = [...rules.policies.values()].flatMap(({ points }) => points.map(({ id }) => id));
  const known = new Map([...all].filter(([scheme]) => answering.has(scheme)));
  known.set('policy', new Set([...rules.policies.keys(), ...points]));
  for (const { documents } of linking.layers)
    for (const document of documents)
      if (document.data.kind === 'requirements')
        document.data.items.forEach((item, index) => {
          item['answered-by']?.forEach((written, position) => {
            const answer = answerOf(written);
            if (answer.scheme !== 'section')
              checkReference(linking, known, answer, document.at(['items', index, 'answered-by', position]));
          });
        });
}

/** Reports an id under a key such as `instead:` or `record:` that leads nowhere. */
export function checkLinks(linking: Linking, rules: LinkedRules): void {
  checkAnswers(linking, rules);
  const known = knownIds(rules);
  const expect = (scheme: string, id: string | undefined, document: Located, path: Path) => {
    if (id !== undefined) checkReference(linking, known, { scheme, id }, document.at(path));
  };
  for (const { documents } of linking.layers)
    for (const document of documents) {
      const { data } = document;
      if (data.kind === 'decision')
        data.rules.forEach((rule, index) => expect('procedure', rule.instead, document, ['rules', index, 'instead']));
      if (data.kind === 'overrides')
        data.changes.forEach((change, index) => {
          if (change.change === 'add-rule' || change.change === 'replace-rule')
            expect('procedure', change.rule.instead, document, ['changes', index, 'rule', 'instead']);
        });
      if (data.kind === 'tasks')
        for (const [id, task] of Object.entries(data.tasks)) expect('form', task.record, document, ['tasks', id, 'record']);
      if (data.kind === 'procedure') {
        data.records?.forEach((id, index) => expect('form', id, document, ['records', index]));
        data.decisions?.forEach((id, index) => expect('decision', id, document, ['decisions', index]));
      }
      for (const { scheme, id, path } of policyLinks(document)) expect(scheme, id, document, path);
    }
}

function checkReference(
  linking: Linking,
  known: ReadonlyMap<string, ReadonlySet<string>>,
  { scheme, id }: Reference,
  place: Place,
): void {
  const ids = known.get(scheme);
  if (ids === undefined) {
    const help = didYouMean(scheme, known.keys()) ?? `kinds are ${quotedList(known.keys())}`;
    report(linking, 'E321', place, `unknown kind of reference ${quoted(`${scheme}:`)}`, help);
  } else if (scheme === 'every' && !ids.has(id) && known.get('task')?.has(id))
    report(linking, 'E306', place, `task \`${id}\` has no interval`, 'it is done after events; name it with `[](task:id)`');
  else if (!ids.has(id) && !linking.passedOver.has(`${scheme} ${id}`)) {
    const { code, word } = wordFor(scheme);
    report(linking, code, place, `unknown ${word} ${quoted(id)}`, didYouMean(id, ids) ?? helpFor(scheme) ?? listed([...ids]));
  }
}

function wordFor(scheme: string): { code: Finding['code']; word: string } {
  switch (scheme) {
    case 'limit':
      return { code: 'E303', word: 'limit' };
    case 'source':
      return { code: 'E304', word: 'source' };
    case 'term':
    case 'role':
    case 'zone':
      return { code: 'E305', word: scheme };
    case 'machine':
      return { code: 'E305', word: 'machine kind' };
    case 'section':
      return { code: 'E305', word: 'stage' };
    default:
      return { code: 'E306', word: scheme === 'every' ? 'task' : scheme };
  }
}

function helpFor(scheme: string): string | undefined {
  return scheme === 'contact' ? 'add it to `contacts:` in the clinic document' : undefined;
}

function knownIds(rules: LinkedRules): Map<string, ReadonlySet<string>> {
  const terms = (domain: string) =>
    new Set([...rules.terms.values()].filter((term) => term.domain === domain).map(({ id }) => id));
  return new Map<string, ReadonlySet<string>>([
    ['limit', new Set(rules.limits.keys())],
    ['every', new Set([...rules.tasks.values()].filter(({ every }) => every !== undefined).map(({ id }) => id))],
    ['task', new Set(rules.tasks.keys())],
    ['procedure', new Set(rules.procedures.keys())],
    ['policy', new Set(rules.policies.keys())],
    ['decision', new Set(rules.decisions.keys())],
    ['form', new Set(rules.forms.keys())],
    ['term', new Set(rules.terms.keys())],
    ['source', new Set(rules.sources.keys())],
    ['role', terms('role')],
    ['zone', terms('zone')],
    ['machine', terms('machine-kind')],
    ['contact', new Set(rules.clinic.contacts.map(({ id }) => id))],
    ['section', terms('stage')],
  ]);
}

/** The texts in a document that hold something like a reference, in order. */
function textsWithReferences(document: unknown): { text: string; path: Path }[] {
  const found: { text: string; path: Path }[] = [];
  const path: (string | number)[] = [];
  const look = (value: unknown): void => {
    if (typeof value === 'string') {
      if (value.includes('[](')) found.push({ text: value, path: [...path] });
    } else if (value !== null && typeof value === 'object')
      for (const [key, each] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
        path.push(key);
        look(each);
        path.pop();
      }
  };
  look(document);
  return found;
}
