/**
 * A day (YYYY-MM-DD) as a language writes it: `December 1, 2026` in en-US, `1 December 2026` in en-GB. French counts the
 * first of a month: `1er décembre 2026`.
 */
export function sayDate(date: string, language: string): string {
  const said = new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${date}T00:00:00Z`));
  return language.startsWith('fr') ? said.replace(/^1 /, '1er ') : said;
}
