import type { Choice, Fact, Rule, Rulebook, Verdict } from '../../src/link/rulebook.js';
import { rulebookOf } from '../decide/random-rulebook.js';

/** Strings that would break out of quotes, comments, templates or tags, or reach the prototype of an object. */
export const hostile = [
  '"quoted"',
  "it's",
  '`$' + '{globalThis.harmed = true}`',
  "');globalThis.harmed=true;('",
  '");globalThis.harmed=true;("',
  '\\',
  "\\');globalThis.harmed=true;//",
  '</script><script>globalThis.harmed=true</script>',
  '<!-- ',
  '*/globalThis.harmed=true;/*',
  'line\nbreak\r',
  '\u2028\u2029',
  '\u0000',
  '\ud800',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '$&$1$`',
  '12',
];

const place = { file: 'x', line: 1, column: 1 };
const fact = (id: string, type: Fact['type'], members: string[]): Fact => ({
  id,
  label: id,
  type,
  members,
  statedBy: 'person',
  question: id,
});
const rule = (decision: string, name: string, more: Partial<Rule> & Pick<Rule, 'when'>): Rule => ({
  id: `${decision}/${name}`,
  name,
  addsOnly: false,
  because: name,
  instead: name,
  cautions: [name],
  source: { id: name, at: name },
  examples: [],
  layer: 'base',
  place,
  ...more,
});

/** A rulebook in which every word is hostile: a verdict and a choice for each, over an enum and a set for each. */
export function hostileRulebook(): Rulebook {
  const enums = hostile.map((id) => fact(id, 'enum', hostile));
  const sets = hostile.map((id) => fact(`set ${id}`, 'set', hostile));
  const verdicts = hostile.map((id): Verdict => {
    const rules = hostile.map((name, index) =>
      rule(id, name, {
        outcome: hostile[(index * 7) % 5] ?? '',
        when: {
          kind: index % 2 === 0 ? 'any' : 'all',
          of: [
            { kind: 'test', fact: name, test: { kind: 'one-of', members: [id, name] } },
            { kind: 'test', fact: `set ${name}`, test: { kind: 'any-of', members: [id, "it's"] } },
          ],
        },
      }),
    );
    return {
      kind: 'verdict',
      id,
      title: id,
      stage: id,
      order: 1,
      question: id,
      outcomes: hostile.slice(0, 5),
      say: {},
      otherwise: hostile[2] ?? '',
      rules,
      gaps: [],
      retired: [],
      place,
    };
  });
  const choice: Choice = {
    kind: 'choice',
    id: 'choice `',
    title: id0,
    stage: id0,
    order: 1,
    question: id0,
    from: ['washer'],
    prefer: [],
    rules: hostile.map((name) =>
      rule('choice `', name, {
        when: { kind: 'test', fact: name, test: { kind: 'none-of', members: [name] } },
        needs: { kind: 'test', fact: '__proto__', test: { kind: 'one-of', members: [name, "it's"] } },
      }),
    ),
    gaps: [],
    retired: [],
    place,
  };
  const rulebook = rulebookOf([...verdicts, choice], [{}, Object.fromEntries([['__proto__', "it's"]])]);
  const { clinic } = rulebook;
  return {
    ...rulebook,
    facts: new Map([...enums, ...sets].map((each) => [each.id, each])),
    clinic: {
      ...clinic,
      name: hostile.join(''),
      document: { ...clinic.document, title: hostile.join('') },
      facts: Object.fromEntries([
        ['__proto__', 'constructor'],
        ['set toString', ["it's", '\\']],
      ]),
    },
  };
}

const id0 = hostile.join(' ');
