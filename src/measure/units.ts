/** What a unit measures. Two quantities can be compared when they share it. */
export type Dimension =
  | 'time'
  | 'temperature'
  | 'temperature difference'
  | 'length'
  | 'volume'
  | 'mass'
  | 'pressure'
  | 'conductivity'
  | 'mass concentration'
  | 'surface load'
  | 'colony count'
  | 'population'
  | 'endotoxin level'
  | 'share'
  | 'acidity'
  | 'cycles'
  | 'count'
  | 'A0';

export interface Unit {
  /** UCUM code. */
  ucum: string;
  dimension: Dimension;
  /** How many base units one of it is. Only °F also needs `offset`: base = value * factor + offset. */
  factor: number;
  offset?: number;
  /** As printed after a number; plural where a number other than 1 stands before it. */
  one: string;
  many: string;
  /** How people write it in YAML, besides the UCUM code and the printed forms. */
  also: readonly string[];
}

const unit = (
  ucum: string,
  dimension: Dimension,
  factor: number,
  one: string,
  many: string = one,
  also: readonly string[] = [],
): Unit => ({ ucum, dimension, factor, one, many, also });

/**
 * Every unit the rules may use, smallest first within a dimension. Factors follow UCUM: a month is 30.4375 days and a
 * year 365.25 days (mean Julian), a week 7 days. `[in_i]` is 25.4 mm exactly. A0 is a number of seconds at 80 °C
 * (ISO 15883-1) and is kept apart from time so that the two are never compared.
 */
export const units: readonly Unit[] = [
  unit('s', 'time', 1, 'second', 'seconds', ['sec']),
  unit('min', 'time', 60, 'minute', 'minutes'),
  unit('h', 'time', 3600, 'hour', 'hours'),
  unit('d', 'time', 86_400, 'day', 'days'),
  unit('wk', 'time', 604_800, 'week', 'weeks'),
  unit('mo', 'time', 2_629_800, 'month', 'months'),
  unit('a', 'time', 31_557_600, 'year', 'years'),
  unit('Cel', 'temperature', 1, '°C'),
  { ...unit('[degF]', 'temperature', 5 / 9, '°F'), offset: -160 / 9 },
  unit('K', 'temperature difference', 1, 'K'),
  unit('mm', 'length', 1, 'mm'),
  unit('cm', 'length', 10, 'cm'),
  unit('[in_i]', 'length', 25.4, 'inch', 'inches', ['in']),
  unit('m', 'length', 1000, 'm'),
  unit('mL', 'volume', 1, 'mL', 'mL', ['ml']),
  unit('L', 'volume', 1000, 'L', 'L', ['l']),
  unit('ug', 'mass', 1e-6, 'µg'),
  unit('mg', 'mass', 0.001, 'mg'),
  unit('g', 'mass', 1, 'g'),
  unit('kg', 'mass', 1000, 'kg'),
  unit('mbar', 'pressure', 0.1, 'mbar'),
  unit('kPa', 'pressure', 1, 'kPa'),
  unit('bar', 'pressure', 100, 'bar'),
  unit('uS/cm', 'conductivity', 1, 'µS/cm'),
  unit('mg/L', 'mass concentration', 1, 'mg/L', 'mg/L', ['mg/l']),
  unit('ug/cm2', 'surface load', 1, 'µg/cm²', 'µg/cm²', ['µg/cm2']),
  unit('[CFU]/mL', 'colony count', 1, 'CFU/mL'),
  unit('{spores}', 'population', 1, 'spore', 'spores'),
  unit('[EU]/mL', 'endotoxin level', 1, 'EU/mL'),
  unit('%', 'share', 1, '%'),
  unit('[pH]', 'acidity', 1, 'pH'),
  unit('{cycles}', 'cycles', 1, 'cycle', 'cycles'),
  unit('1', 'count', 1, 'time', 'times'),
  unit('{A0}', 'A0', 1, 'A0'),
];

const byName = new Map(
  units.flatMap((each) => [each.ucum, each.one, each.many, ...each.also].map((name) => [name, each] as const)),
);

/** Finds a unit by its UCUM code, its printed form or another way people write it. */
export function findUnit(name: string): Unit | undefined {
  return byName.get(name.replace('μ', 'µ'));
}

/** Every name by which a unit is known, for "did you mean". */
export function unitNames(): string[] {
  return [...byName.keys()];
}
