import { type ChangedRegion, type DecisionImpact, type Impact, impactOf } from '../../analyse/impact.js';
import { usualEffort } from '../../analyse/regions.js';
import { boxInLine } from '../../analyse/say-box.js';
import type { Rulebook } from '../../link/rulebook.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import type { CommonOptions, Context } from '../context.js';
import { type OpenedSide, openSide } from '../open-side.js';
import { plural } from '../print-findings.js';
import { programName } from '../say.js';
import { sayShare } from '../say-share.js';
import { asArguments } from '../say-situation.js';
import { impactAsMarkdown } from './impact-markdown.js';

export interface ImpactOptions extends CommonOptions {
  from?: string;
  to?: string;
  regions?: string;
  json?: boolean;
  markdown?: boolean;
}

/**
 * `rulebook impact`: which situations get another answer after a change. The exit code is 1 when something could not be decided or
 * one side has errors.
 */
export function runImpact(context: Context, folder: string | undefined, options: ImpactOptions): number {
  const { from = 'HEAD', to, ...common } = options;
  const regions = Number(options.regions ?? usualEffort.regions);
  if (!Number.isSafeInteger(regions) || regions < 1)
    throw new BadUse(`\`${options.regions ?? ''}\` is not a number of regions`, 'write a whole number of 1 or more');
  const clinic = folder ?? '.';
  const before = openSide(context, from, clinic, common);
  const after = before && openSide(context, to, clinic, common);
  if (before === undefined || after === undefined) return 1;
  const impact = impactOf(before.rulebook, after.rulebook, { ...usualEffort, regions });
  if (options.json) context.out(JSON.stringify({ from: sideAsJson(before), to: sideAsJson(after), ...impact }, undefined, 2));
  else if (options.markdown) for (const line of impactAsMarkdown(impact, before, after)) context.out(line);
  else printImpact(context, impact, before, after);
  return impact.decisions.some(({ verdict }) => verdict === 'not decided') ? 1 : 0;
}

function sideAsJson({ rulebook, name }: OpenedSide): { name: string; on: string; digest: string } {
  return { name, on: rulebook.on, digest: rulebook.digest };
}

function printImpact({ out }: Pick<Context, 'out'>, impact: Impact, before: OpenedSide, after: OpenedSide): void {
  out(`from ${saySide(before)} to ${saySide(after)}`);
  const [same, others] = [sameOf(impact), impact.decisions.filter(({ verdict }) => verdict !== 'same')];
  for (const decision of others) printDecision(out, decision, before.rulebook, after.rulebook);
  if (others.length === 0) out('');
  out(`${colors.bold('proved')}  ${sayProved(same.length, others.length)}`);
  for (const line of rewritten(same)) out(`        ${line}`);
  if (others.some(({ share = 0 }) => share > 0)) out(colors.dim(howShared));
}

/** `the working copy, rules of 2026-12-01,` */
export function saySide({ name, rulebook }: OpenedSide): string {
  return name.includes(rulebook.on) ? name : `${name} (rules of ${rulebook.on})`;
}

/** What shares are shares of. */
export const howShared =
  'Shares are of the situations in which everything is stated. Values of a fact count alike, and so do the ranges into which rules cut a number.';

/** Decisions of which it is proved that no answer changes. */
export function sameOf({ decisions }: Impact): DecisionImpact[] {
  return decisions.filter(({ verdict }) => verdict === 'same');
}

/** `no answer changes`, or of how many decisions none does. */
export function sayProved(same: number, others: number): string {
  if (others === 0) return `no answer changes, in no situation of ${plural(same, 'decision')}`;
  return same === 0 ? 'nothing' : `no answer of the other ${plural(same, 'decision')} changes`;
}

