/** What a unit measures. Two quantities can be compared when they share it. */
export type Dimension =
  | 'time'
  | 'temperature'
  | 'temperature difference'
  | 'length'
  | 'volume'
  | 'mass'
  | 'pressure'
  | 'pressure rate'
  | 'conductivity'
  | 'temperature coefficient'
  | 'mass concentration'
  | 'water hardness'
  | 'dose'
  | 'surface load'
  | 'colony count'
  | 'population'
  | 'endotoxin level'
  | 'share'
  | 'acidity'
  | 'cycles'
  | 'count'
  | 'log reduction'
  | 'A0'
  | 'F0';

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

/** Molar masses in g/mol, from the standard atomic weights of IUPAC (abridged): calcium carbonate and calcium oxide. */
const [calciumCarbonate, calciumOxide] = [100.09, 56.08];

/**
 * Every unit the rules may use, smallest first within a dimension. Factors follow UCUM: a month is 30.4375 days and a
 * year 365.25 days (mean Julian), a week 7 days. `[in_i]` is 25.4 mm, a grain 64.79891 mg, a US gallon 3.785411784 L, an
 * imperial gallon 4.54609 L, each exactly; `[psi]` follows from pound and standard gravity.
 *
 * A0 is a number of seconds at 80 °C (ISO 15883-1), F0 a number of minutes at a reference temperature: both are kept
 * apart from time so that they are never compared with it. Water hardness counts alkaline earths as if all were calcium
 * carbonate, and is kept apart from other mass concentrations. Its codes say in braces what is weighed; without them
 * UCUM takes 10 mg/L of calcium oxide (1 °dH) and of calcium carbonate (1 °fH) for the same.
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
  unit('[ft_i]', 'length', 304.8, 'foot', 'feet', ['ft']),
  unit('m', 'length', 1000, 'm'),
  unit('mL', 'volume', 1, 'mL', 'mL', ['ml']),
  unit('L', 'volume', 1000, 'L', 'L', ['l']),
  unit('[gal_us]', 'volume', 3785.411784, 'US gallon', 'US gallons', ['gal']),
  unit('ug', 'mass', 1e-6, 'µg'),
  unit('mg', 'mass', 0.001, 'mg'),
  unit('[gr]', 'mass', 0.06479891, 'grain', 'grains'),
  unit('g', 'mass', 1, 'g'),
  unit('[lb_av]', 'mass', 453.59237, 'lb'),
  unit('kg', 'mass', 1000, 'kg'),
  unit('Pa', 'pressure', 0.001, 'Pa'),
  unit('mbar', 'pressure', 0.1, 'mbar'),
  unit('hPa', 'pressure', 0.1, 'hPa'),
  unit('kPa', 'pressure', 1, 'kPa'),
  unit("[in_i'Hg]", 'pressure', 3.3863788, 'inHg'),
  unit('[psi]', 'pressure', 6.894757293168361, 'psi'),
  unit('bar', 'pressure', 100, 'bar'),
  unit('MPa', 'pressure', 1000, 'MPa'),
  unit('Pa/min', 'pressure rate', 0.001, 'Pa/min'),
  unit('mbar/min', 'pressure rate', 0.1, 'mbar/min'),
  unit('kPa/min', 'pressure rate', 1, 'kPa/min'),
  unit('uS/cm', 'conductivity', 1, 'µS/cm'),
  unit('mS/cm', 'conductivity', 1000, 'mS/cm'),
  unit('%/K', 'temperature coefficient', 1, '% per K', '% per K', ['%/°C']),
  unit('mg/L', 'mass concentration', 1, 'mg/L', 'mg/L', ['mg/l']),
  unit('mg{CaCO3}/L', 'water hardness', 1, 'mg/L CaCO3', 'mg/L CaCO3', ['mg/l CaCO3', 'mg/L as CaCO3', 'mg/L CaCO₃']),
  unit('10.mg{CaCO3}/L', 'water hardness', 10, '°fH', '°fH', ['fH']),
  unit('[gr]{CaCO3}/[gal_br]', 'water hardness', 64.79891 / 4.54609, '°e', '°e', ['°Clark']),
  unit('[gr]{CaCO3}/[gal_us]', 'water hardness', 64.79891 / 3.785411784, 'gpg', 'gpg', ['grains per US gallon']),
  unit('10.mg{CaO}/L', 'water hardness', (10 * calciumCarbonate) / calciumOxide, '°dH', '°dH', ['dH']),
  unit('mmol{CaCO3}/L', 'water hardness', calciumCarbonate, 'mmol/L', 'mmol/L', ['mmol/l']),
  unit('mL/L', 'dose', 1, 'mL/L', 'mL/L', ['ml/l']),
  unit('ug/cm2', 'surface load', 1, 'µg/cm²', 'µg/cm²', ['µg/cm2']),
  unit('[CFU]/mL', 'colony count', 1, 'CFU/mL'),
  unit('{spores}', 'population', 1, 'spore', 'spores'),
  unit('[EU]/mL', 'endotoxin level', 1, 'EU/mL'),
  unit('%', 'share', 1, '%'),
  unit('[pH]', 'acidity', 1, 'pH'),
  unit('{cycles}', 'cycles', 1, 'cycle', 'cycles'),
  unit('1', 'count', 1, 'time', 'times'),
  unit('{log10}', 'log reduction', 1, 'log', 'log', ['logs']),
  unit('{A0}', 'A0', 1, 'A0'),
  unit('min{F0}', 'F0', 1, 'min F0'),
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
