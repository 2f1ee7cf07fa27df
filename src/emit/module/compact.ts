/**
 * Takes comments, line ends and the spaces beside signs out of code, as far as is safe for the fixed parts of the module: each
 * statement in them ends with a sign, their strings are in single quotes, and each comment has a line of its own.
 */
export function compact(code: string): string {
  return code
    .replace(/^ *(?:\/\*\*.*\*\/|\/\/.*)$/gm, '')
    .split(/('(?:[^'\\\n]|\\.)*')/)
    .map((part, index) => (index % 2 === 1 ? part : part.replace(/\s+/g, ' ').replace(/ ?([{}()[\],;:=+*<>?&|!-]) ?/g, '$1')))
    .join('')
    .trim();
}
