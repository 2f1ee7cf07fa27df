import { scoreMutants } from '../../check/score-mutants.js';
import type { Rulebook } from '../../link/rulebook.js';
import type { Located } from '../../read/read-documents.js';
import type { FixtureDocument } from '../../read/types.gen.js';
import { colors } from '../colors.js';
import type { Context } from '../context.js';
import { inColumns } from '../in-columns.js';
import { writeDrafts } from '../write-drafts.js';

/**
 * Makes each possible mistake in each rule of the packs and prints which ones no example and no published value notices; with
 * `drafts`, prints as YAML what would notice them.
 */
export function runMutants(
  { out }: Pick<Context, 'out'>,
  packs: Rulebook,
  fixtures: readonly Located<FixtureDocument>[],
  options: { decision?: string; drafts?: boolean; json?: boolean },
): void {
  const decisions = options.decision === undefined ? [...packs.decisions.keys()] : [options.decision];
  const scores = decisions.filter((id) => packs.decisions.has(id)).flatMap((id) => scoreMutants(packs, id, fixtures));
  if (options.json) {
    out(JSON.stringify(scores, undefined, 2));
    return;
  }
  if (options.drafts) {
    const drafts = scores.flatMap(({ unnoticed }) => unnoticed.flatMap(({ draft }) => draft ?? []));
    out(writeDrafts(drafts, packs.facts));
    return;
  }
  const sum = (of: (score: (typeof scores)[number]) => number) => scores.reduce((total, each) => total + of(each), 0);
  const [made, noticed, harmless] = [sum(({ mutants }) => mutants), sum((each) => each.noticed), sum((each) => each.harmless)];
  for (const line of inColumns(
    scores.map(({ rule, mutants, noticed: caught, harmless: same, unnoticed }) => [
      `${caught}/${mutants - same}`,
      rule,
      colors.dim(unnoticed.map(({ what }) => what).join(', ')),
    ]),
    44,
  ))
    out(line);
  out('');
  out(
    `${noticed} of ${made - harmless} mistakes are noticed by an example or a published value; ${harmless} more are proved to change nothing`,
  );
}
