import type { Rulebook } from '../link/rulebook.js';

/** `Machine, Program` for the id of a program. */
export function programName(rulebook: Rulebook, id: string): string {
  const machine = rulebook.machines.get(id.split('/')[0] ?? '');
  const program = machine?.programs.find((each) => each.id === id);
  return machine && program ? `${machine.name}, ${program.name}` : id;
}

/** A citation in words: title and clause, and whether the value is recalled. */
export function citationText(
  rulebook: Pick<Rulebook, 'sources'>,
  source: { id: string; at?: string; evidence?: string },
): string {
  const title = rulebook.sources.get(source.id)?.title ?? source.id;
  return [title, source.at, source.evidence === 'recalled' ? 'recalled' : undefined]
    .filter((each) => each !== undefined)
    .join(', ');
}
