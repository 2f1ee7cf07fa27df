import type { Rulebook } from '../link/rulebook.js';
import { a0OfHold } from '../measure/a0.js';
import { inBaseUnit } from '../measure/quantity.js';
import type { Finding } from '../read/finding.js';

/** Compares what machine sheets claim of a program with what its stages add up to: A0 and duration. */
export function checkPrograms(rulebook: Rulebook): Finding[] {
  return [...rulebook.machines.values()].flatMap((machine) =>
    machine.programs.flatMap((program): Finding[] => {
      const holds = program.stages.flatMap(({ temperature, time }) => (temperature && time ? [a0OfHold(temperature, time)] : []));
      const a0 = holds.reduce((sum, each) => sum + inBaseUnit(each), 0);
      const seconds = program.stages.reduce((sum, { time }) => sum + (time ? inBaseUnit(time) : 0), 0);
      const [claimedA0, claimedDuration] = [
        Number(program.facts['program.a0'] ?? 0),
        Number(program.facts['program.duration'] ?? Number.POSITIVE_INFINITY),
      ];
      const findings: Finding[] = [];
      if (claimedA0 > a0 * (1 + 1e-9))
        findings.push({
          code: 'E403',
          message: `program \`${program.id}\` claims A0 ${claimedA0}, its stages add up to A0 ${Math.round(a0)}`,
          place: machine.place,
          help: "check temperature and time of the disinfection stage against the maker's sheet",
        });
      if (seconds > claimedDuration * (1 + 1e-9))
        findings.push({
          code: 'E404',
          message: `program \`${program.id}\` claims ${claimedDuration / 60} minutes, its stages add up to ${Math.round(seconds / 60)} minutes`,
          place: machine.place,
          help: "check the stages against the maker's sheet",
        });
      return findings;
    }),
  );
}
