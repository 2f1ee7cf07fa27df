import { citationsOf } from '../../check/check-citations.js';
import type { Decision, Rulebook } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { join, type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phrase } from '../text/phrase.js';
import { findHomes } from '../tree/find-homes.js';
import type { Section } from '../tree/nodes.js';
import { type Contents, contentsOf, printedIn } from '../tree/printed-in.js';
import type { Writing } from '../writing.js';
import type { Bibliography } from './cite.js';
import { shownKinds } from './in-force.js';
import { layerName } from './label-of.js';
import { printedDecisions } from './printed-decisions.js';
import { sayCondition } from './say-condition.js';

/** The pages that the annex is about: all before it. */
type Pages = Pick<Writing, 'tree' | 'sections'>;

/** Where something stands for good, and the other sections that show or name it. */
interface Where {
  at: Markdown | null;
  also: Markdown | null;
}

type Find = (kind: string, id: string) => Where;

/**
 * The traceability annex: on which pages each rule, limit, task, procedure and form stands; what each section prints and
 * names; and what rests on each source.
 */
export function modelTrace(rulebook: Rulebook, bibliography: Bibliography, pages: Pages) {
  const find = finder(pages);
  return {
    ...modelRules(rulebook, find),
    sections: contentsOf(pages).flatMap((contents) => modelSection(rulebook, contents)),
    sources: modelSources(rulebook, bibliography, find),
  };
}

function finder(pages: Pages): Find {
  const homes = findHomes(pages.tree, pages.sections);
  const found = printedIn(pages);
  return (kind, id) => {
    const key = `${kind}:${id}`;
    const home = homes.get(key)?.section;
    const others = (found.get(key) ?? []).filter((section) => section !== home);
    return { at: home === undefined ? null : numberOf(home), also: others.length === 0 ? null : joinNumbers(others) };
  };
}

function modelRules(rulebook: Rulebook, find: Find) {
  const { limits, tasks, procedures, policies, forms } = rulebook;
  return {
    decisions: printedDecisions(rulebook).map((decision) => ({
      title: said(decision.title, decision.id),
      ...find('decision', decision.id),
      ...modelRuleNames(rulebook, decision),
    })),
    procedures: [...procedures.values()].map(({ id, title, steps }) => ({
      title: said(title, id),
      ...find('procedure', id),
      steps: steps.length,
    })),
    policies: [...policies.values()].map(({ id, title, points }) => ({
      title: said(title, id),
      ...find('policy', id),
      points: points.length,
    })),
    tasks: [...tasks.values()].map(({ id, title }) => ({ title: said(title, id), ...find('task', id) })),
    forms: [...forms.values()].map(({ id, title }) => ({ title: said(title, id), ...find('form', id) })),
    limits: [...limits.values()].map(({ id, label }) => ({ title: said(label, id), ...find('limit', id) })),
  };
}

/** The rules of a decision by the names under which the evaluator reports them; this is the home of those that cannot arise. */
function modelRuleNames(rulebook: Rulebook, { rules, retired }: Decision) {
  return {
    rules: rules.map((rule) => ({
      id: rule.id,
      name: said(rule.name, rule.id),
      layer: rule.layer === 'base' ? null : layerName(rulebook, rule.layer),
      never: sayCondition(rulebook, rule.when).holds === 'never',
    })),
    retired: retired.map(({ rule, by }) => ({ name: said(rule.name, rule.id), by: layerName(rulebook, by.layer) })),
  };
}

/** Rules are counted where their decision stands, since the list of decisions names them. */
const listed = [...shownKinds.filter((kind) => kind !== 'rule'), 'guide'];

