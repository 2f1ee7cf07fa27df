const longest = 80;

/** Somebody's own words in backticks, fit for a message: on one line, cut where they are long. */
export function quoted(words: string): string {
  const line = words
    .slice(0, longest * 4)
    .replace(/\s+/g, ' ')
    .replace(/\p{Cc}/gu, '\u{fffd}');
  if (line.length <= longest && words.length <= longest * 4) return `\`${line}\``;
  return `\`${line.slice(0, longest - 1).replace(/[\ud800-\udbff]$/, '')}…\``;
}

/** Names in backticks, with commas between. */
export function quotedList(names: Iterable<string>): string {
  return [...names].map(quoted).join(', ');
}
