/** What stands around the places of a phrase: `page `, ` of ` and an empty text of `page {page} of {pages}`. */
export function aroundPlaces(phrase: string): string[] {
  return phrase.split(/\{[a-z-]+\}/);
}
