import { type Opened, part } from './open-docx.js';
import { all, child, type Element, elementsOf, valueAt } from './read-xml.js';

/** The order in which the standard wants the children of these elements, as far as the files use them (ECMA-376, part 1, 17). */
const orders: Readonly<Record<string, string>> = {
  'w:pPr':
    'pStyle keepNext keepLines pageBreakBefore framePr widowControl numPr suppressLineNumbers pBdr shd tabs suppressAutoHyphens kinsoku wordWrap overflowPunct topLinePunct autoSpaceDE autoSpaceDN bidi adjustRightInd snapToGrid spacing ind contextualSpacing mirrorIndents suppressOverlap jc textDirection textAlignment textboxTightWrap outlineLvl divId cnfStyle rPr sectPr pPrChange',
  'w:rPr':
    'ins del moveFrom moveTo rStyle rFonts b bCs i iCs caps smallCaps strike dstrike outline shadow emboss imprint noProof snapToGrid vanish webHidden color spacing w kern position sz szCs highlight u effect bdr shd fitText vertAlign rtl cs em lang eastAsianLayout specVanish oMath rPrChange',
  'w:tblPr':
    'tblStyle tblpPr tblOverlap bidiVisual tblStyleRowBandSize tblStyleColBandSize tblW jc tblCellSpacing tblInd tblBorders shd tblLayout tblCellMar tblLook tblCaption tblDescription tblPrChange',
  'w:tcPr':
    'cnfStyle tcW gridSpan hMerge vMerge tcBorders shd noWrap tcMar textDirection tcFitText vAlign hideMark headers cellIns cellDel cellMerge tcPrChange',
  'w:sectPr':
    'headerReference footerReference footnotePr endnotePr type pgSz pgMar paperSrc pgBorders lnNumType pgNumType cols formProt vAlign noEndnote titlePg textDirection bidi rtlGutter docGrid printerSettings sectPrChange',
  'w:lvl': 'start numFmt lvlRestart pStyle isLgl suff lvlText lvlPicBulletId legacy lvlJc pPr rPr',
  'w:style':
    'name aliases basedOn next link autoRedefine hidden uiPriority semiHidden unhideWhenUsed qFormat locked personal personalCompose personalReply rsid pPr rPr tblPr trPr tcPr tblStylePr',
  'w:pBdr': 'top left bottom right between bar',
  'w:tbl': 'bookmarkStart bookmarkEnd tblPr tblGrid tr',
  'w:tc': 'tcPr p tbl',
  'w:p': 'pPr r hyperlink bookmarkStart bookmarkEnd ins del sdt',
  'w:hyperlink': 'r ins del bookmarkStart bookmarkEnd',
};

/** Elements whose children may come in any order, and which only these may have. */
const loose = ['w:p', 'w:hyperlink', 'w:tc'];

/** Everything that is wrong in a Word file, as far as it can be told without the schema; nothing when it is sound. */
export function problemsOf(opened: Opened): string[] {
  return [
    ...[...opened.xml].flatMap(([name, root]) =>
      name.startsWith('word/') ? misplaced(root).map((each) => `${name}: ${each}`) : [],
    ),
    ...relationships(opened),
    ...contentTypes(opened),
    ...styles(opened),
    ...lists(opened),
    ...bookmarks(opened),
    ...footnotes(opened),
    ...tables(opened.document),
    ...numbers(opened.document),
  ];
}

/** Children that the standard does not know there, or wants in another order. */
function misplaced(element: Element): string[] {
  const order = orders[element.name]?.split(' ').map((name) => `w:${name}`);
  const here: string[] = [];
  let last = -1;
  for (const { name } of elementsOf(element)) {
    if (order === undefined) break;
    const place = order.indexOf(name);
    if (place < 0) here.push(`<${name}> in <${element.name}>`);
    else if (place < last && !loose.includes(element.name)) here.push(`<${name}> too late in <${element.name}>`);
    last = Math.max(last, place);
  }
  return [...here, ...elementsOf(element).flatMap(misplaced)];
}

function relationships({ xml, parts }: Opened): string[] {
  return [...xml.keys()]
    .filter((name) => !name.endsWith('.rels'))
    .flatMap((name) => {
      const list = name.replace(/([^/]+)$/, '_rels/$1.rels');
      const known = xml.has(list) ? elementsOf(part(xml, list)) : [];
      const ids = known.map(({ attributes }) => attributes['Id'] ?? '');
      const folder = name.replace(/[^/]*$/, '');
      const missing = known
        .filter(({ attributes }) => attributes['TargetMode'] !== 'External')
        .map(({ attributes }) => new URL(attributes['Target'] ?? '', `file:///${folder}`).pathname.slice(1))
        .filter((target) => !(target in parts));
      const used = usedIds(part(xml, name)).filter((id) => !ids.includes(id));
      return [
        ...missing.map((target) => `${list} leads to ${target}, which is not there`),
        ...used.map((id) => `${name} names the relationship ${id}, which ${list} does not have`),
        ...(new Set(ids).size === ids.length ? [] : [`${list} has an id twice`]),
      ];
    });
}

function usedIds(element: Element): string[] {
  const own = Object.entries(element.attributes).flatMap(([name, value]) => (/^r:(?:id|embed|link)$/.test(name) ? [value] : []));
  return [...own, ...elementsOf(element).flatMap(usedIds)];
}

