/** The sentences of a text: parted by stops, by line breaks, and by a colon before a capital letter. */
export function splitSentences(text: string): string[] {
  return text
    .split(/(?<=[.!?]["”’)]?)\s+|\n|(?<=:)\s+(?=["“(]?\p{Lu})/u)
    .map((sentence) => sentence.trim())
    .filter((sentence) => /\p{L}/u.test(sentence));
}
