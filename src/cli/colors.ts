import pc from 'picocolors';

/** Colors on a terminal, and nowhere else: not in a file, a pipe or a build log, and not where NO_COLOR is set. */
export const colors = pc.createColors(process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined);