/** Every part has a content type, by its name or its ending. */
function contentTypes({ xml, parts }: Opened): string[] {
  const types = elementsOf(part(xml, '[Content_Types].xml'));
  const known = new Set(types.map(({ attributes }) => attributes['PartName'] ?? `.${attributes['Extension']}`));
  return Object.keys(parts)
    .filter((name) => name !== '[Content_Types].xml' && !known.has(`/${name}`) && !known.has(name.replace(/^.*(?=\.)/, '')))
    .map((name) => `${name} has no content type`);
}

function styles({ xml }: Opened): string[] {
  const defined = all(part(xml, 'word/styles.xml'), 'w:style');
  const ids = new Set(defined.map(({ attributes }) => attributes['w:styleId']));
  const named = [...xml].flatMap(([name, root]) =>
    ['w:pStyle', 'w:rStyle', 'w:tblStyle', 'w:basedOn', 'w:next', 'w:link'].flatMap((kind) =>
      all(root, kind).map((each) => ({ name, id: each.attributes['w:val'] })),
    ),
  );
  return [
    ...named.filter(({ id }) => !ids.has(id)).map(({ name, id }) => `${name} names the style ${id}, which there is not`),
    ...(ids.size === defined.length ? [] : ['a style twice']),
  ];
}

function lists({ xml }: Opened): string[] {
  const numbering = part(xml, 'word/numbering.xml');
  const abstract = new Set(all(numbering, 'w:abstractNum').map(({ attributes }) => attributes['w:abstractNumId']));
  const concrete = all(numbering, 'w:num');
  const ids = new Set([...concrete.map(({ attributes }) => attributes['w:numId']), '0']);
  const used = [...xml].flatMap(([, root]) => all(root, 'w:numId').map((each) => each.attributes['w:val']));
  return [
    ...concrete
      .filter((each) => !abstract.has(valueAt(each, 'w:val', 'w:abstractNumId')))
      .map(() => 'a list without a definition'),
    ...used.filter((id) => !ids.has(id)).map((id) => `the list ${id} is not there`),
  ];
}

function bookmarks({ document }: Opened): string[] {
  const [starts, ends] = [all(document, 'w:bookmarkStart'), all(document, 'w:bookmarkEnd')];
  const names = starts.map(({ attributes }) => attributes['w:name'] ?? '');
  const [open, closed] = [starts, ends].map((each) =>
    each
      .map(({ attributes }) => attributes['w:id'])
      .sort()
      .join(' '),
  );
  const led = [
    ...all(document, 'w:hyperlink').flatMap(({ attributes }) => attributes['w:anchor'] ?? []),
    ...all(document, 'w:instrText').flatMap((each) => /PAGEREF (\S+)/.exec(each.children.join(''))?.[1] ?? []),
  ];
  return [
    ...names.filter((name) => !/^[A-Za-z_]\w{0,39}$/.test(name)).map((name) => `${name} is no name of a bookmark`),
    ...(new Set(names.map((name) => name.toLowerCase())).size === names.length ? [] : ['a bookmark twice']),
    ...(open === closed ? [] : ['bookmarks that do not begin or do not end']),
    ...led.filter((name) => !names.includes(name)).map((name) => `a link to the bookmark ${name}, which there is not`),
  ];
}

function footnotes({ xml, document }: Opened): string[] {
  const ids = all(part(xml, 'word/footnotes.xml'), 'w:footnote').map(({ attributes }) => attributes['w:id']);
  return all(document, 'w:footnoteReference')
    .map(({ attributes }) => attributes['w:id'])
    .filter((id) => !ids.includes(id))
    .map((id) => `the footnote ${id} is not there`);
}

/** Rows fill the columns of their table, and cells end with a paragraph. */
function tables(document: Element): string[] {
  return all(document, 'w:tbl').flatMap((table) => {
    const columns = all(table, 'w:gridCol').length;
    const rows = elementsOf(table).filter(({ name }) => name === 'w:tr');
    const short = rows.filter((row) => {
      const cells = elementsOf(row).filter(({ name }) => name === 'w:tc');
      return cells.reduce((sum, cell) => sum + Number(valueAt(cell, 'w:val', 'w:tcPr', 'w:gridSpan') ?? 1), 0) !== columns;
    });
    const open = all(table, 'w:tc').filter((cell) => elementsOf(cell).at(-1)?.name !== 'w:p');
    return [
      ...short.map(() => 'a row that does not fill its columns'),
      ...open.map(() => 'a cell that ends without a paragraph'),
    ];
  });
}

/** Numbers that have to be there once: of pictures, and of changes. Every change says who and when. */
function numbers(document: Element): string[] {
  const changes = [...all(document, 'w:ins'), ...all(document, 'w:del')];
  const twice = (name: string, ids: (string | undefined)[]) =>
    new Set(ids).size === ids.length ? [] : [`the number of ${name} twice`];
  return [
    ...twice(
      'a picture',
      all(document, 'wp:docPr').map(({ attributes }) => attributes['id']),
    ),
    ...twice(
      'a change',
      changes.map(({ attributes }) => attributes['w:id']),
    ),
    ...changes
      .filter(
        ({ attributes }) => !attributes['w:author'] || !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/.test(attributes['w:date'] ?? ''),
      )
      .map(() => 'a change without author and date'),
    ...all(document, 'w:del')
      .filter((each) => child(each, 'w:r') !== undefined && all(each, 'w:t').length > 0)
      .map(() => 'deleted words that are not marked as deleted'),
  ];
}
