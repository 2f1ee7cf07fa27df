import type { Limit, Rulebook } from '../../link/rulebook.js';
import { formatQuantity } from '../../measure/quantity.js';
import { join, lineBreak } from '../text/markdown.js';
import { said, textOfLayer } from '../text/markdown-safe.js';
import { type Bibliography, cite } from './cite.js';
import { layerName } from './label-of.js';

/** All limits with their values, which way is stricter, and which layer set them. */
export function modelLimits(rulebook: Rulebook, bibliography: Bibliography, limits: Iterable<Limit> = rulebook.limits.values()) {
  return [...limits].map((limit) => {
    const before = limit.chain.slice(0, -1);
    const layer = limit.chain.at(-1)?.layer ?? 'base';
    const earlier = before.map(({ layer: setter, value }) =>
      join([lineBreak, `${layerName(rulebook, setter)}: `, said(value, limit.id)]),
    );
    return {
      id: limit.id,
      label: limit.label,
      value: said(formatQuantity(limit.value), limit.id),
      lower: limit.stricter === 'lower',
      source: cite(bibliography, limit.source),
      clause: cite(bibliography, limit.source, true),
      by: join([layerName(rulebook, layer), ...earlier]),
      note: limit.note === undefined ? null : textOfLayer(limit.note, limit.chain[0]?.layer ?? ''),
    };
  });
}
