import type { Fact, FactValue, Rulebook } from '../../link/rulebook.js';
import { calendarDay } from '../../measure/day-number.js';
import { formatQuantity, fromBaseUnit } from '../../measure/quantity.js';
import { join, type Markdown } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { sayDate } from '../text/say-date.js';
import { joinList } from '../text/say-list.js';
import { sayMember } from './say-member.js';

/** A fact's value in words: `stainless steel and glass`, `yes`, `12 minutes`. */
export function sayFactValue(rulebook: Rulebook, fact: Fact, value: FactValue): Markdown {
  if (typeof value === 'boolean' || typeof value === 'string') return join([sayMember(rulebook, fact, value)]);
  if (typeof value !== 'number')
    return value.length === 0
      ? join(['nothing'])
      : joinList(
          value.map((member) => sayMember(rulebook, fact, member)),
          'and',
        );
  if (fact.type === 'date') return said(sayDate(calendarDay(value), rulebook.language), fact.id);
  return said(fact.type === 'quantity' ? formatQuantity(fromBaseUnit(value, fact.unit ?? '')) : String(value), fact.id);
}
