/**
 * A text with its days (`2026-03-02`) and times (`14:10`) as a language writes them in a column: `Mar 2, 2026`, `2:10 PM` in en-US,
 * `2 Mar 2026`, `14:10` in en-GB.
 */
export function sayMoments(text: string, language: string): string {
  return text
    .replace(/\b\d{4}-\d{2}-\d{2}\b/g, (day) => say(language, { dateStyle: 'medium' }, day, `${day}T00:00:00Z`))
    .replace(/\b\d{2}:\d{2}\b/g, (time) => say(language, { timeStyle: 'short' }, time, `2000-01-01T${time}:00Z`));
}

/** As it stands, where it is no day or time. */
function say(language: string, style: Intl.DateTimeFormatOptions, written: string, moment: string): string {
  const date = new Date(moment);
  if (Number.isNaN(date.getTime())) return written;
  // Which space stands before PM differs between versions of the locale data; a narrow one is in few fonts.
  const said = new Intl.DateTimeFormat(language, { ...style, timeZone: 'UTC' }).format(date).replaceAll('\u202f', ' ');
  return style.timeStyle === undefined ? said : said.replaceAll(' ', '\u00a0');
}
