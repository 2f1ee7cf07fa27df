import type { Fact, FactValue, Rulebook } from '../../link/rulebook.js';
import { calendarDay } from '../../measure/day-number.js';
import { fromBaseUnit } from '../../measure/quantity.js';
import { join, type Markdown } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phrase } from '../text/phrase.js';
import { sayDate } from '../text/say-date.js';
import { joinList } from '../text/say-list.js';
import { sayNumber } from '../text/say-number.js';
import { sayPlainQuantity } from '../text/say-quantity.js';
import { sayMember } from './say-member.js';

/** A fact's value in words: `stainless steel and glass`, `yes`, `12 minutes`. */
export function sayFactValue(rulebook: Rulebook, fact: Fact, value: FactValue): Markdown {
  if (typeof value === 'boolean' || typeof value === 'string') return join([sayMember(rulebook, fact, value)]);
  if (typeof value !== 'number')
    return value.length === 0
      ? join([phrase(rulebook, 'answer.nothing')])
      : joinList(
          rulebook,
          value.map((member) => sayMember(rulebook, fact, member)),
          'and',
        );
  if (fact.type === 'date') return said(sayDate(calendarDay(value), rulebook.language), fact.id);
  const words =
    fact.type === 'quantity'
      ? sayPlainQuantity(rulebook, fromBaseUnit(value, fact.unit ?? ''))
      : sayNumber(rulebook.language, value);
  return said(words, fact.id);
}