function modelSection(rulebook: Rulebook, { section, prints, names }: Contents) {
  const [printed, named] = [byKind(rulebook, prints), byKind(rulebook, names)];
  const isAnnex = annexes.includes(section.id);
  if (isAnnex || (printed === null && named === null)) return [];
  const rules = [...prints].filter((key) => key.startsWith('rule:')).length;
  return [
    {
      at: numberOf(section),
      prints: printed,
      rules: rules === 0 ? null : phrase(rulebook, 'trace.rules', { count: rules }),
      names: named,
    },
  ];
}

/** Annexes that list all of one kind by themselves. */
const annexes = ['section:limits', 'section:sources', 'section:coverage', 'section:glossary'];

/** `procedure run-washer; steps choose, start`: what is named by a whole before it, without it. */
function byKind(rulebook: Rulebook, keys: ReadonlySet<string>): Markdown | null {
  const things = [...keys].map((key) => ({ kind: key.slice(0, key.indexOf(':')), id: key.slice(key.indexOf(':') + 1) }));
  const groups = groupBy(
    things.filter(({ kind }) => listed.includes(kind)),
    ({ kind }) => kind,
  );
  if (groups.size === 0) return null;
  const parts = [...groups].map(([kind, same]) => {
    const ids = same.map(({ id }) => (kind === 'step' || kind === 'point' ? (id.split('/')[1] ?? id) : id));
    return join([sayKind(rulebook, kind, ids.length), ' ', said(ids.join(', '), 'rules')]);
  });
  return join(parts, '; ');
}

/** The word for a kind; a kind that the phrases do not know yet stands for itself. */
function sayKind(rulebook: Rulebook, kind: string, count: number): string {
  const id = `trace.${kind}`;
  return rulebook.phrases[id] === undefined ? kind : phrase(rulebook, id, { count });
}

/** What rests on each published source, by how well the source is known. */
function modelSources(rulebook: Rulebook, bibliography: Bibliography, find: Find) {
  // What a publication asks of the written program has an annex of its own.
  const resting = citationsOf(rulebook).filter(({ kind }) => kind !== 'requirement');
  const cited = groupBy(resting, ({ citation }) => citation.id);
  return [...bibliography.values()].map(({ source }) => ({
    number: refer('source', source.id),
    title: said(source.title, source.id),
    ...find('source', source.id),
    groups: [...groupBy(cited.get(source.id) ?? [], ({ citation }) => citation.evidence ?? 'read')].map(([evidence, same]) => ({
      evidence: phrase(rulebook, `trace.${evidence}`),
      items: join(unique(same.map(({ kind, about, citation }) => sayCited(rulebook, find, kind, about, citation.at))), '; '),
    })),
  }));
}

/** `Longest wait before cleaning (B; clause 4)`. */
function sayCited(rulebook: Rulebook, find: Find, kind: string, id: string, clause: string | undefined): Markdown {
  const { at } = find(kind, id);
  const place = [...(at === null ? [] : [at]), ...(clause === undefined ? [] : [said(clause, id)])];
  return join([said(nameOf(rulebook, kind, id), id), ...(place.length === 0 ? [] : [' (', join(place, '; '), ')'])]);
}

function nameOf({ limits, tasks, procedures, policies }: Rulebook, kind: string, id: string): string {
  const [owner = '', name = id] = id.split('/');
  switch (kind) {
    case 'limit':
      return limits.get(id)?.label ?? id;
    case 'task':
      return tasks.get(id)?.title ?? id;
    case 'procedure':
      return procedures.get(id)?.title ?? id;
    case 'step':
      return `${procedures.get(owner)?.title ?? owner}: ${name}`;
    case 'point':
      return `${policies.get(owner)?.title ?? owner}: ${name}`;
    default:
      return name;
  }
}

function unique(pieces: readonly Markdown[]): Markdown[] {
  return [...new Map(pieces.map((piece) => [piece.markdown, piece])).values()];
}

function joinNumbers(sections: readonly Section[]): Markdown {
  return join(sections.map(numberOf), ', ');
}

function numberOf({ id }: Section): Markdown {
  return refer('at', id);
}
