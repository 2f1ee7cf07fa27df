import type { ChangedRegion, Impact } from '../../analyse/impact.js';
import type { OpenedSide } from '../open-side.js';
import { howShared, rewritten, sameOf, sayAnswer, sayProved, sayRules, saySide, sayVerdict, whatChanged } from './impact.js';

/** What a change does to the answers, as Markdown: a section a decision, a table of regions. */
export function impactAsMarkdown(impact: Impact, before: OpenedSide, after: OpenedSide): string[] {
  const others = impact.decisions.filter(({ verdict }) => verdict !== 'same');
  const same = sameOf(impact);
  return [
    '# What changes in the answers',
    '',
    `From ${safe(saySide(before))} to ${safe(saySide(after))}.`,
    '',
    `Proved: ${sayProved(same.length, others.length)}.`,
    ...rewritten(same).map((line, index) => `${index === 0 ? '\n' : ''}- ${safe(line)}`),
    ...others.flatMap((each) => [
      '',
      `## ${safe(each.title)}`,
      '',
      `\`${each.decision}\` ${sayVerdict(each)}.`,
      '',
      ...each.limits.map(({ limit, before: was, after: is }) => `- \`${limit}\`: ${safe(was)} becomes ${safe(is)}`),
      ...each.rules.map(({ rule, what }) => `- \`${rule}\`: ${whatChanged[what]}`),
      ...each.through.map((id) => `- through \`${id}\`, whose answer it looks at`),
      ...(each.changes.length === 0 ? [] : ['', '| Before | After | Where | Rules |', '| --- | --- | --- | --- |']),
      ...each.changes.flatMap(({ before: was, after: is, regions }) =>
        regions.map((region) =>
          row([sayAnswer(was, before.rulebook), sayAnswer(is, after.rulebook), where(region), rules(region)]),
        ),
      ),
      ...(each.open === undefined
        ? []
        : [
            '',
            `While facts are missing${each.open.more ? ', for example' : ''}:`,
            '',
            '| Possible before | Possible after | Where | Rules |',
            '| --- | --- | --- | --- |',
            ...each.open.regions.map((region) =>
              row([
                region.possible.before.map((answer) => sayAnswer(answer, before.rulebook)).join(', '),
                region.possible.after.map((answer) => sayAnswer(answer, after.rulebook)).join(', '),
                where(region),
                rules(region),
              ]),
            ),
          ]),
    ]),
    ...(others.some(({ share = 0 }) => share > 0) ? ['', howShared] : []),
  ];
}

function where(region: ChangedRegion): string {
  return region.where.map(({ label, is }) => `${label}: ${is}`).join('; ') || 'always';
}

function rules(region: ChangedRegion): string {
  return `${sayRules(region.rules.before)} → ${sayRules(region.rules.after)}`;
}

function row(cells: readonly string[]): string {
  return `| ${cells.map(safe).join(' | ')} |`;
}

/** Text that Markdown takes as it is. */
function safe(text: string): string {
  return text.replace(/[\\`*_[\]<>|#]/g, '\\$&').replace(/\s+/g, ' ');
}
