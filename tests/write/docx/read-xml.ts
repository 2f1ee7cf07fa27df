/** An element of an XML file. */
export interface Element {
  name: string;
  attributes: Readonly<Record<string, string>>;
  children: (Element | string)[];
}

/**
 * Reads a well-formed XML file without document type, strictly.
 *
 * @throws SyntaxError when it is not well formed.
 */
export function readXml(text: string): Element {
  const bare = text.replace(/^\ufeff?<\?xml [^?]*\?>\s*/, '');
  const root: Element = { name: '', attributes: {}, children: [] };
  const open: Element[] = [root];
  let at = 0;
  for (const { 0: tag, index } of bare.matchAll(/<[^>]*>/g)) {
    addText(open, bare.slice(at, index));
    at = index + tag.length;
    const closing = /^<\/([\w:.-]+)\s*>$/.exec(tag);
    const opening = /^<([A-Za-z_][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>$/.exec(tag);
    if (closing !== null) {
      const element = open.pop();
      if (element?.name !== closing[1] || open.length === 0) throw new SyntaxError(`</${closing[1]}> closes <${element?.name}>`);
    } else if (opening !== null) {
      const element: Element = { name: opening[1] ?? '', attributes: attributesOf(opening[2] ?? ''), children: [] };
      open.at(-1)?.children.push(element);
      if (opening[3] !== '/') open.push(element);
    } else throw new SyntaxError(`no tag: ${tag.slice(0, 80)}`);
  }
  addText(open, bare.slice(at));
  const [only, ...others] = root.children.filter((child) => typeof child !== 'string' || child.trim() !== '');
  if (open.length !== 1) throw new SyntaxError(`<${open.at(-1)?.name}> is not closed`);
  if (typeof only !== 'object' || others.length > 0) throw new SyntaxError('not one element at the top');
  return only;
}

function addText(open: Element[], raw: string): void {
  if (raw !== '') open.at(-1)?.children.push(decode(raw));
}

function attributesOf(raw: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name = '', quoted = ''] of raw.matchAll(/([\w:.-]+)\s*=\s*("[^"]*"|'[^']*')/g)) {
    if (name in attributes) throw new SyntaxError(`${name} twice`);
    attributes[name] = decode(quoted.slice(1, -1));
  }
  return attributes;
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function decode(raw: string): string {
  if (
    /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(
      raw,
    )
  )
    throw new SyntaxError('a character that XML does not allow');
  return raw.replace(/&(?:#(\d+)|#x([\dA-Fa-f]+)|(\w+))?;?/g, (found, decimal?: string, hex?: string, name?: string) => {
    if (!found.endsWith(';')) throw new SyntaxError(`a bare ${found}`);
    if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    const sign = entities[name ?? ''];
    if (sign === undefined) throw new SyntaxError(`the unknown entity ${found}`);
    return sign;
  });
}

/** All elements of that name, in order, however deep. */
export function all(element: Element, name: string): Element[] {
  return elementsOf(element).flatMap((child) => [...(child.name === name ? [child] : []), ...all(child, name)]);
}

/** The elements right inside. */
export function elementsOf({ children }: Element): Element[] {
  return children.filter((child): child is Element => typeof child === 'object');
}

/** The first element of that name right inside. */
export function child(element: Element, name: string): Element | undefined {
  return elementsOf(element).find((each) => each.name === name);
}

/** An attribute of an element inside: `valueAt(paragraph, 'w:val', 'w:pPr', 'w:pStyle')`. */
export function valueAt(element: Element, attribute: string, ...path: string[]): string | undefined {
  const found = path.reduce<Element | undefined>((each, name) => each && child(each, name), element);
  return found?.attributes[attribute];
}
