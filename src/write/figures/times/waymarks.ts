import type { Machine, Rulebook } from '../../../link/rulebook.js';
import { inBaseUnit } from '../../../measure/quantity.js';

/** A limit that is shown where the rulebook has it, and for clinics that it matters to. */
interface Waymark {
  limit: string;
  isHere?: (rulebook: Rulebook) => boolean;
}

const withMachine = (kind: string) => (rulebook: Rulebook) => running(rulebook).some((machine) => machine.kind === kind);
const withAirRemoval = (way: string) => (rulebook: Rulebook) => holds(rulebook).some(({ airRemoval }) => airRemoval === way);
const unless = (fact: string, value: boolean) => (rulebook: Rulebook) => rulebook.clinic.facts[fact] !== value;

/** A hold of a steam program from one limit of temperature up to another. */
const withHold =
  (way: string, from: string, below?: string) =>
  (rulebook: Rulebook): boolean => {
    const [least, most] = [temperature(rulebook, from), below === undefined ? undefined : temperature(rulebook, below)];
    return holds(rulebook).some(
      (hold) =>
        hold.airRemoval === way &&
        hold.temperature >= (least ?? Number.NEGATIVE_INFINITY) &&
        hold.temperature < (most ?? Number.POSITIVE_INFINITY),
    );
  };

const [low, middle, high] = [
  'sterilize.steam-low-temperature',
  'sterilize.steam-middle-temperature',
  'sterilize.steam-high-temperature',
];

/** The limits of time that an instrument meets, by stage, in the order of the way. */
export const waymarks: { stage: string; marks: Waymark[] }[] = [
  {
    stage: 'chairside',
    marks: [
      { limit: 'holding.longest-dry-wait' },
      { limit: 'holding.treat-as-dried-after' },
      { limit: 'holding.start-within' },
      { limit: 'holding.longest-moist-hold' },
      { limit: 'holding.longest-soak' },
    ],
  },
  {
    stage: 'cleaning',
    marks: [
      { limit: 'washer.disinfection-hold', isHere: withMachine('washer') },
      { limit: 'washer.shortest-cooling', isHere: withMachine('washer') },
      { limit: 'washer.longest-stay', isHere: withMachine('washer') },
      { limit: 'ultrasonic.shortest-time', isHere: withMachine('ultrasonic-bath') },
      { limit: 'ultrasonic.longest-time', isHere: withMachine('ultrasonic-bath') },
      { limit: 'by-hand.shortest-soak' },
      { limit: 'cleaning.shortest-rinse' },
      { limit: 'cleaning.longest-wet-wait' },
    ],
  },
  {
    stage: 'sterilizing',
    marks: [
      { limit: 'sterilize.dynamic-134-hold', isHere: withHold('dynamic', high) },
      { limit: 'sterilize.dynamic-132-hold', isHere: withHold('dynamic', middle, high) },
      { limit: 'sterilize.gravity-wrapped-132-hold', isHere: withHold('gravity', middle) },
      { limit: 'sterilize.gravity-wrapped-121-hold', isHere: withHold('gravity', low, middle) },
      { limit: 'sterilize.dry-heat-160-hold', isHere: withMachine('dry-heat-sterilizer') },
      { limit: 'sterilize.dynamic-drying', isHere: withAirRemoval('dynamic') },
      { limit: 'sterilize.gravity-drying', isHere: withAirRemoval('gravity') },
      { limit: 'sterilize.cooling-time' },
    ],
  },
  {
    stage: 'release',
    marks: [
      { limit: 'release.spore-result-by' },
      { limit: 'storage.unwrapped-treatment-room' },
      { limit: 'storage.unwrapped-elsewhere' },
      { limit: 'storage.open-shelf' },
      { limit: 'storage.uncontrolled-longest' },
      { limit: 'storage.dated-longest', isHere: unless('clinic.dates-packs', false) },
      { limit: 'storage.look-again', isHere: unless('clinic.dates-packs', true) },
    ],
  },
];

function running({ machines }: Rulebook): Machine[] {
  return [...machines.values()].filter(({ inService }) => inService);
}

function temperature({ limits }: Rulebook, id: string): number | undefined {
  const limit = limits.get(id);
  return limit && inBaseUnit(limit.value);
}

/** The holds of the clinic's steam programs that sterilize loads, temperatures in °C. */
function holds(rulebook: Rulebook): { airRemoval: unknown; temperature: number }[] {
  const programs = running(rulebook).flatMap((machine) => machine.programs);
  return programs
    .filter(({ facts }) => facts['program.medium'] === 'steam' && facts['program.purpose'] === 'sterilizing-cycle')
    .map(({ facts }) => ({ airRemoval: facts['program.air-removal'], temperature: Number(facts['program.hold-temperature']) }));
}
