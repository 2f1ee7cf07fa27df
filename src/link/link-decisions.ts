import type { Place } from '../read/finding.js';
import { nearest } from '../read/nearest.js';
import { quotedList } from '../read/quoted.js';
import type { Located, Path } from '../read/read-documents.js';
import type {
  DecisionDocument,
  Condition as RawCondition,
  Rule as RawRule,
  Situation as RawSituation,
} from '../read/types.gen.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { deviationOf } from './link-limits.js';
import { isFirst } from './link-vocabulary.js';
import {
  cite,
  eachOf,
  expectKnown,
  expectTerm,
  holdsOn,
  type Layer,
  type Linking,
  passOver,
  report,
  usualOrder,
} from './linking.js';
import { isHollow, readFactValue } from './read-values.js';
import type { RuleChange } from './rule-changes.js';
import type { Change, Choice, Decision, FactValue, Rule, Situation, Verdict } from './rulebook.js';

/**
 * The decisions of all layers with their rules, after regions and the clinic added and retired some; and each of these changes, for
 * the proof that it makes nothing less strict.
 */
export function linkDecisions(
  linking: Linking,
  vocabulary: Vocabulary,
  changes: Change[],
): { decisions: Map<string, Decision>; ruleChanges: RuleChange[] } {
  const decisions = new Map<string, Decision>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'decision')) {
    if (!isFirst(linking, placed, 'decision', document.data.id, document.at(['id']))) continue;
    const decision = linkDecision(linking, vocabulary, document);
    if (decision === undefined) {
      passOver(linking, 'decision', document.data.id);
      continue;
    }
    const onlyWhen =
      document.data['only-when'] && compileCondition(linking, vocabulary, document.data['only-when'], document, ['only-when']);
    if (onlyWhen !== undefined) decision.onlyWhen = onlyWhen;
    decision.gaps = linkGaps(linking, vocabulary, layer, document);
    decisions.set(decision.id, decision);
    document.data.rules.forEach((raw, index) => {
      const rule = linkRule(linking, vocabulary, decision, raw, layer, document, ['rules', index]);
      if (rule === undefined) passOver(linking, ruleOf(decision), raw.id);
      else if (isFirst(linking, placed, 'rule', rule.id, document.at(['rules', index, 'id']))) decision.rules.push(rule);
    });
  }
  return { decisions, ruleChanges: changeRules(linking, vocabulary, decisions, placed, changes) };
}

function ruleOf({ id }: Decision): string {
  return `rule of \`${id}\``;
}

function linkDecision(linking: Linking, vocabulary: Vocabulary, document: Located<DecisionDocument>): Decision | undefined {
  const { data } = document;
  expectTerm(linking, data.stage, 'stage', document.at(['stage']));
  const head = {
    id: data.id,
    title: data.title,
    stage: data.stage,
    order: data.order ?? usualOrder,
    question: data.question,
    ...(data.about !== undefined && { about: data.about }),
    ...(data.register !== undefined && { register: data.register }),
    rules: [],
    gaps: [],
    retired: [],
    place: document.at(['id']),
  };
  return data.choose === undefined ? linkVerdict(linking, document, head) : linkChoice(linking, vocabulary, document, head);
}

function linkGaps(linking: Linking, vocabulary: Vocabulary, layer: Layer, document: Located<DecisionDocument>): Decision['gaps'] {
  return (document.data.gaps ?? []).map((gap, index) => {
    const when = gap.when && compileCondition(linking, vocabulary, gap.when, document, ['gaps', index, 'when']);
    const mark = { because: gap.because, layer: layer.id, place: document.at(['gaps', index]) };
    return { ...mark, ...(when !== undefined && { when }) };
  });
}

type Head = Omit<Verdict, 'kind' | 'outcomes' | 'say' | 'otherwise'>;

function linkVerdict(linking: Linking, document: Located<DecisionDocument>, head: Head): Verdict | undefined {
  const { outcomes, say, otherwise, from, prefer } = document.data;
  if (outcomes === undefined || say === undefined || otherwise === undefined) {
    const missing = (['outcomes', 'say', 'otherwise'] as const).filter((key) => document.data[key] === undefined);
    const message = `a verdict needs ${quotedList(missing)}`;
    report(linking, 'E316', document.at([]), message, 'a choice among programs says `choose: program` instead');
    return undefined;
  }
  for (const key of ['from', 'prefer'] as const)
    if ((key === 'from' ? from : prefer) !== undefined)
      report(linking, 'E316', document.atKey([key]), `\`${key}\` belongs to a choice`, 'take it out, or add `choose: program`');
  const saidOfNone = Object.keys(say).filter(
    (key) => !expectKnown(linking, 'E311', 'outcome', key, outcomes, document.atKey(['say', key])),
  );
  const meant = saidOfNone.map((key) => nearest(key, outcomes));
  for (const outcome of outcomes)
    if (!Object.hasOwn(say, outcome) && !meant.includes(outcome)) {
      const message = `outcome \`${outcome}\` has no words under \`say\``;
      report(linking, 'E311', document.atKey(['say']), message, `add \`${outcome}:\` under \`say:\``);
    }
  if (expectKnown(linking, 'E311', 'outcome', otherwise, outcomes, document.at(['otherwise'])) && otherwise === outcomes[0])
    report(
      linking,
      'E310',
      document.at(['otherwise']),
      `\`otherwise\` is \`${otherwise}\`, the least restrictive outcome`,
      'where no rule speaks, take a more careful one',
    );
  return { kind: 'verdict', ...head, outcomes, say, otherwise };
}

