import type { Place } from '../read/finding.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Point as RawPoint } from '../read/types.gen.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { deviationOf } from './link-limits.js';
import { isFirst } from './link-vocabulary.js';
import { cite, eachOf, expectKnown, expectTerm, type Layer, type Linking, usualOrder } from './linking.js';
import { lostBy, type Saying } from './lost-by.js';
import { requireStrict } from './require-strict.js';
import type { Change, Citation, Point, Policy } from './rulebook.js';

/** The policies of all layers, after regions and the clinic added and replaced points. */
export function linkPolicies(linking: Linking, vocabulary: Vocabulary, changes: Change[]): Map<string, Policy> {
  const policies = new Map<string, Policy>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'policy')) {
    const { data } = document;
    if (!isFirst(linking, placed, 'policy', data.id, document.at(['id']))) continue;
    expectTerm(linking, data.stage, 'stage', document.at(['stage']));
    data.who.forEach((role, index) => expectTerm(linking, role, 'role', document.at(['who', index])));
    const onlyWhen = data['only-when'] && compileCondition(linking, vocabulary, data['only-when'], document, ['only-when']);
    const source = cite(linking, data.source, document.at(['source']));
    const linkOne = (raw: RawPoint, index: number) =>
      linkPoint(linking, vocabulary, { id: data.id, source }, raw, layer, document, ['points', index]);
    policies.set(data.id, {
      id: data.id,
      title: data.title,
      stage: data.stage,
      order: data.order ?? usualOrder,
      purpose: data.purpose,
      ...(onlyWhen !== undefined && { onlyWhen }),
      who: data.who,
      points: data.points.map(linkOne).filter(({ id, place }) => isFirst(linking, placed, 'policy point', id, place)),
      procedures: data.procedures ?? [],
      tasks: data.tasks ?? [],
      decisions: data.decisions ?? [],
      forms: data.forms ?? [],
      source,
      layer: layer.id,
      place: document.at(['id']),
    });
  }
  changePoints(linking, vocabulary, policies, placed, changes);
  return policies;
}

function linkPoint(
  linking: Linking,
  vocabulary: Vocabulary,
  policy: { id: string; source: Citation },
  raw: RawPoint,
  layer: Layer,
  document: Located,
  path: Path,
): Point {
  const onlyWhen = raw['only-when'] && compileCondition(linking, vocabulary, raw['only-when'], document, [...path, 'only-when']);
  return {
    id: `${policy.id}/${raw.id}`,
    name: raw.id,
    ...(onlyWhen !== undefined && { onlyWhen }),
    say: raw.say,
    ...(raw.why !== undefined && { why: raw.why }),
    ...(raw.caution !== undefined && { caution: raw.caution }),
    ...(raw['if-not'] !== undefined && { ifNot: raw['if-not'] }),
    source: raw.source === undefined ? policy.source : cite(linking, raw.source, document.at([...path, 'source'])),
    layer: layer.id,
    place: document.at([...path, 'id']),
  };
}

function changePoints(
  linking: Linking,
  vocabulary: Vocabulary,
  policies: ReadonlyMap<string, Policy>,
  placed: Map<string, Place>,
  changes: Change[],
): void {
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'add-point' && change.change !== 'replace-point') return;
      const path = ['changes', index];
      const at = (...more: string[]) => document.at([...path, ...more]);
      if (!expectKnown(linking, 'E306', 'policy', change.policy, policies.keys(), at('policy'))) return;
      const policy = policies.get(change.policy);
      if (policy === undefined) return;
      const names = policy.points.map(({ name }) => name);
      const anchor = change.change === 'add-point' ? change.after : change.point.id;
      const anchorAt = change.change === 'add-point' ? at('after') : at('point', 'id');
      if (!expectKnown(linking, 'E306', `point of \`${policy.id}\``, anchor, names, anchorAt)) return;
      const source = change.source === undefined ? undefined : cite(linking, change.source, at('source'));
      const owner = { id: policy.id, source: source ?? (layer.id === 'clinic' ? { id: 'clinic' } : policy.source) };
      const point = linkPoint(linking, vocabulary, owner, change.point, layer, document, [...path, 'point']);
      if (change.change === 'add-point' && !isFirst(linking, placed, 'policy point', point.id, point.place)) return;
      const position = names.indexOf(anchor);
      const old = change.change === 'add-point' ? undefined : policy.points[position];
      const lost = old === undefined ? [] : lostBy(sayingOf(old), sayingOf(point));
      const accepted = requireStrict(linking, layer, {
        looser: lost.length > 0,
        what: `point \`${point.id}\``,
        because: `the new point leaves out ${lost.join(', ')}`,
        deviation: change.deviation,
        place: point.place,
        document,
        path,
      });
      if (!accepted) return;
      if (old === undefined) policy.points.splice(position + 1, 0, point);
      else policy.points[position] = point;
      changes.push({
        kind: change.change,
        about: point.id,
        layer: layer.id,
        change: change.change === 'add-point' ? 'new point' : 'point replaced',
        because: change.because,
        ...(source !== undefined && { source }),
        ...deviationOf(change),
        place: point.place,
      });
    });
}

function sayingOf({ say: words, ...rest }: Point): Saying {
  return { words, ...rest };
}

/** The procedures, tasks, decisions and forms that a policy lists. */
export function policyLinks({ data }: Located): { scheme: string; id: string; path: Path }[] {
  if (data.kind !== 'policy') return [];
  return (['procedures', 'tasks', 'decisions', 'forms'] as const).flatMap((key) =>
    (data[key] ?? []).map((id, index) => ({ scheme: key.replace(/s$/, ''), id, path: [key, index] })),
  );
}
