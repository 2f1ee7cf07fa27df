import { decide } from '../../decide/decide.js';
import type { Card, CardLine, Citation, Rule, Rulebook, SetBy } from '../../link/rulebook.js';
import { formatInterval } from '../../measure/interval.js';
import { formatQuantity } from '../../measure/quantity.js';
import { didYouMean } from '../../read/nearest.js';
import { plainText } from '../../write/text/plain-text.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openSoundClinic } from '../context.js';
import { sectionsPrinting } from '../load-manual.js';
import { explainFixture, fixtureIds, type Line, publishedAbout } from '../published.js';
import { citationText } from '../say.js';

export interface ExplainOptions extends CommonOptions {
  clinic?: string;
  json?: boolean;
}

/** One thing of a rulebook: its value, who set it, and where it is printed. */
interface Explanation {
  id: string;
  kind: string;
  /** What it is, and its value in words. */
  lines: [label: string, text: string][];
  /** Layers that set it, oldest first. */
  layers: { layer: string; value: string; source: string; because?: string; deviation?: string; at: string }[];
  /** Of a limit or task: what publications say, what other regions do, and where sources disagree. */
  published: Line[];
  printedIn: string[];
}

/** `rulebook explain`: what one id means, the layers and sources behind it, and where the manual prints it. */
export async function runExplain(context: Context, id: string, options: ExplainOptions): Promise<number> {
  const open = openSoundClinic(context, options.clinic, options);
  if (open === undefined) return 1;
  const { rulebook } = open;
  const { loaded } = open.opened;
  const found = explain(rulebook, id) ?? fixtureFound(id, explainFixture(loaded, id));
  if (found === undefined) {
    const near = didYouMean(id, [...allIds(rulebook), ...fixtureIds(loaded)]);
    throw new BadUse(`unknown id \`${id}\``, near ?? '`rulebook list` shows what there is');
  }
  const published = found.kind === 'limit' || found.kind === 'task' ? publishedAbout(loaded, rulebook, id) : [];
  const explanation: Explanation = { ...found, published, printedIn: sectionsPrinting(rulebook, id) };
  if (options.json) context.out(JSON.stringify(explanation, undefined, 2));
  else print(context, explanation);
  return 0;
}

function print({ out }: Context, { id, kind, lines, layers, published, printedIn }: Explanation): void {
  out(`${colors.bold(id)} ${colors.dim(`(${kind})`)}`);
  for (const [label, text] of lines) out(`  ${colors.dim(label.padEnd(9))} ${text}`);
  for (const { layer, value, source, because, deviation, at } of layers) {
    out(`  ${colors.dim('layer'.padEnd(9))} ${layer}: ${value}, ${source} ${colors.dim(`[${at}]`)}`);
    if (because !== undefined) out(`  ${''.padEnd(9)} ${because}`);
    if (deviation !== undefined) out(`  ${''.padEnd(9)} ${deviation}`);
  }
  for (const [label, text] of published) out(`  ${colors.dim(label.padEnd(9))} ${text}`);
  if (kind === 'published value') return;
  out(`  ${colors.dim('printed'.padEnd(9))} ${printedIn.length > 0 ? printedIn.join('; ') : 'nowhere'}`);
}

type Found = Omit<Explanation, 'printedIn' | 'published'>;

function fixtureFound(id: string, fixture: { kind: string; lines: Line[] } | undefined): Found | undefined {
  return fixture && { id, ...fixture, layers: [] };
}