function linkChoice(linking: Linking, vocabulary: Vocabulary, document: Located<DecisionDocument>, head: Head): Choice {
  const { data } = document;
  for (const key of ['outcomes', 'say', 'otherwise'] as const)
    if (data[key] !== undefined)
      report(linking, 'E316', document.atKey([key]), `\`${key}\` belongs to a verdict`, 'take it out, or take `choose` out');
  if (data.from === undefined)
    report(linking, 'E316', document.at([]), 'a choice needs `from`', 'list the machine kinds whose programs are looked at');
  data.from?.forEach((kind, index) => expectTerm(linking, kind, 'machine-kind', document.at(['from', index])));
  data.prefer?.forEach(({ fact }, index) => {
    const at = document.at(['prefer', index, 'fact']);
    const type = vocabulary.facts.get(fact)?.type;
    if (expectKnown(linking, 'E301', 'fact', fact, vocabulary.facts.keys(), at) && type !== 'quantity' && type !== 'count')
      report(
        linking,
        'E309',
        at,
        `programs cannot be ranked by \`${fact}\``,
        'take a quantity or a count that machine sheets state',
      );
    else expectOfPrograms(linking, vocabulary, fact, at, 'take a fact that they state');
  });
  return { kind: 'choice', ...head, from: data.from ?? [], prefer: data.prefer ?? [] };
}

function linkRule(
  linking: Linking,
  vocabulary: Vocabulary,
  decision: Decision,
  raw: RawRule,
  layer: Layer,
  document: Located,
  path: Path,
): Rule | undefined {
  const at = (...more: (string | number)[]) => document.at([...path, ...more]);
  const when = compileCondition(linking, vocabulary, raw.when, document, [...path, 'when']);
  const needs =
    raw.needs === undefined ? undefined : compileCondition(linking, vocabulary, raw.needs, document, [...path, 'needs']);
  const complete =
    decision.kind === 'verdict'
      ? fitsVerdict(linking, decision, raw, document, path)
      : fitsChoice(linking, vocabulary, raw, document, path);
  const source = cite(linking, raw.source, at('source'));
  const examples = (raw.examples ?? []).map((example, index) => ({
    given: readSituation(linking, vocabulary, example.given, document, [...path, 'examples', index, 'given']),
    applies: example.applies,
    place: at('examples', index),
  }));
  if (!holdsOn(linking.on, raw) || !complete || when === undefined) return undefined;
  return {
    id: `${decision.id}/${raw.id}`,
    name: raw.id,
    when,
    ...(raw.outcome !== undefined && { outcome: raw.outcome }),
    ...(needs !== undefined && { needs }),
    addsOnly: raw['adds-only'] ?? false,
    because: raw.because,
    ...(raw.instead !== undefined && { instead: raw.instead }),
    cautions: raw.cautions ?? [],
    source,
    examples,
    layer: layer.id,
    place: at('id'),
  };
}

function fitsVerdict(linking: Linking, decision: Verdict, raw: RawRule, document: Located, path: Path): boolean {
  if (raw.needs !== undefined)
    report(linking, 'E316', document.atKey([...path, 'needs']), '`needs` belongs to a choice', 'give the rule an `outcome`');
  if (raw['adds-only'] !== undefined)
    report(linking, 'E316', document.atKey([...path, 'adds-only']), '`adds-only` belongs to a choice', 'take it out');
  if (raw.outcome !== undefined)
    return expectKnown(linking, 'E311', 'outcome', raw.outcome, decision.outcomes, document.at([...path, 'outcome']));
  report(linking, 'E316', document.at(path), `rule \`${raw.id}\` has no \`outcome\``, `one of ${quotedList(decision.outcomes)}`);
  return false;
}

