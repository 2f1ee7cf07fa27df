import type { Citation, Condition, Decision, Test } from '../../link/rulebook.js';
import { formatQuantity } from '../../measure/quantity.js';
import { asGiven, type CutFact, countCells, passingAnswers, passingCells, setTest } from './cells.js';
import { bitsOf, mostClassesInABitSet } from './selections.js';

/** A condition for walking: a number is a test, `[0, ...]` all, `[1, ...]` any, `[2, tree]` not. */
type Tree = number | [0 | 1 | 2, ...Tree[]];

/** Collects the tests of conditions, each once. */
export class TestTexts {
  private readonly places = new Map<string, number>();
  private readonly tests: unknown[] = [];
  private readonly sources = new Map<string, number>();

  constructor(private readonly facts: ReadonlyMap<string, CutFact>) {}

  treeOf(condition: Condition): Tree {
    switch (condition.kind) {
      case 'all':
        return [0, ...condition.of.map((each) => this.treeOf(each))];
      case 'any':
        return [1, ...condition.of.map((each) => this.treeOf(each))];
      case 'not':
        return [2, this.treeOf(condition.of)];
      case 'test':
        return this.placeOf(condition.fact, condition.test);
    }
  }

  /** The rules of a decision: because, the source's place, the tree of the condition, cautions, instead. */
  rulesOf({ rules }: Decision): unknown[] {
    return rules.map(({ because, source, instead, cautions, when }) => [
      because,
      this.sourceOf(source),
      this.treeOf(when),
      ...(cautions.length > 0 || instead !== undefined ? [cautions] : []),
      ...(instead === undefined ? [] : [instead]),
    ]);
  }

  /** All tests collected, by fact the tree of its `only-when`, and the sources. Asked last. */
  all(): unknown {
    const guards = [...this.facts.values()].flatMap(({ index, fact }) =>
      fact.onlyWhen === undefined ? [] : [[index, this.treeOf(fact.onlyWhen)]],
    );
    return [this.tests, guards, [...this.sources.keys()].map((text): unknown => JSON.parse(text))];
  }

  private sourceOf(source: Citation): number {
    const key = JSON.stringify(source);
    const place = this.sources.get(key) ?? this.sources.size;
    this.sources.set(key, place);
    return place;
  }

  private factOf(id: string): CutFact {
    const fact = this.facts.get(id);
    if (fact === undefined) throw new RangeError(`unknown fact ${id}`);
    return fact;
  }

  private placeOf(id: string, test: Test): number {
    const key = JSON.stringify([id, test]);
    const known = this.places.get(key);
    if (known !== undefined) return known;
    const place = this.tests.length;
    this.places.set(key, place);
    this.tests.push(testOf(this.factOf(id), test));
    return place;
  }
}

/**
 * `[fact, what passes, asking, bound, limit]`. What passes is a bit set of cells (a list of them where there are many), of classes or of
 * answers. Which members are asked for follows from it; bound and limit are those of numbers.
 */
function testOf(cut: CutFact, test: Test): unknown {
  const { index, fact, cells } = cut;
  const asking = askings.indexOf(test.kind === 'compare' ? test.op : test.kind);
  if (cells.kind === 'answer') return [index, passingAnswers(cells.possible, test), asking];
  if (cells.kind === 'set') {
    const { classes } = setTest(cells.classes, test, false);
    const isWide = cells.classes.length > mostClassesInABitSet;
    return [index, isWide ? classes : bitsOf(classes), asking];
  }
  const passing = passingCells(cut, test);
  const isNarrow = countCells(cells) <= 32;
  const bound = test.kind !== 'compare' ? [] : [asGiven(fact, test.value), ...(test.limit === undefined ? [] : [test.limit])];
  return [index, isNarrow ? bitsOf(passing) : passing, asking, ...bound];
}

/** The names of what tests ask, in the order of their numbers. */
export const askings = ['any-of', 'all-of', 'none-of', 'one-of', 'at-least', 'at-most', 'above', 'below'] as const;

/** What the module says about a fact: type, unit, bounds in words, members. */
export function factText({ fact }: CutFact): unknown[] {
  const { type, members, unit, minimum, maximum } = fact;
  const bounds = [
    ...(minimum === undefined ? [] : [`at least ${formatQuantity(minimum)}`]),
    ...(maximum === undefined ? [] : [`at most ${formatQuantity(maximum)}`]),
  ];
  const more = [unit ?? 0, bounds.join(', '), members];
  return [types.indexOf(type), ...(unit === undefined && members.length === 0 ? [] : more)];
}

/** The names of the types of facts in the order of their numbers. */
export const types = ['boolean', 'enum', 'answer', 'set', 'count', 'date', 'quantity'] as const;
