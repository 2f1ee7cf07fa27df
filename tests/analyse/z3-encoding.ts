import { type Answering, knownFacts, needsOf, programsOf } from '../../src/decide/decide.js';
import { passes, truthOf } from '../../src/decide/truth.js';
import type { Choice, Condition, Fact, Rule, Situation, Test, Verdict } from '../../src/link/rulebook.js';
import { inBaseUnit, leastOf } from '../../src/measure/quantity.js';

/** A formula as SMT-LIB text. */
export type Term = string;

/** When a condition is true, and when it is not false. */
export interface Known {
  isTrue: Term;
  notFalse: Term;
}

/** One decision as terms. */
export interface Decided {
  rules: (Known & { rule: Rule })[];
  /** That an answer is among the possible ones. */
  possible: Map<string, Term>;
  /** That it is the outcome. */
  outcome: Map<string, Term>;
}

/**
 * Decisions as SMT-LIB text, straight from the conditions: numbers are real or whole numbers, members of an enumeration are numbered,
 * each member of a set is a truth value. Nothing of it is shared with the product's own analysis.
 */
export class Script {
  private readonly lines: string[] = [];
  private readonly named = new Map<string, Term>();
  private readonly stated = new Map<string, { stated: Term; fact: Fact }>();
  private count = 0;

  /** @param versions the rulebooks spoken of: a fact may have a value that it can have in one of them */
  constructor(private readonly versions: readonly Answering[]) {}

  get text(): string {
    return this.lines.join('\n');
  }

  /** A name for a formula, so that the text stays short. */
  name(term: Term): Term {
    if (!term.startsWith('(')) return term;
    const before = this.named.get(term);
    if (before !== undefined) return before;
    this.count += 1;
    // No fact is called so.
    const name = `$${this.count}`;
    this.lines.push(`(define-fun ${name} () Bool ${term})`);
    this.named.set(term, name);
    return name;
  }

  /** A switch that turns a formula on where it is assumed. */
  switchFor(term: Term): string {
    this.count += 1;
    const name = `$${this.count}`;
    this.lines.push(`(declare-const ${name} Bool)`, `(assert (=> ${name} ${term}))`);
    return name;
  }

  /** Facts spoken of so far: what says whether they are stated. Names of a program's facts begin with `program `. */
  facts(): { id: string; stated: Term; fact: Fact }[] {
    return [...this.stated].map(([id, each]) => ({ id, ...each }));
  }

  /** Whether a fact is stated. Declares it, with the values that it may have. */
  statedOf(id: string): Term {
    const before = this.stated.get(id);
    if (before !== undefined) return before.stated;
    const facts = this.versions.flatMap(({ facts }) => facts.get(id.replace(/^program /, '')) ?? []);
    const [fact] = facts;
    if (fact === undefined) throw new RangeError(`no fact ${id}`);
    const stated = `|${id} stated|`;
    this.stated.set(id, { stated, fact });
    this.lines.push(`(declare-const ${stated} Bool)`);
    const members = membersOf(facts);
    if (fact.type === 'set') this.lines.push(...members.map((each) => `(declare-const |${id} has ${each}| Bool)`));
    else if (fact.type === 'boolean') this.lines.push(`(declare-const |${id}| Bool)`);
    else if (members.length > 0)
      this.lines.push(`(declare-const |${id}| Int)`, `(assert (and (<= 0 |${id}|) (< |${id}| ${members.length})))`);
    else {
      this.lines.push(`(declare-const |${id}| ${isWhole(fact) ? 'Int' : 'Real'})`);
      this.lines.push(`(assert ${or(facts.map((each) => within(id, each)))})`);
    }
    return stated;
  }

  /** That a stated value passes a test. */
  private passes(id: string, test: Test): Term {
    const versions = this.versions.flatMap(({ facts }) => facts.get(id.replace(/^program /, '')) ?? []);
    const [fact] = versions;
    if (fact === undefined) throw new RangeError(`no fact ${id}`);
    if (test.kind === 'compare') return `(${signs[test.op]} ${numberOf(id, fact)} ${real(test.value)})`;
    if (fact.type === 'set') {
      const has = test.members.map((each) => (fact.members.includes(String(each)) ? `|${id} has ${each}|` : 'false'));
      if (test.kind === 'all-of') return and(has);
      return test.kind === 'none-of' ? not(or(has)) : or(has);
    }
    const is = test.members.map((each) => this.is(id, fact, each));
    return test.kind === 'none-of' ? not(or(is)) : or(is);
  }

  private is(id: string, fact: Fact, value: string | boolean): Term {
    if (fact.type === 'boolean') return value === true ? `|${id}|` : `(not |${id}|)`;
    const at = membersOf(this.versions.flatMap(({ facts }) => facts.get(fact.id) ?? [])).indexOf(String(value));
    return at === -1 ? 'false' : `(= |${id}| ${at})`;
  }

