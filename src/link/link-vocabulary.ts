import type { Place } from '../read/finding.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { cite, documentsOf, eachOf, expectKnown, type Layer, type Linking, membersOf, report } from './linking.js';
import { readQuantity, readUnit } from './read-values.js';
import type { Change, Fact, Phrase } from './rulebook.js';

/** Fills the bibliography and the terms of all layers; reports ids that stand twice. */
export function linkWords(linking: Linking): void {
  const placed = new Map<string, Place>();
  const claim = (what: string, id: string, place: Place): boolean => isFirst(linking, placed, what, id, place);
  for (const { document } of eachOf(linking, 'sources'))
    for (const [id, source] of Object.entries(document.data.sources))
      if (claim('source', id, document.atKey(['sources', id]))) linking.sources.set(id, { id, ...source });
  for (const { document } of eachOf(linking, 'terms'))
    for (const [id, term] of Object.entries(document.data.terms))
      if (claim('term', id, document.atKey(['terms', id])))
        linking.terms.set(id, { id, ...term, glossary: term.glossary ?? true, place: document.atKey(['terms', id]) });
}

/** The phrases of all layers; a later layer says its own. */
export function linkPhrases(layers: readonly Layer[]): Record<string, Phrase> {
  const documents = layers.flatMap((layer) => documentsOf(layer, 'phrases'));
  return Object.assign({}, ...documents.map(({ data }) => ({ ...data.phrases, ...data.counted })));
}

/** Renames words as regions and the clinic say them. A name decides nothing, so it cannot be less strict. */
export function renameTerms(linking: Linking, changes: Change[]): void {
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'term') return;
      const at = (key: string) => document.at(['changes', index, key]);
      if (!expectKnown(linking, 'E305', 'term', change.term, linking.terms.keys(), at('term'))) return;
      const term = linking.terms.get(change.term);
      const source = change.source === undefined ? undefined : cite(linking, change.source, at('source'));
      if (term === undefined) return;
      const { plural: _, ...unchanged } = term;
      linking.terms.set(term.id, {
        ...unchanged,
        label: change.label,
        ...(change.plural !== undefined && { plural: change.plural }),
        ...(change.definition !== undefined && { definition: change.definition }),
      });
      changes.push({
        kind: 'term',
        about: term.id,
        layer: layer.id,
        change: `is called \u201c${change.label}\u201d`,
        label: change.label,
        because: change.because,
        ...(source !== undefined && { source }),
        place: at('label'),
      });
    });
}

/** The facts of all layers. Conditions in `only-when` are compiled last, when every fact is known. */
export function linkFacts(linking: Linking, limits: Vocabulary['limits']): Map<string, Fact> {
  const facts = new Map<string, Fact>();
  const placed = new Map<string, Place>();
  const outcomes = new Map(
    linking.layers.flatMap((layer) => documentsOf(layer, 'decision').map(({ data }) => [data.id, data.outcomes ?? []] as const)),
  );
  for (const { document } of eachOf(linking, 'facts'))
    for (const [id, raw] of Object.entries(document.data.facts)) {
      const place = document.atKey(['facts', id]);
      if (!isFirst(linking, placed, 'fact', id, place)) continue;
      const at = (key: string) => document.at(['facts', id, key]);
      const fact: Fact = {
        id,
        label: raw.label,
        type: raw.type,
        members: [],
        statedBy: raw['stated-by'] ?? 'person',
        question: raw.question,
        ...(raw.help !== undefined && { help: raw.help }),
      };
      facts.set(id, fact);
      const needsDomain = raw.type === 'enum' || raw.type === 'set';
      if (raw.of === undefined && (needsDomain || raw.type === 'answer'))
        report(
          linking,
          'E203',
          place,
          `fact \`${id}\` does not say \`of\` what it is`,
          needsDomain ? 'add `of:` with a domain of terms' : 'add `of:` with a decision',
        );
      else if (raw.of !== undefined && needsDomain) {
        const domains = new Set([...linking.terms.values()].flatMap(({ domain }) => domain ?? []));
        if (expectKnown(linking, 'E305', 'domain', raw.of, domains, at('of'))) fact.members = membersOf(linking, raw.of);
      } else if (raw.of !== undefined && raw.type === 'answer') {
        if (expectKnown(linking, 'E306', 'decision', raw.of, outcomes.keys(), at('of'))) {
          fact.decision = raw.of;
          fact.members = outcomes.get(raw.of) ?? [];
        }
      }
      if (raw.type === 'quantity') {
        const unit = raw.unit === undefined ? undefined : readUnit(linking, raw.unit, at('unit'));
        if (raw.unit === undefined)
          report(linking, 'E203', place, `fact \`${id}\` has no \`unit\``, 'add `unit:`, such as `min` or `mm`');
        if (unit !== undefined) fact.unit = unit;
      }
      for (const bound of ['minimum', 'maximum'] as const) {
        const value = raw[bound] === undefined ? undefined : readQuantity(linking, raw[bound], at(bound), fact.unit);
        if (value !== undefined) fact[bound] = value;
      }
    }
  for (const { document } of eachOf(linking, 'facts'))
    for (const [id, raw] of Object.entries(document.data.facts)) {
      const fact = facts.get(id);
      if (fact === undefined || raw['only-when'] === undefined) continue;
      const onlyWhen = compileCondition(linking, { facts, limits }, raw['only-when'], document, ['facts', id, 'only-when']);
      if (onlyWhen !== undefined) fact.onlyWhen = onlyWhen;
    }
  for (const [id, place] of placed) refuseGroup(linking, id.replace('fact ', ''), facts, place);
  return facts;
}

/** Tools nest facts at the dots of their ids: `load.wait` under `load`, so that `load` itself cannot be one. */
function refuseGroup(linking: Linking, id: string, facts: ReadonlyMap<string, Fact>, place: Place): void {
  const within = [...facts.keys()].find((each) => each.startsWith(`${id}.`));
  if (within !== undefined)
    report(
      linking,
      'E325',
      place,
      `fact \`${id}\` is also the group of \`${within}\``,
      'give it a name of its own within a group',
    );
}

/** Reports an id that was already given, by pointing at the first. */
export function isFirst(
  linking: Pick<Linking, 'findings'>,
  placed: Map<string, Place>,
  what: string,
  id: string,
  place: Place,
): boolean {
  const key = `${what} ${id}`;
  const earlier = placed.get(key);
  if (earlier === undefined) {
    placed.set(key, place);
    return true;
  }
  const change = ['limit', 'rule', 'task', 'step', 'policy point'].includes(what)
    ? '; to change it, write an overrides document'
    : '';
  const help = `the first one stands at ${earlier.file}:${earlier.line}:${earlier.column}${change}`;
  report(linking, 'E307', place, `${what} \`${id}\` is already defined`, help);
  return false;
}
