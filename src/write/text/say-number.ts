const formats = new Map<string, Intl.NumberFormat>();

/** A number as a language writes it: `1.5` in en-US, `1,5` in fr-CA; from 10,000 on its digits stand in groups. */
export function sayNumber(language: string, value: number): string {
  // The usual case without the tables of `Intl`, which take long to load.
  if (Number.isSafeInteger(value) && Math.abs(value) < 10_000) return String(value);
  const grouped = Math.abs(value) >= 10_000;
  const key = `${language} ${grouped}`;
  const format = formats.get(key) ?? new Intl.NumberFormat(language, { useGrouping: grouped, maximumSignificantDigits: 15 });
  formats.set(key, format);
  return format.format(value);
}