  /**
   * A condition of one rulebook.
   *
   * @param isAsked whether answers that the caller states count
   * @param of whose facts it looks at: '' for the situation, `program ` for those of any program
   */
  condition(rulebook: Answering, condition: Condition, isAsked: boolean, of = ''): Known {
    switch (condition.kind) {
      case 'all':
      case 'any': {
        const parts = condition.of.map((each) => this.condition(rulebook, each, isAsked, of));
        const join = condition.kind === 'all' ? and : or;
        return { isTrue: join(parts.map(({ isTrue }) => isTrue)), notFalse: join(parts.map(({ notFalse }) => notFalse)) };
      }
      case 'not': {
        const { isTrue, notFalse } = this.condition(rulebook, condition.of, isAsked, of);
        return { isTrue: not(notFalse), notFalse: not(isTrue) };
      }
      case 'test': {
        const fact = rulebook.facts.get(condition.fact);
        if (fact === undefined) throw new RangeError(`no fact ${condition.fact}`);
        const itself =
          fact.type === 'answer'
            ? this.answer(rulebook, fact, condition.test, isAsked)
            : this.value(of + fact.id, condition.test, rulebook.clinic.facts[fact.id]);
        if (fact.onlyWhen === undefined) return itself;
        const guard = this.condition(rulebook, fact.onlyWhen, isAsked, of);
        return { isTrue: and([guard.isTrue, itself.isTrue]), notFalse: and([guard.notFalse, itself.notFalse]) };
      }
    }
  }

  private value(id: string, test: Test, ofClinic: Situation[string] | undefined): Known {
    const stated = this.statedOf(id);
    const passing = this.passes(id, test);
    const otherwise = ofClinic === undefined ? undefined : passes(ofClinic, test);
    const given = (unstated: boolean) => this.name(`(ite ${stated} ${passing} ${unstated})`);
    return { isTrue: given(otherwise === true), notFalse: given(otherwise !== false) };
  }

  /** The outcomes that an answer can still have; one that is told counts alone where it is among them. */
  private answer(rulebook: Answering, fact: Fact, test: Test, isAsked: boolean): Known {
    const { possible } = this.decision(rulebook, fact.decision ?? '', false);
    const stated = isAsked ? this.statedOf(fact.id) : 'false';
    const told = (answer: string): Term =>
      or([
        isAsked ? and([stated, this.is(fact.id, fact, answer)]) : 'false',
        and([not(stated), String(rulebook.clinic.facts[fact.id] === answer)]),
      ]);
    const anyTold = or([...possible].map(([answer, can]) => and([told(answer), can])));
    const counting = [...possible].map(([answer, can]) => ({
      passes: passes(answer, test) === true,
      counts: and([can, or([not(anyTold), told(answer)])]),
    }));
    return {
      isTrue: this.name(and(counting.flatMap((each) => (each.passes ? [] : [not(each.counts)])))),
      notFalse: this.name(or(counting.flatMap((each) => (each.passes ? [each.counts] : [])))),
    };
  }

  private readonly decided = new Map<Answering, Map<string, Decided>>();

  /** The answer to one decision. */
  decision(rulebook: Answering, id: string, isAsked = true): Decided {
    const ofRulebook = this.decided.get(rulebook) ?? new Map<string, Decided>();
    this.decided.set(rulebook, ofRulebook);
    const before = ofRulebook.get(`${id} ${isAsked}`);
    if (before !== undefined) return before;
    const decision = rulebook.decisions.get(id);
    if (decision === undefined) throw new RangeError(`no decision ${id}`);
    const rules = decision.rules.map((rule) => {
      const { isTrue, notFalse } = this.condition(rulebook, rule.when, isAsked);
      return { rule, isTrue: this.name(isTrue), notFalse: this.name(notFalse) };
    });
    const decided = decision.kind === 'verdict' ? this.verdict(decision, rules) : this.choice(rulebook, decision, rules);
    ofRulebook.set(`${id} ${isAsked}`, decided);
    return decided;
  }

