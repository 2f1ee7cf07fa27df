import Handlebars from 'handlebars';
import { isMarkdown } from './markdown.js';
import { markdownSafe } from './markdown-safe.js';

/** Texts of templates by name, such as `manual/procedure`. */
export type Templates = ReadonlyMap<string, string>;

/**
 * Fills the template of that name. Every string of the view is made safe before it meets the template; Markdown goes
 * in as it is.
 *
 * @throws Error when a template uses a field that the view does not have, a helper or a partial that does not exist.
 */
export function fillTemplate(templates: Templates, name: string, view: object): string {
  const source = templates.get(name);
  if (source === undefined) throw new Error(`no template \`${name}\``);
  const handlebars = Handlebars.create();
  for (const [partial, text] of templates) handlebars.registerPartial(partial, text);
  const fill = handlebars.compile(source, { strict: true, knownHelpersOnly: true, noEscape: true, preventIndent: true });
  return fill(refuseMissing(makeSafe(view), name));
}

function makeSafe(value: unknown): unknown {
  if (typeof value === 'string') return markdownSafe(value);
  if (typeof value === 'number') return String(value);
  if (isMarkdown(value)) return value.markdown;
  if (Array.isArray(value)) return value.map(makeSafe);
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, makeSafe(each)]));
  return value;
}

/** Handlebars prints a missing field in a condition or a loop as nothing, even when it is strict. */
function refuseMissing(value: unknown, path: string): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return new Proxy(value, {
    get(target, key, receiver): unknown {
      const found: unknown = Reflect.get(target, key, receiver);
      if (typeof key === 'symbol' || key in Object.prototype) return found;
      if (!Array.isArray(target) && !Object.hasOwn(target, key))
        throw new Error(`template uses missing field \`${path}.${key}\``);
      return refuseMissing(found, `${path}.${key}`);
    },
  });
}
