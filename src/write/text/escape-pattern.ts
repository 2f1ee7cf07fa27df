/** Text as a regular expression that finds exactly it. */
export function escapePattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);
}
