/**
 * Words of English that the gate looks for. The verbs are those with which steps, answers and cautions of the packs begin;
 * a test holds the list to them.
 */

/** Verbs that tell somebody to do something, where they stand first in a sentence. */
export const imperatives: ReadonlySet<string> = new Set(
  `add adjust aim allow always answer apply arrange ask avoid begin bend blow book break bring brush build call carry change
  charge check choose clean close collect come compare connect copy correct count cover cut decide degas descale dilute dip
  discard disconnect disinfect divide do don't drain draw dress drop dry empty enter exchange fill file find finish fit fix
  flush follow force free get give go hand hang have hold inject inspect install interrupt judge keep label lay leave let lift line list
  load lock look loosen lower mail make mark match measure mix mop move name never note offer oil open order pack pat pay photograph
  pick place post pour press print provide pull push put quarantine raise read recall recap rechlorinate record refer refill refuse
  reject release remove renew repeat replace report resterilize return rinse rub run sample say scrape scrub seal search see send
  separate set settle shake show shut sign sit soak sort splint spray spread stamp stand start stay sterilise sterilize stick stop store
  strike strip swab swish switch take tap teach tell test throw tie tighten tip touch train treat trust try turn undo unload
  unlock unpack unplug unscrew use wait walk warm wash watch wear weigh wipe withdraw work wrap write`.split(/\s+/),
);

/** Words before such a verb: `then rinse`. */
export const leadIn: ReadonlySet<string> = new Set('always also first last next now only please then'.split(' '));

/** Words that begin a clause behind which such a verb may stand: `if someone is hurt: rinse`. */
export const subordinate: ReadonlySet<string> = new Set('after as before if once unless until when where while'.split(' '));

/** Numbers as words. */
export const numberWords: readonly string[] =
  `half one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen
  nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand dozen couple quarter several`.split(/\s+/);

/** Units as words, that `units` does not have. */
export const unitWords: readonly string[] =
  `quarter quarters fortnight fortnights millimeter millimeters millimetre millimetres centimeter centimeters centimetre
  centimetres meter meters metre metres milliliter milliliters millilitre millilitres liter liters litre litres gram grams
  milligram milligrams kilogram kilograms degree degrees percent kelvin pascal kilopascal`.split(/\s+/);

/** Stretches of time, as in `each week` and `within an hour`. */
export const timeWords: readonly string[] = 'second minute hour day week fortnight month quarter year'.split(' ');

/** How often, in one word. */
export const oftenWords: readonly string[] =
  'hourly daily weekly fortnightly monthly quarterly yearly annually biannually biennially'.split(' ');