function explain(rulebook: Rulebook, id: string): Found | undefined {
  const say = (text: string) => plainText(rulebook, text);
  const layersOf = (chain: readonly SetBy[]) =>
    chain.map(({ layer, value, source, because, deviation, place }) => ({
      layer,
      value,
      source: citationText(rulebook, source),
      ...(because !== undefined && { because: say(because) }),
      ...(deviation !== undefined && {
        deviation: `recorded deviation: ${say(deviation.reason)} To be looked at again by ${deviation['review-by']}.`,
      }),
      at: `${place.file}:${place.line}:${place.column}`,
    }));
  const written = (layer: string, source: Citation, place: { file: string; line: number; column: number }) =>
    layersOf([{ layer, value: 'written here', source, place }]);

  const limit = rulebook.limits.get(id);
  if (limit !== undefined) {
    const lines: Found['lines'] = [
      ['limit', limit.label],
      ['value', formatQuantity(limit.value)],
      ['stricter', limit.stricter],
      ['on', rulebook.on],
    ];
    return {
      id,
      kind: 'limit',
      lines: [...lines, ...note(limit.note && say(limit.note)), ...note(limit.source.note && say(limit.source.note))],
      layers: layersOf(limit.chain),
    };
  }
  const task = rulebook.tasks.get(id);
  if (task !== undefined) {
    const duties = rulebook.duties.filter((duty) => duty.task === id);
    return {
      id,
      kind: 'task',
      lines: [
        ['task', task.title],
        ...duties.map(({ machine, every, maker }): [string, string] => [
          'due',
          `${machine === undefined ? 'the clinic' : (rulebook.machines.get(machine)?.name ?? machine)}: ${every === undefined ? 'after events' : formatInterval(every)}${maker === undefined ? '' : ` (its maker, ${maker})`}`,
        ]),
        ...task.on.map((event): [string, string] => ['on', say(event)]),
        ['passes', say(task.pass)],
      ],
      layers: task.chain.length > 0 ? layersOf(task.chain) : written(task.layer, task.source, task.place),
    };
  }
  const decision = rulebook.decisions.get(id);
  if (decision !== undefined)
    return {
      id,
      kind: decision.kind,
      lines: [
        ['question', decision.question],
        ...(decision.kind === 'verdict'
          ? decision.outcomes.map((outcome): [string, string] => ['outcome', `${outcome}: ${say(decision.say[outcome] ?? '')}`])
          : []),
        ...decision.rules.map((rule): [string, string] => [
          'rule',
          `${rule.name}${rule.outcome === undefined ? '' : ` -> ${rule.outcome}`} (${rule.layer})`,
        ]),
        ...decision.retired.map(({ rule, by }): [string, string] => ['retired', `${rule.name}, by ${by.layer}`]),
      ],
      layers: [],
    };
  const rule = [...rulebook.decisions.values()].flatMap(({ rules }) => rules).find((each) => each.id === id);
  if (rule !== undefined) return explainRule(rulebook, rule, say(rule.because), written(rule.layer, rule.source, rule.place));
  const fact = rulebook.facts.get(id);
  if (fact !== undefined)
    return {
      id,
      kind: 'fact',
      lines: [
        ['fact', fact.label],
        ['type', fact.type],
        ['asks', fact.question],
        ...(fact.unit === undefined ? [] : [['unit', fact.unit] satisfies [string, string]]),
        ...(fact.members.length > 0 ? [['members', fact.members.join(', ')] satisfies [string, string]] : []),
        ['used in', rulesUsing(rulebook, id).join(', ') || 'no rule'],
      ],
      layers: [],
    };
  const term = rulebook.terms.get(id);
  if (term !== undefined) {
    const renamed = rulebook.changes.filter(({ kind, about }) => kind === 'term' && about === id);
    return {
      id,
      kind: 'term',
      lines: [['word', term.label], ['means', say(term.definition)], ...note(term.domain)],
      layers: renamed.flatMap(({ layer, change, because, source, place }) =>
        layersOf([{ layer, value: change, source: source ?? { id: layer }, because, place }]),
      ),
    };
  }
  const procedure = rulebook.procedures.get(id);
  if (procedure !== undefined)
    return {
      id,
      kind: 'procedure',
      lines: [
        ['procedure', procedure.title],
        ['purpose', say(procedure.purpose)],
        ...procedure.steps.map((step): [string, string] => ['step', `${step.name} (${step.layer})`]),
      ],
      layers: written(procedure.layer, procedure.source, procedure.place),
    };
  const policy = rulebook.policies.get(id);
  if (policy !== undefined)
    return {
      id,
      kind: 'policy',
      lines: [
        ['policy', policy.title],
        ['purpose', say(policy.purpose)],
        ...policy.points.map((point): [string, string] => ['point', `${point.name} (${point.layer})`]),
      ],
      layers: written(policy.layer, policy.source, policy.place),
    };
  const requirement = rulebook.requirements.get(id);
  if (requirement !== undefined)
    return {
      id,
      kind: 'requirement',
      lines: [
        ['item', `${requirement.item}, ${requirement.section}`],
        ['asks', say(requirement.text)],
        ['source', citationText(rulebook, requirement.source)],
        ['answered', requirement.answeredBy.map((answer) => `${answer.scheme}:${answer.id}`).join(', ') || 'open'],
      ],
      layers: [],
    };
  const form = rulebook.forms.get(id);
  if (form !== undefined)
    return {
      id,
      kind: 'form',
      lines: [
        ['form', form.title],
        ['purpose', say(form.purpose)],
        ['columns', form.columns.map(({ label }) => label).join(', ')],
      ],
      layers: [],
    };
  const card = rulebook.cards.get(id);
  if (card !== undefined) return explainCard(card, say);
  const family = rulebook.instruments.get(id);
  if (family !== undefined) {
    const answers = [...rulebook.decisions.values()].filter(({ register }) => register !== undefined);
    return {
      id,
      kind: 'instrument family',
      lines: [
        ['family', family.name],
        ...answers.map(({ id: asked, register = '' }): [string, string] => [
          'route',
          `${register}: ${decide(rulebook, asked, family.facts).outcome}`,
        ]),
      ],
      layers: [],
    };
  }
  const source = rulebook.sources.get(id);
  if (source !== undefined)
    return {
      id,
      kind: 'source',
      lines: [['title', source.title], ['kind', source.type], ...note(source.url), ...note(source.note)],
      layers: [],
    };
  return undefined;
}

