import { type Answering, knownFacts, needsOf, programsOf } from '../decide/decide.js';
import { passes as passesIn, truthOf } from '../decide/truth.js';
import type { Choice, Condition, Fact, Rule, Test, Verdict } from '../link/rulebook.js';
import { type FactTest, testsOf } from './pieces.js';
import type { Literal } from './solver.js';
import { passesWhereStated, type Space } from './space.js';

/** When a condition is true, and when it is not false: true or unknown. */
export interface Kleene {
  certain: Literal;
  possible: Literal;
}

/** One decision as formulas over a space: exactly what `decide` answers. */
export interface Encoded {
  rules: { rule: Rule; certain: Literal; possible: Literal }[];
  /** That an answer is among the possible ones: an outcome, or of a choice a program or `none`. */
  possible: Map<string, Literal>;
  /** That it is the outcome. */
  outcome: Map<string, Literal>;
}

/** The tests that a decision looks at: its own, those of `more` conditions, and those of the decisions whose answers it looks at. */
export function testsOfDecision(rulebook: Answering, id: string, more: readonly Condition[] = []): FactTest[] {
  const tests: FactTest[] = [];
  const seen = new Set<string>();
  const walk = (decisionId: string): void => {
    const decision = rulebook.decisions.get(decisionId);
    if (decision === undefined || seen.has(decisionId)) return;
    seen.add(decisionId);
    const own = testsOf([...decision.rules.map(({ when }) => when), ...(decisionId === id ? more : [])], rulebook.facts);
    for (const each of own) {
      const answer = rulebook.facts.get(each.fact)?.decision;
      // What a caller says an answer is counts for the decision asked, not for those it looks at.
      if (answer === undefined || decisionId === id) tests.push(each);
      if (answer !== undefined) walk(answer);
    }
  };
  walk(id);
  return tests;
}

/** Puts the decisions of one rulebook into a space. */
export class Encoder {
  private readonly plain = new Map<string, Encoded>();
  private readonly guards = new Map<string, Kleene>();

  constructor(
    readonly space: Space,
    readonly rulebook: Answering,
  ) {}

  /** The answer to one decision, where the caller may have stated answers of others. */
  decision(id: string): Encoded {
    return this.encode(id, true);
  }

  private encode(id: string, isAsked: boolean): Encoded {
    const before = isAsked ? undefined : this.plain.get(id);
    if (before !== undefined) return before;
    const decision = this.rulebook.decisions.get(id);
    if (decision === undefined) throw new RangeError(`no decision \`${id}\``);
    const rules = decision.rules.map((rule) => ({ rule, ...this.condition(rule.when, isAsked) }));
    const encoded = decision.kind === 'verdict' ? this.verdict(decision, rules) : this.choice(decision, rules);
    if (!isAsked) this.plain.set(id, encoded);
    return encoded;
  }

  /** When a condition is true and when it is not false. */
  condition(condition: Condition, isAsked = true): Kleene {
    const { circuit } = this.space;
    switch (condition.kind) {
      case 'all':
      case 'any': {
        const parts = condition.of.map((each) => this.condition(each, isAsked));
        const join = (of: Literal[]) => (condition.kind === 'all' ? circuit.and(of) : circuit.or(of));
        return { certain: join(parts.map(({ certain }) => certain)), possible: join(parts.map(({ possible }) => possible)) };
      }
      case 'not': {
        const { certain, possible } = this.condition(condition.of, isAsked);
        return { certain: -possible, possible: -certain };
      }
      case 'test':
        return this.test(condition, isAsked);
    }
  }

  private test({ fact: id, test }: FactTest, isAsked: boolean): Kleene {
    const { circuit } = this.space;
    const fact = this.rulebook.facts.get(id);
    if (fact === undefined) throw new RangeError(`unknown fact ${id}`);
    const guard = this.guard(fact, isAsked);
    const itself = fact.type === 'answer' ? this.answer(fact, test, isAsked) : this.stated(fact, test);
    return {
      certain: circuit.and([guard.certain, itself.certain]),
      possible: circuit.and([guard.possible, itself.possible]),
    };
  }

  private guard({ id, onlyWhen }: Fact, isAsked: boolean): Kleene {
    const key = `${isAsked} ${id}`;
    const before = this.guards.get(key);
    if (before !== undefined) return before;
    const { always } = this.space.circuit;
    const guard = onlyWhen === undefined ? { certain: always, possible: always } : this.condition(onlyWhen, isAsked);
    this.guards.set(key, guard);
    return guard;
  }