function fitsChoice(linking: Linking, vocabulary: Vocabulary, raw: RawRule, document: Located, path: Path): boolean {
  if (raw.outcome !== undefined)
    report(
      linking,
      'E316',
      document.atKey([...path, 'outcome']),
      '`outcome` belongs to a verdict',
      'say what the program `needs`',
    );
  if (raw.needs === undefined) {
    report(
      linking,
      'E316',
      document.at(path),
      `rule \`${raw.id}\` does not say what it \`needs\``,
      'add `needs:` with tests on facts that machine sheets state',
    );
    return false;
  }
  for (const { fact, path: at } of factsNamed(raw.needs, [...path, 'needs']))
    expectOfPrograms(linking, vocabulary, fact, document.atKey(at), 'put it under `when:`');
  return true;
}

function expectOfPrograms(linking: Linking, vocabulary: Vocabulary, fact: string, place: Place, help: string): void {
  const by = vocabulary.facts.get(fact)?.statedBy;
  if (by !== undefined && by !== 'program' && by !== 'machine')
    report(linking, 'E319', place, `\`${fact}\` is not stated by machine sheets`, help);
}

/** The facts that a condition as written names, at any depth. */
function factsNamed(raw: RawCondition, path: Path): { fact: string; path: Path }[] {
  return Object.entries(raw).flatMap(([key, value]) => {
    const here = [...path, key];
    if (key === 'not') return factsNamed(value as RawCondition, here);
    if (key !== 'all' && key !== 'any') return [{ fact: key, path: here }];
    return (value as RawCondition[]).flatMap((each, index) => factsNamed(each, [...here, index]));
  });
}

/** Reads the facts of a situation; reports unknown facts and values that don't fit. */
export function readSituation(
  linking: Linking,
  vocabulary: Pick<Vocabulary, 'facts'>,
  raw: RawSituation,
  document: Located,
  path: Path,
): Situation {
  const situation: Record<string, FactValue> = {};
  for (const [id, value] of Object.entries(raw)) {
    const fact = vocabulary.facts.get(id);
    if (fact === undefined) {
      expectKnown(linking, 'E301', 'fact', id, vocabulary.facts.keys(), document.atKey([...path, id]));
      continue;
    }
    if (isHollow(fact)) continue;
    const read = readFactValue(fact, value);
    if ('value' in read) situation[id] = read.value;
    else report(linking, read.code, document.at([...path, id]), read.message, read.help);
  }
  return situation;
}

function changeRules(
  linking: Linking,
  vocabulary: Vocabulary,
  decisions: Map<string, Decision>,
  placed: Map<string, Place>,
  changes: Change[],
): RuleChange[] {
  const ruleChanges: RuleChange[] = [];
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'add-rule' && change.change !== 'replace-rule' && change.change !== 'retire-rule') return;
      const path = ['changes', index];
      const at = (key: string) => document.at([...path, key]);
      if (!expectKnown(linking, 'E306', 'decision', change.decision, decisions.keys(), at('decision'))) return;
      const decision = decisions.get(change.decision);
      if (decision === undefined) return;
      const names = decision.rules.map(({ name }) => name);
      const name = change.change === 'retire-rule' ? change.rule : change.rule.id;
      const place = change.change === 'retire-rule' ? at('rule') : document.at([...path, 'rule', 'id']);
      const source = change.source === undefined ? undefined : cite(linking, change.source, at('source'));
      const old = decision.rules.find((rule) => rule.name === name);
      if (change.change !== 'add-rule' && !expectKnown(linking, 'E306', ruleOf(decision), name, names, place)) return;
      const next =
        change.change === 'retire-rule'
          ? undefined
          : linkRule(linking, vocabulary, decision, change.rule, layer, document, [...path, 'rule']);
      if (change.change === 'add-rule' && next !== undefined && !isFirst(linking, placed, 'rule', next.id, place)) return;
      if (next === undefined && change.change !== 'retire-rule') return;
      const what = `\`${decision.id}\` by ${doing[change.change]} \`${name}\``;
      const words = { layer: layer.id, because: change.because, place, ...deviationOf(change) };
      const citation = source ?? next?.source;
      const before = { ...decision, rules: [...decision.rules] };
      const position = old === undefined ? decision.rules.length : decision.rules.indexOf(old);
      decision.rules.splice(
        position,
        old === undefined ? 0 : 1,
        ...(next === undefined ? [] : [{ ...next, ...deviationOf(change) }]),
      );
      const after = { ...decision, rules: [...decision.rules] };
      ruleChanges.push({ before, after, layer, what, deviation: change.deviation, place, document, path });
      if (old !== undefined && next === undefined)
        decision.retired.push({ rule: old, by: { ...words, value: 'retired', source: citation ?? { id: 'clinic' } } });
      changes.push({
        ...words,
        kind: change.change,
        about: `${decision.id}/${name}`,
        change: done[change.change],
        ...(citation !== undefined && { source: citation }),
      });
    });
  return ruleChanges;
}

const doing = { 'add-rule': 'adding', 'replace-rule': 'replacing', 'retire-rule': 'retiring' };
const done = { 'add-rule': 'new rule', 'replace-rule': 'rule replaced', 'retire-rule': 'rule retired' };
