import type { Condition, Fact, Rule, Rulebook, Test } from '../../src/link/rulebook.js';
import { rulebookOf } from '../decide/random-rulebook.js';

const place = { file: 'x', line: 1, column: 1 };

/**
 * A rulebook with one decision of many random rules and a small one whose answer it looks at. A few rules have conditions of many
 * alternatives in many parts.
 */
export function manyRules(count: number, random: () => number): Rulebook {
  const below = (end: number) => Math.floor(random() * end);
  const letters = (n: number, letter: string) => Array.from({ length: n }, (_, index) => `${letter}${index}`);
  const fact = (id: string, type: Fact['type'], more: Partial<Fact> = {}): Fact => ({
    id,
    label: id,
    type,
    members: [],
    statedBy: 'person',
    question: id,
    ...more,
  });
  const facts = [
    fact('item', 'enum', { members: letters(60, 'i') }),
    fact('kind', 'enum', { members: letters(6, 'k') }),
    fact('parts', 'set', { members: letters(14, 'p') }),
    fact('marks', 'set', { members: letters(24, 'm') }),
    fact('flag', 'boolean'),
    fact('other', 'boolean', { onlyWhen: { kind: 'test', fact: 'flag', test: { kind: 'one-of', members: [true] } } }),
    fact('time', 'quantity', { unit: 'min' }),
    fact('heat', 'quantity', {
      unit: '[degF]',
      onlyWhen: { kind: 'test', fact: 'kind', test: { kind: 'one-of', members: ['k1', 'k2'] } },
    }),
    fact('uses', 'count'),
    fact('day', 'date'),
    fact('small', 'answer', { decision: 'small', members: ['low', 'mid', 'high'] }),
  ];
  const some = (of: readonly string[]) => {
    const picked = of.filter(() => random() < 2.5 / of.length);
    return picked.length > 0 ? picked : [of[below(of.length)] ?? ''];
  };
  const testOf = ({ type, members }: Fact): Test => {
    switch (type) {
      case 'boolean':
        return { kind: 'one-of', members: [random() < 0.5] };
      case 'enum':
      case 'answer':
        return { kind: random() < 0.8 ? 'one-of' : 'none-of', members: some(members) };
      case 'set':
        return { kind: (['any-of', 'all-of', 'none-of'] as const)[below(3)] ?? 'any-of', members: some(members) };
      default: {
        const op = (['at-least', 'at-most', 'above', 'below'] as const)[below(4)] ?? 'above';
        const value = type === 'date' ? 20_570 + below(5) : 60 * below(9);
        return { kind: 'compare', op, value, shown: String(value) };
      }
    }
  };
  const conditionOf = (of: readonly Fact[], depth: number): Condition => {
    const each = of[below(of.length)];
    if (each === undefined) throw new RangeError('no facts');
    if (depth === 0 || random() < 0.3) return { kind: 'test', fact: each.id, test: testOf(each) };
    if (random() < 0.1) return { kind: 'not', of: conditionOf(of, depth - 1) };
    return { kind: random() < 0.7 ? 'all' : 'any', of: [1, 2, 3].map(() => conditionOf(of, depth - 1)) };
  };
  const manifold = (of: readonly Fact[]): Condition => ({
    kind: 'all',
    of: [1, 2, 3, 4].map(() => ({ kind: 'any', of: [1, 2, 3, 4, 5].map(() => conditionOf(of, 0)) })),
  });
  const outcomes = ['low', 'mid', 'high'];
  const ruleOf = (decision: string, index: number, when: Condition): Rule => ({
    id: `${decision}/r${index}`,
    name: `r${index}`,
    when,
    outcome: outcomes[below(3)] ?? 'low',
    addsOnly: false,
    because: `r${index}`,
    cautions: index % 50 === 0 ? [`caution ${index}`] : [],
    source: { id: 'common-practice' },
    examples: [],
    layer: 'base',
    place,
  });
  const verdict = (id: string, rules: Rule[]) => ({
    kind: 'verdict' as const,
    id,
    title: id,
    stage: 'x',
    order: 1,
    question: id,
    outcomes,
    say: {},
    otherwise: 'mid',
    rules,
    gaps: [],
    retired: [],
    place,
  });
  const plain = facts.filter(({ type }) => type !== 'answer');
  const small = Array.from({ length: 7 }, (_, index) =>
    ruleOf('small', index, index === 3 ? manifold(plain) : conditionOf(plain, 1)),
  );
  const large = Array.from({ length: count }, (_, index) =>
    ruleOf(
      'large',
      index,
      index % 100 === 7 ? manifold(facts) : { kind: 'all', of: [conditionOf(facts, 2), conditionOf(facts, 1)] },
    ),
  );
  const rulebook = rulebookOf([verdict('large', large), verdict('small', small)]);
  return { ...rulebook, facts: new Map(facts.map((each) => [each.id, each])) };
}
