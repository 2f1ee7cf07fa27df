/** A day (YYYY-MM-DD) as a language writes it: `December 1, 2026` in en-US, `1 December 2026` in en-GB. */
export function sayDate(date: string, language: string): string {
  return new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${date}T00:00:00Z`));
}
