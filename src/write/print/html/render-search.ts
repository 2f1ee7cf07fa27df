import type { Element } from 'hast';
import { h } from 'hastscript';
import { wordOf } from '../../text/word-of.js';
import type { Ink } from './ink.js';

/** The field of the search within the page. It is hidden until the script shows it, for without one it does nothing. */
export function renderSearch({ meta }: Pick<Ink, 'meta'>): Element {
  const word = (id: string) => wordOf(meta, `print.${id}`);
  const counts = { 'data-none': word('search-none'), 'data-one': word('search-one'), 'data-many': word('search-many') };
  return h('form.search', { role: 'search', hidden: true, ...counts }, [
    h('label', { htmlFor: 'search' }, word('search')),
    h('a.to-contents', { href: '#contents' }, word('contents')),
    h('input#search', { type: 'search', autoComplete: 'off', spellCheck: 'false', ariaKeyShortcuts: '/' }),
    h('p.found', { role: 'status' }),
    h('ol.hits'),
  ]);
}