function explainCard({ id, title, caution, points, stop, layer }: Card, say: (text: string) => string): Found {
  const line = (label: string, { say: text, from }: CardLine): [string, string] => [
    label,
    `${say(text)} (${from.map(({ kind, id }) => `${kind} ${id}`).join(', ')})`,
  ];
  return {
    id,
    kind: 'card',
    lines: [
      ['card', title],
      ...(caution === undefined ? [] : [line('caution', caution)]),
      ...points.map((point) => line('point', point)),
      ...(stop === undefined ? [] : [line('stop', stop)]),
      ['layer', layer],
    ],
    layers: [],
  };
}

function explainRule(rulebook: Rulebook, rule: Rule, because: string, layers: Found['layers']): Found {
  const [decisionId = ''] = rule.id.split('/');
  const decision = rulebook.decisions.get(decisionId);
  const outcome =
    decision?.kind === 'verdict' && rule.outcome !== undefined
      ? `${rule.outcome}: ${plainText(rulebook, decision.say[rule.outcome] ?? '')}`
      : 'adds needs of a program';
  return {
    id: rule.id,
    kind: 'rule',
    lines: [
      ['question', decision?.question ?? ''],
      ['outcome', outcome],
      ['because', because],
      ['examples', String(rule.examples.length)],
    ],
    layers,
  };
}

function rulesUsing(rulebook: Rulebook, fact: string): string[] {
  const rules = [...rulebook.decisions.values()].flatMap((decision) => decision.rules);
  return rules
    .filter(({ when, needs }) => JSON.stringify([when, needs]).includes(`"fact":${JSON.stringify(fact)}`))
    .map(({ id }) => id);
}

function note(text: string | undefined): [string, string][] {
  return text === undefined ? [] : [['note', text]];
}

function allIds(rulebook: Rulebook): string[] {
  const { limits, tasks, decisions, facts, terms, procedures, policies, requirements, forms, cards, instruments, sources } =
    rulebook;
  const rules = [...decisions.values()].flatMap((decision) => decision.rules.map(({ id }) => id));
  return [limits, tasks, decisions, facts, terms, procedures, policies, requirements, forms, cards, instruments, sources]
    .flatMap((map) => [...map.keys()])
    .concat(rules);
}
