import { proveStrict, sayLooser } from '../../analyse/prove-strict.js';
import { type Analysis, analyse } from '../../analyse/questions.js';
import { boxInLine } from '../../analyse/say-box.js';
import { looserIn, withDecision } from '../../analyse/stricter.js';
import { packsAlone } from '../../link/packs-alone.js';
import type { Rulebook } from '../../link/rulebook.js';
import { didYouMean } from '../../read/nearest.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openSoundClinic } from '../context.js';
import { plural } from '../print-findings.js';
import { programName } from '../say.js';
import { sayShare } from '../say-share.js';
import { runMutants } from './analyse-mutants.js';

export interface AnalyseOptions extends CommonOptions {
  decision?: string;
  mutants?: boolean;
  drafts?: boolean;
  json?: boolean;
}

/** `rulebook analyse`: an exact look at every situation. The exit code is 1 when there are gaps or something was not decided. */
export function runAnalyse(context: Context, folder: string | undefined, options: AnalyseOptions): number {
  const open = openSoundClinic(context, folder, options);
  if (open === undefined) return 1;
  const { rulebook, opened } = open;
  const { decision } = options;
  if (decision !== undefined && !rulebook.decisions.has(decision))
    throw new BadUse(
      `unknown decision \`${decision}\``,
      didYouMean(decision, rulebook.decisions.keys()) ?? '`rulebook list decisions` shows them',
    );
  const packs = packsAlone(opened.loaded.packs, rulebook.clinic, rulebook.on, proveStrict).rulesOn(rulebook.on);
  if (options.mutants || options.drafts) {
    if (packs !== undefined) runMutants(context, packs, opened.loaded.fixtures, options);
    return 0;
  }
  const all = analyse(rulebook).filter((each) => decision === undefined || each.decision === decision);
  const follows =
    packs === undefined
      ? []
      : whatFollows(
          packs,
          rulebook,
          all.map((each) => each.decision),
        );
  if (options.json)
    context.out(
      JSON.stringify(
        { clinic: rulebook.clinic.id, on: rulebook.on, digest: rulebook.digest, decisions: all, follows },
        undefined,
        2,
      ),
    );
  else printAnalysis(context, all, follows, rulebook, folder ?? '.');
  return all.some(({ gaps, undecided }) => gaps.length > 0 || undecided.length > 0) ? 1 : 0;
}

/** An answer that is less strict than the packs by themselves would give it. */
interface Follows {
  decision: string;
  looser: string;
  /** Whether its own rules and limits make it so, as a recorded deviation does; otherwise a stricter answer that it looks at. */
  byItself: boolean;
}

function whatFollows(packs: Rulebook, rulebook: Rulebook, decisions: readonly string[]): Follows[] {
  const anyClinic = (rules: Rulebook): Rulebook => ({ ...rules, clinic: { ...rules.clinic, facts: {} } });
  const [before, after] = [anyClinic(packs), anyClinic(rulebook)];
  return decisions.flatMap((decision) => {
    const own = after.decisions.get(decision);
    const looser = looserIn(decision, before, after);
    if (looser === undefined || own === undefined) return [];
    const alone = looserIn(decision, before, withDecision({ ...before, facts: after.facts }, own));
    const said = looser === 'not decided' ? looser : sayLooser(looser, [rulebook.terms]);
    return [{ decision, looser: said, byItself: alone !== undefined }];
  });
}

function printAnalysis(
  { out }: Pick<Context, 'out'>,
  all: readonly Analysis[],
  follows: readonly Follows[],
  rulebook: Rulebook,
  folder: string,
): void {
  const row = (label: string, text: string) => out(`  ${colors.dim(label.padEnd(9))} ${text}`);
  const rules = all.reduce((sum, each) => sum + each.rules, 0);
  out(colors.bold(`${folder} on ${rulebook.on}`));
  row(
    'looked at',
    `every situation of ${plural(all.length, 'decision')} with ${plural(rules, 'rule')}, also where facts are missing`,
  );
  const gaps = all.flatMap(({ decision, gaps: regions, share }) =>
    regions.map((region) => ({ decision, share: share.gaps, region })),
  );
  if (gaps.length === 0) row('gaps', 'none: in every situation a rule speaks, or it is said why none does');
  for (const { decision, share, region } of gaps)
    row(
      'gap',
      `${decision}: no rule speaks where ${boxInLine(region.where)}${share === undefined ? '' : ` (all gaps: ${sayShare(share)})`}`,
    );
  for (const { decision, share } of all) {
    const marks = rulebook.decisions.get(decision)?.gaps ?? [];
    if (share.intended !== undefined && share.intended > 0)
      row(
        'intended',
        `${decision}, ${sayShare(share.intended)} of its situations: ${marks.map(({ because }) => because).join(' ')}`,
      );
  }
  const idle = all.flatMap(({ neverTrue }) => neverTrue);
  if (idle.length > 0) row('at rest', `never apply with what this clinic states about itself: ${idle.join(', ')}`);
  for (const rule of all.flatMap(({ overruled }) => overruled))
    row('overruled', `${rule}: a more restrictive rule always applies too`);
  for (const { rule, of } of all.flatMap(({ repeats }) => repeats))
    row('repeats', `${rule} says the same as ${of}, in the same situations`);
  for (const { programs, where } of all.flatMap(({ ties }) => ties))
    row('tie', `${programs.map((each) => programName(rulebook, each)).join(' and ')} come first alike where ${boxInLine(where)}`);
  for (const { decision, looser, byItself } of follows)
    row(
      byItself ? 'deviates' : 'follows',
      `${decision} is less strict than the packs, ${byItself ? 'as recorded' : 'since an answer that it looks at is stricter'}: ${looser}`,
    );
  for (const { decision, undecided } of all)
    for (const what of undecided) row('undecided', `${decision}: ${what}; the search was given up at its limit`);
  if (all.every(({ undecided }) => undecided.length === 0)) row('result', 'every question was decided');
}
