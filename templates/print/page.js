// Lets the keyboard scroll wide tables, searches the page, and shows where one is in it. Runs inline and asks for nothing from outside;
// the page can be read without it.
(() => {
  for (const box of document.querySelectorAll('.tablebox')) new ResizeObserver(() => letScroll(box)).observe(box);
  const form = document.querySelector('.search');
  if (form === null) return;
  const field = form.querySelector('input');
  const status = form.querySelector('[role=status]');
  const list = form.querySelector('.hits');
  const contents = document.querySelector('.contents');
  const narrow = matchMedia('(max-width: 79.99rem)');
  const fewest = 2;
  const others = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ı: 'i', '’': "'", '‑': '-', '\u00a0': ' ' };
  const notes = '.unseen, .change-word';
  let sections;
  let waiting;

  form.hidden = false;

  const links = new Map([...contents.querySelectorAll('a')].map((link) => [link.getAttribute('href').slice(1), link]));
  const inView = new Set();
  const eye = new IntersectionObserver(follow, { rootMargin: '-15% 0px -84% 0px' });
  for (const section of document.querySelectorAll('.chapter, .part')) eye.observe(section);

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    search();
    list.querySelector('a')?.click();
  });
  form.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    field.value = '';
    search();
    field.focus();
  });
  field.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(search, 120);
  });
  field.addEventListener('focus', () => {
    list.hidden = false;
  });
  list.addEventListener('click', (event) => {
    const hit = event.target.closest('a');
    if (hit === null) return;
    event.preventDefault();
    goTo(hit.goal);
  });
  document.addEventListener('keydown', (event) => {
    const typing = event.target.closest?.('input, textarea, select, [contenteditable]');
    if (event.key !== '/' || typing || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    field.focus();
    field.select();
  });

  /** Lists the sections that hold every word of the field, those with all words in their heading first. */
  function search() {
    clearTimeout(waiting);
    const words = fold(field.value).text.split(/\s+/).filter(Boolean);
    const asked = words.join('').length >= fewest;
    sections ??= readSections();
    const hits = asked ? sections.flatMap((section) => rank(section, words)).sort((a, b) => a.rank - b.rank) : [];
    list.replaceChildren(...hits.map((hit) => show(hit, words)));
    list.hidden = false;
    contents.classList.toggle('out', asked);
    status.textContent = asked ? count(hits.length) : '';
    mark(hits, words);
  }

  function count(number) {
    const { none, one, many } = form.dataset;
    return (number === 0 ? none : number === 1 ? one : many).replace(
      '{count}',
      number.toLocaleString(document.documentElement.lang),
    );
  }

  function rank(section, words) {
    const within = (text) => words.every((word) => text.includes(word));
    if (!within(section.all)) return [];
    const whole = section.blocks.find(({ folded }) => within(folded.text));
    const part = section.blocks.find(({ folded }) => words.some((word) => folded.text.includes(word)));
    const said = whole ?? part ?? section.blocks[0];
    if (within(section.title)) return [{ section, said, goal: section.heading, rank: 0 }];
    return [{ section, said, goal: said ?? section.heading, rank: whole ? 1 : 2 }];
  }

  function show({ section, said, goal }, words) {
    const hit = document.createElement('a');
    hit.href = `#${section.heading.element.id}`;
    hit.goal = { heading: section.heading.element, block: goal.element };
    hit.append(line('where', withMarks(section.heading, words)), line('snippet', said ? snippet(said, words) : []));
    const item = document.createElement('li');
    item.append(hit);
    return item;
  }

  function line(className, children) {
    const span = document.createElement('span');
    span.className = className;
    span.append(...children);
    return span;
  }

  /** Some words around the first that was found. */
  function snippet({ text, folded }, words) {
    const first = Math.min(...spans(folded, words).map(([from]) => from), text.length);
    const wanted = first === text.length ? 0 : Math.max(0, first - 40);
    const from = wanted === 0 ? 0 : text.indexOf(' ', wanted) + 1;
    const end = text.length <= from + 140 ? text.length : text.lastIndexOf(' ', from + 140);
    const cut = text.slice(from, end > from ? end : from + 140);
    return [
      from > 0 ? '… ' : '',
      ...withMarks({ text: cut, folded: fold(cut) }, words),
      from + cut.length < text.length ? ' …' : '',
    ];
  }

  function withMarks({ text, folded }, words) {
    const parts = [];
    let at = 0;
    for (const [from, to] of spans(folded, words)) {
      const found = document.createElement('mark');
      found.textContent = text.slice(from, to);
      parts.push(text.slice(at, from), found);
      at = to;
    }
    return [...parts, text.slice(at)];
  }

  /** Where the words stand in a text, in order, none over another. */
  function spans({ text, places }, words) {
    const found = words.flatMap((word) => {
      const at = [];
      for (let i = text.indexOf(word); i >= 0; i = text.indexOf(word, i + word.length))
        at.push([places[i], places[i + word.length]]);
      return at;
    });
    found.sort(([a, b], [c, d]) => a - c || d - b);
    return found.filter(([from], index) => found.slice(0, index).every(([, to]) => to <= from));
  }

  /** Marks what was found in the text itself, in browsers that can do so without changing the page. */
  function mark(hits, words) {
    if (!('highlights' in CSS)) return;
    CSS.highlights.delete('found');
    const ranges = hits.flatMap(({ section }) => [section.heading, ...section.blocks].flatMap((block) => rangesIn(block, words)));
    if (ranges.length > 0) CSS.highlights.set('found', new Highlight(...ranges));
  }

  function rangesIn({ element, folded }, words) {
    if (!words.some((word) => folded.text.includes(word))) return [];
    const ranges = [];
    const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
      for (const [from, to] of spans(fold(node.data), words)) {
        const range = new Range();
        range.setStart(node, from);
        range.setEnd(node, to);
        ranges.push(range);
      }
    return ranges;
  }

  /** Leads eyes to what was found, and the reading place of a screen reader to the heading above it. */
  function goTo({ heading, block }) {
    if (narrow.matches) list.hidden = true;
    history.pushState(null, '', `#${heading.id}`);
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
    heading.scrollIntoView();
    const { top, bottom } = block.getBoundingClientRect();
    if (top < 0 || bottom > innerHeight) block.scrollIntoView({ block: 'center' });
  }

  /** Each heading with the paragraphs, items and rows beneath it, as far as the next heading. */
  function readSections() {
    return [...document.querySelectorAll('main section')].map((section) => {
      const [heading, ...blocks] = [...section.querySelectorAll('h2, h3, h4, p, li:not(:has(p)), tr, figcaption')]
        .filter((element) => element.closest('section') === section)
        .map(readBlock);
      const all = [heading, ...blocks].map(({ folded }) => folded.text).join('\n');
      return { heading, blocks: blocks.filter(({ text }) => text !== ''), title: heading.folded.text, all };
    });
  }

  function readBlock(element) {
    const cells = element.cells ? [...element.cells] : [element];
    const text = cells
      .map((cell) => wordsOf(cell).replace(/\s+/g, ' ').trim())
      .filter(Boolean)
      .join(' · ');
    return { element, text, folded: fold(text) };
  }

  /** The text of an element without the words that say what was changed. */
  function wordsOf(element) {
    if (!element.querySelector(notes)) return element.textContent;
    const copy = element.cloneNode(true);
    for (const note of copy.querySelectorAll(notes)) note.remove();
    return copy.textContent;
  }

  /** A text without accents and capitals, and for each of its letters the place it had before. */
  function fold(text) {
    const letters = [];
    const places = [];
    let at = 0;
    for (const sign of text) {
      const plain = sign.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
      for (const letter of others[plain] ?? plain) {
        letters.push(letter);
        for (let i = 0; i < letter.length; i++) places.push(at);
      }
      at += sign.length;
    }
    places.push(at);
    return { text: letters.join(''), places };
  }

  /** Shows in the contents which section is being read. */
  function follow(changes) {
    for (const { target, isIntersecting } of changes) inView[isIntersecting ? 'add' : 'delete'](target);
    const [section] = [...inView].sort((a, b) => (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? 1 : -1));
    const link = links.get(section?.querySelector('h2, h3')?.id);
    if (link === undefined || link.ariaCurrent) return;
    contents.querySelector('[aria-current]')?.removeAttribute('aria-current');
    link.setAttribute('aria-current', 'true');
    if (!narrow.matches) link.scrollIntoView({ block: 'nearest' });
  }

  /** A table that is wider than its place can be scrolled with the keyboard as well. */
  function letScroll(box) {
    const wide = box.scrollWidth > box.clientWidth + 1;
    const heading = box.closest('section')?.querySelector('h2, h3, h4');
    if (wide) {
      box.tabIndex = 0;
      box.setAttribute('role', 'group');
      if (heading?.id) box.setAttribute('aria-labelledby', heading.id);
    } else for (const name of ['tabindex', 'role', 'aria-labelledby']) box.removeAttribute(name);
  }
})();
