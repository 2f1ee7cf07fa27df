import { units } from '../../measure/units.js';
import type { Finding } from '../../read/finding.js';
import { escapePattern } from '../text/escape-pattern.js';
import type { Block } from './blocks.js';
import { elsewhere } from './origins.js';
import type { PlaceOf } from './place-of.js';
import { numberWords, oftenWords, timeWords, unitWords } from './words-en.js';

/** Reports numbers with a unit, and how often something is done, that do not come out of the rulebook. */
export function checkNumbers(blocks: readonly Block[], language: string, placeOf: PlaceOf): Finding[] {
  const patterns = language.startsWith('en') ? [inDigits, ...inEnglish] : [inDigits];
  return blocks.flatMap(({ node, words }): Finding[] => {
    const found = patterns.flatMap((pattern) => [...words.matchAll(pattern)].map(([number]) => number.trim()));
    return found.map((number) => ({
      code: 'E609',
      message: `\`${number}\` does not come out of the rules`,
      place: placeOf(node, number),
      help: 'make it a limit or the interval of a task, and write `[](limit:id)` or `[](every:id)`',
    }));
  });
}

const printed = units.flatMap(({ one, many }) => [one, many]);
const signs = alternatives([...printed, 'min', 'sec', 'hrs', 'hr']);
const spelled = alternatives([
  ...printed.filter((word) => /^[a-z ]{3,}$/.test(word) && !/^(?:cycle|time|spore|log|bar)/.test(word)),
  ...unitWords,
]);

/** `10 minutes`, `5-minute`, `134 °C`, `70%`, `A0 600`, `pH 7`. */
const inDigits = new RegExp(
  String.raw`(?<![\p{L}\d.,/-])(?:(?:A0|pH) ?\d[\d.,]*|\d[\d.,]*[ \u00a0-]?(?:${signs})(?![\p{L}\d/]))`,
  'gu',
);

const numbers = alternatives(numberWords);
const times = alternatives(timeWords);
/** `A second box` is no time. */
const longTimes = alternatives(timeWords.filter((word) => word !== 'second'));

const inEnglish = [
  // `ten minutes`, `half an hour`, `two-hour`, `a couple of days`.
  String.raw`(?:${numbers})[ \u00a0-](?:an? |of |of an? )?(?:${spelled})`,
  // `twice a week`, `three times each day`.
  `(?:once|twice|thrice|(?:${numbers}) times) (?:an?|each|every|per|in an?) (?:${times})`,
  // `each week`, `per year`. Not `each cycle`, which is no stretch of time.
  `(?:each|every|per) (?:${times})(?! of use)`,
  // `within an hour`, `about a month`; not behind a limit, whose unit it then completes: `[](limit:x) in a minute`.
  `(?<!${elsewhere} )(?:within|in|for|after|about|before) an? (?:${longTimes})(?! of use)`,
  `an? (?:${longTimes}) (?:after|before|ahead|later|earlier)`,
  // `is tested weekly`; not `weekly checks`, which is a name.
  String.raw`(?:${alternatives(oftenWords)})(?=[.,;:)]|$| (?:and|or|by|with|when|until|to|from)\b)`,
].map((pattern) => new RegExp(String.raw`(?<![\p{L}\d-])${pattern}(?![\p{L}])`, 'giu'));

/** Longer ones first, so that the whole word is found. */
function alternatives(words: readonly string[]): string {
  return [...new Set(words)]
    .sort((a, b) => b.length - a.length)
    .map(escapePattern)
    .join('|');
}