  /** A fact that is not stated has the value that the clinic states, if it does. */
  private stated(fact: Fact, test: Test): Kleene {
    const { circuit, dimensions } = this.space;
    const dimension = dimensions.get(fact.id);
    if (dimension === undefined) throw new RangeError(`no dimension for ${fact.id}`);
    const passes = passesWhereStated(this.space, dimension, test);
    const ofClinic = passesIn(this.rulebook.clinic.facts[fact.id], test);
    return {
      certain: ofClinic === true ? circuit.or([passes, -dimension.stated]) : passes,
      possible: ofClinic === false ? passes : circuit.or([passes, -dimension.stated]),
    };
  }

  private answer(fact: Fact, test: Test, isAsked: boolean): Kleene {
    const { circuit, dimensions } = this.space;
    const { possible } = this.encode(fact.decision ?? '', false);
    const passing = fact.members.filter((member) => passesIn(member, test) === true);
    const isPossible = (member: string) => possible.get(member) ?? circuit.never;
    const others = [...possible.keys()].filter((member) => !passing.includes(member));
    const certain = circuit.and(others.map((member) => -isPossible(member)));
    const open = circuit.or(passing.map(isPossible));
    const dimension = isAsked ? dimensions.get(fact.id) : undefined;
    const ofClinic = this.rulebook.clinic.facts[fact.id];
    if (dimension === undefined && ofClinic === undefined) return { certain, possible: open };
    // An answer that the caller states, or else the clinic, narrows it, if it is among those still possible.
    const told = (member: string) => {
      const byCaller = dimension && passesWhereStated(this.space, dimension, { kind: 'one-of', members: [member] });
      const byClinic = ofClinic === member ? -(dimension?.stated ?? circuit.never) : circuit.never;
      return circuit.and([circuit.or([byCaller ?? circuit.never, byClinic]), isPossible(member)]);
    };
    const toldPassing = circuit.or(passing.map(told));
    const toldOther = circuit.or(others.map(told));
    return {
      certain: circuit.and([-toldOther, circuit.or([certain, toldPassing])]),
      possible: circuit.and([-toldOther, open]),
    };
  }

  private verdict({ outcomes, otherwise }: Verdict, rules: Encoded['rules']): Encoded {
    const { circuit } = this.space;
    const certainOf = (outcome: string) => rules.flatMap(({ rule, certain }) => (rule.outcome === outcome ? [certain] : []));
    const possibleOf = (outcome: string) => rules.flatMap(({ rule, possible }) => (rule.outcome === outcome ? [possible] : []));
    const silent = circuit.and(rules.map(({ certain }) => -certain));
    const possible = new Map<string, Literal>();
    const outcome = new Map<string, Literal>();
    const above: Literal[] = [];
    let higher: Literal[] = [];
    for (const each of [...outcomes].reverse()) {
      const speaks = circuit.or([...possibleOf(each), ...(each === otherwise ? [silent] : [])]);
      const isPossible = circuit.and([speaks, ...higher.map((literal) => -literal)]);
      possible.set(each, isPossible);
      outcome.set(each, circuit.and([isPossible, ...above.map((literal) => -literal)]));
      above.push(isPossible);
      higher = [...higher, ...certainOf(each)];
    }
    return { rules, possible, outcome };
  }

  private choice(decision: Choice, rules: Encoded['rules']): Encoded {
    const { circuit } = this.space;
    const programs = programsOf(decision, this.rulebook);
    const speaking = rules.filter(({ rule }) => !rule.addsOnly);
    const speaks = circuit.or(speaking.map(({ certain }) => certain));
    const speaksLater = circuit.or(speaking.map(({ possible }) => possible));
    const possible = new Map<string, Literal>();
    const outcome = new Map<string, Literal>();
    const before: Literal[] = [];
    for (const program of programs) {
      const stated = knownFacts(this.rulebook, program.facts);
      const lacking = rules.filter(({ rule }) => truthOf(needsOf(rule), stated) !== true);
      const meets = circuit.and([speaks, ...lacking.map((each) => -each.possible)]);
      possible.set(program.id, circuit.and([speaksLater, ...lacking.map((each) => -each.certain)]));
      outcome.set(program.id, circuit.and([meets, ...before.map((each) => -each)]));
      before.push(meets);
    }
    const none = circuit.and(before.map((each) => -each));
    possible.set('none', none);
    outcome.set('none', none);
    return { rules, possible, outcome };
  }
}
