import type { Limit, Rulebook } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { join } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phrase } from '../text/phrase.js';
import { capitalize, joinWith } from '../text/say-list.js';
import { sayPlainQuantity, sayQuantity } from '../text/say-quantity.js';
import { type Bibliography, cite } from './cite.js';
import { collectLimits } from './collect-limits.js';
import { labelOf, layerName } from './label-of.js';
import { printedDecisions } from './printed-decisions.js';

/** All limits by the chapter that names them first: value, which way is stricter, source, and which layer set them. */
export function modelLimits(rulebook: Rulebook, bibliography: Bibliography) {
  const stages = [...rulebook.terms.values()].filter(({ domain }) => domain === 'stage').map(({ id }) => id);
  const named = stages.map((stage) => ({ stage, limits: collectLimits(saidIn(rulebook, stage)) }));
  const stageOf = ({ id }: Limit) => named.find(({ limits }) => limits.has(id))?.stage;
  const groups = groupBy(rulebook.limits.values(), stageOf);
  return [...stages, undefined].flatMap((stage) => {
    const limits = groups.get(stage);
    if (limits === undefined) return [];
    const chapter = stage === undefined ? phrase(rulebook, 'limits.elsewhere') : capitalize(labelOf(rulebook, stage));
    return [{ chapter, limits: limits.map((limit) => modelLimit(rulebook, bibliography, limit)) }];
  });
}

function saidIn(rulebook: Rulebook, stage: string): unknown {
  const tasks = stage === 'care' ? [...rulebook.tasks.values()] : [];
  const procedures = [...rulebook.procedures.values()].filter((each) => each.stage === stage);
  const policies = [...rulebook.policies.values()].filter((each) => each.stage === stage);
  const decisions = printedDecisions(rulebook).filter((each) => each.stage === stage);
  return [procedures, policies, decisions.map(({ rules, about }) => ({ rules, about })), tasks];
}

function modelLimit(rulebook: Rulebook, bibliography: Bibliography, limit: Limit) {
  const current = limit.chain.at(-1);
  const before = limit.chain.filter((each) => each !== current && each.value !== current?.value);
  const earlier = before.map(({ layer, value, quantity }) =>
    join([
      layerName(rulebook, layer),
      ' ',
      said(quantity === undefined ? value : sayPlainQuantity(rulebook, quantity), limit.id),
    ]),
  );
  return {
    id: limit.id,
    label: limit.label,
    value: said(sayQuantity(rulebook, limit.value), limit.id),
    lower: limit.stricter === 'lower',
    source: cite(rulebook, bibliography, limit.source, true),
    by:
      limit.chain.length < 2
        ? null
        : joinWith(rulebook, 'list.comma', [layerName(rulebook, current?.layer ?? 'base'), ...earlier]),
  };
}