/** Rules that are written in another way although no answer changes. */
export function rewritten(same: readonly DecisionImpact[]): string[] {
  return same.flatMap(({ rules, limits }) => [
    ...rules.map(({ rule, what }) => `${rule}: ${whatChanged[what]}, to the same effect`),
    ...limits.map(({ limit, before, after }) => `${limit}: ${before} becomes ${after}, to the same effect`),
  ]);
}

export const whatChanged: Record<DecisionImpact['rules'][number]['what'], string> = {
  new: 'new rule',
  retired: 'rule retired',
  condition: 'other condition',
  outcome: 'other outcome',
  needs: 'other needs',
  words: 'other words',
};

/** How a verdict reads where it is not simply a list of changes. */
export function sayVerdict({ verdict, share, clashes }: DecisionImpact): string {
  switch (verdict) {
    case 'new':
      return 'is new';
    case 'gone':
      return 'is gone';
    case 'not decided':
      return clashes.length > 0
        ? `cannot be compared: ${clashes.join(', ')} is of another type`
        : 'is not decided: the search was given up, and more may change than is listed';
    case 'many':
      return 'changes in more regions than are listed (`--regions` lists more)';
    case 'same':
      return 'does not change';
    case 'changed':
      if (share === undefined) return 'changes';
      return share === 0 ? 'changes only while facts are missing' : `changes in ${sayShare(share)} of all situations`;
  }
}

/** An answer in a heading: an outcome's id, or a program's name. */
export function sayAnswer(answer: string, rulebook: Rulebook): string {
  return answer === 'none' ? 'no program' : programName(rulebook, answer);
}

/** Most regions of one change that are printed for people. */
const mostRegions = 4;

function printDecision(out: (line: string) => void, impact: DecisionImpact, before: Rulebook, after: Rulebook): void {
  out('');
  out(`${colors.bold(impact.decision)}  ${sayVerdict(impact)}`);
  out(
    `  ${colors.dim('question')} ${after.decisions.get(impact.decision)?.question ?? before.decisions.get(impact.decision)?.question ?? ''}`,
  );
  for (const { limit, before: was, after: is } of impact.limits)
    out(`  ${colors.dim('limit   ')} ${limit}: ${was} becomes ${is}`);
  for (const { rule, what } of impact.rules) out(`  ${colors.dim('rule    ')} ${rule}: ${whatChanged[what]}`);
  for (const id of impact.through) out(`  ${colors.dim('through ')} ${id}, whose answer it looks at`);
  for (const { before: was, after: is, regions } of impact.changes) {
    out(`  ${colors.bold(`${sayAnswer(was, before)} -> ${sayAnswer(is, after)}`)}`);
    for (const region of regions.slice(0, mostRegions)) printRegion(out, region, impact.decision, after);
    if (regions.length > mostRegions)
      out(`    ${colors.dim(`and ${plural(regions.length - mostRegions, 'more region')} (--json shows all)`)}`);
  }
  if (impact.open === undefined) return;
  const more = impact.open.more ? ', for example' : '';
  out(`  ${colors.bold('while facts are missing')}${more}`);
  for (const region of impact.open.regions) {
    const possible = (side: 'before' | 'after') =>
      region.possible[side].map((each) => sayAnswer(each, side === 'before' ? before : after)).join(', ');
    out(`    possible ${possible('before')} -> ${possible('after')}`);
    printRegion(out, region, impact.decision, after);
  }
}

function printRegion(out: (line: string) => void, region: ChangedRegion, decision: string, after: Rulebook): void {
  out(`    ${colors.dim('where')} ${boxInLine(region.where)}`);
  out(`    ${colors.dim('rules')} ${sayRules(region.rules.before)} -> ${sayRules(region.rules.after)}`);
  out(`    ${colors.dim('try  ')} rulebook decide ${decision} ${asArguments(region.situation, after.facts)}`);
}

/** The rules that gave an answer, or that none did. */
export function sayRules(rules: readonly string[]): string {
  return rules.length === 0 ? 'no rule' : rules.join(', ');
}