  /** The floor is the most restrictive outcome of a true rule, or `otherwise`; unknown rules may lift the answer above it. */
  private verdict({ outcomes, otherwise }: Verdict, rules: Decided['rules']): Decided {
    const trueAt = outcomes.map((each) =>
      this.name(or(rules.flatMap(({ rule, isTrue }) => (rule.outcome === each ? [isTrue] : [])))),
    );
    const openAt = outcomes.map((each) =>
      or(rules.flatMap(({ rule, isTrue, notFalse }) => (rule.outcome === each ? [and([notFalse, not(isTrue)])] : []))),
    );
    const noneTrue = not(or(trueAt));
    const possible = outcomes.map((each, rank) => {
      const floor = and([trueAt[rank] ?? 'false', ...trueAt.slice(rank + 1).map(not)]);
      const lifted = and([openAt[rank] ?? 'false', ...trueAt.slice(rank).map(not)]);
      return this.name(or([floor, ...(each === otherwise ? [noneTrue] : []), lifted]));
    });
    return {
      rules,
      possible: new Map(outcomes.map((each, rank) => [each, possible[rank] ?? 'false'])),
      outcome: new Map(
        outcomes.map((each, rank) => [each, this.name(and([possible[rank] ?? 'false', ...possible.slice(rank + 1).map(not)]))]),
      ),
    };
  }

  private choice(rulebook: Answering, decision: Choice, rules: Decided['rules']): Decided {
    const speaking = rules.filter(({ rule }) => !rule.addsOnly);
    const speaks = or(speaking.map(({ isTrue }) => isTrue));
    const speaksLater = or(speaking.map(({ notFalse }) => notFalse));
    const programs = programsOf(decision, rulebook).map(({ id, facts }) => {
      const lacking = rules.filter(({ rule }) => truthOf(needsOf(rule), knownFacts(rulebook, facts)) !== true);
      return {
        id,
        meets: this.name(and([speaks, ...lacking.map(({ notFalse }) => not(notFalse))])),
        mayMeet: this.name(and([speaksLater, ...lacking.map(({ isTrue }) => not(isTrue))])),
      };
    });
    const none = this.name(not(or(programs.map(({ meets }) => meets))));
    const first = programs.map(({ id, meets }, index): [string, Term] => [
      id,
      this.name(and([meets, ...programs.slice(0, index).map((each) => not(each.meets))])),
    ]);
    return {
      rules,
      possible: new Map([...programs.map(({ id, mayMeet }): [string, Term] => [id, mayMeet]), ['none', none]]),
      outcome: new Map([...first, ['none', none]]),
    };
  }

  /** That any program, with whatever its sheet states, is offered for certain. */
  offersAny(rulebook: Answering, id: string): Term {
    const { rules } = this.decision(rulebook, id);
    const speaks = or(rules.flatMap(({ rule, isTrue }) => (rule.addsOnly ? [] : [isTrue])));
    const met = rules.map(({ rule, notFalse }) =>
      or([not(notFalse), this.condition(rulebook, needsOf(rule), true, 'program ').isTrue]),
    );
    return this.name(and([speaks, ...met]));
  }
}

export function and(parts: readonly Term[]): Term {
  if (parts.includes('false')) return 'false';
  const kept = parts.filter((each) => each !== 'true');
  return kept.length === 0 ? 'true' : kept.length === 1 ? kept.join() : `(and ${kept.join(' ')})`;
}

export function or(parts: readonly Term[]): Term {
  if (parts.includes('true')) return 'true';
  const kept = parts.filter((each) => each !== 'false');
  return kept.length === 0 ? 'false' : kept.length === 1 ? kept.join() : `(or ${kept.join(' ')})`;
}

export function not(term: Term): Term {
  return term === 'true' ? 'false' : term === 'false' ? 'true' : `(not ${term})`;
}

const signs = { 'at-least': '>=', 'at-most': '<=', above: '>', below: '<' };

function membersOf(facts: readonly Fact[]): string[] {
  return [...new Set(facts.flatMap(({ members }) => members))];
}

function isWhole({ type }: Fact): boolean {
  return type === 'count' || type === 'date';
}

function numberOf(id: string, fact: Fact): Term {
  return isWhole(fact) ? `(to_real |${id}|)` : `|${id}|`;
}

/** What a number of a fact lies between, in the base unit. */
function within(id: string, fact: Fact): Term {
  const least =
    fact.minimum !== undefined ? inBaseUnit(fact.minimum) : fact.type === 'date' ? -Infinity : leastOf(fact.unit ?? '1');
  return and([
    ...(least === -Infinity ? [] : [`(>= ${numberOf(id, fact)} ${real(least)})`]),
    ...(fact.maximum === undefined ? [] : [`(<= ${numberOf(id, fact)} ${real(inBaseUnit(fact.maximum))})`]),
  ]);
}

/** A number as its shortest decimal. */
function real(value: number): Term {
  if (value < 0) return `(- ${real(-value)})`;
  const [digits = '0', power] = String(value).split('e');
  const plain = digits.includes('.') ? digits : `${digits}.0`;
  if (power === undefined) return plain;
  const zeros = '0'.repeat(Math.abs(Number(power)));
  return Number(power) < 0 ? `(/ ${plain} 1${zeros}.0)` : `(* ${plain} 1${zeros}.0)`;
}
