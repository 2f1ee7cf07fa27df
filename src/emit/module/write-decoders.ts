import type { CutFact } from './cells.js';
import { literal } from './literal.js';
import { mostClassesInABitSet } from './selections.js';

/** One function a fact, `d0` and so on: from a value to its cell, 0 where it is not stated; refuses a value that does not fit. */
export function writeDecoders(facts: Iterable<CutFact>): string[] {
  return [...facts].flatMap(decoderOf);
}

/** Booleans that the clinic says nothing about share one decoder. */
function isPlainBoolean({ fact, cells, clinic }: CutFact): boolean {
  return fact.type === 'boolean' && clinic === undefined && cells.kind === 'members' && cells.of.length === 2;
}

/** A call that gives the cell of a value. */
export function callDecoder(fact: CutFact, value: string): string {
  return isPlainBoolean(fact) ? `B(${value},${fact.index})` : `d${fact.index}(${value})`;
}

/** The function that `callDecoder` calls, by name. */
export function decoderName(fact: CutFact): string {
  return isPlainBoolean(fact) ? 'B' : `d${fact.index}`;
}

function decoderOf(each: CutFact): string[] {
  const { index, fact, cells, clinic } = each;
  const open = `function d${index}(v){if(v==null)return ${clinic?.cell ?? 0};`;
  const refuse = `refuse(${index})`;
  switch (cells.kind) {
    case 'members': {
      const cellOf = (member: string | boolean) => 1 + cells.of.findIndex((alike) => alike.includes(member));
      if (isPlainBoolean(each)) return [];
      if (fact.type === 'boolean') return [`${open}return v===true?${cellOf(true)}:v===false?${cellOf(false)}:${refuse}}`];
      const members = cells.of.flatMap((alike, cell) => alike.map((member): [string, number] => [String(member), cell + 1]));
      return wordsTo(`d${index}`, open, members, refuse);
    }
    case 'answer': {
      const members = fact.members.map((member): [string, number] => {
        const place = cells.possible.indexOf(member);
        return [member, place === -1 ? 32 : place + 1];
      });
      return wordsTo(`d${index}`, open, members, refuse);
    }
    case 'numbers': {
      const { least, most } = cells.bounds;
      const tree = branches(
        cells.cuts.map(({ from }) => from),
        0,
        cells.cuts.length,
      );
      if (fact.type === 'date')
        return [`${open}const x=dayOf(v);if(x===undefined)${refuse};return ${tree.replaceAll('v', 'x')}}`];
      const check = fact.type === 'count' ? 'Number.isSafeInteger(v)&&v>=0' : `typeof v==="number"&&v>=${least}&&v<=${most}`;
      return [`${open}if(!(${check}))${refuse};return ${tree}}`];
    }
    case 'set': {
      const bits = cells.classes.flatMap((alike, place) => alike.map((member): [string, number] => [member, 1 << place]));
      const isWide = cells.classes.length > mostClassesInABitSet;
      const members = isWide
        ? cells.classes.flatMap((alike, place) => alike.map((member): [string, number] => [member, place + 1]))
        : bits;
      const untested = cells.untested.map((member): [string, number] => [member, 0]);
      const own = wordsTo(`k${index}`, `function k${index}(v){`, [...members, ...untested], refuse);
      const start = `function d${index}(v){if(v==null){${clinic === undefined ? 'return 0' : `v=${literal(clinic.value)}`}}if(!Array.isArray(v))${refuse};`;
      if (isWide) return [...own, `${start}return wideSlot(s${index},v,k${index})}`];
      return [...own, `${start}let m=0;for(let i=0;i<v.length;i++)m|=k${index}(v[i]);return s${index}.at[m]||fill(s${index},m)}`];
    }
  }
}

/** From a word to a number: by length, then by equality; many words by a map. */
function wordsTo(name: string, open: string, members: readonly [string, number][], refuse: string): string[] {
  if (members.length > 24) {
    const map = `const w${name}=new Map(${literal(members)});`;
    return [map, `${open}const c=w${name}.get(v);return c===undefined?${refuse}:c}`];
  }
  if (members.length <= 4) return [`${open}return ${choose(members, refuse)}}`];
  const byLength = new Map<number, [string, number][]>();
  for (const member of members) byLength.set(member[0].length, [...(byLength.get(member[0].length) ?? []), member]);
  const cases = [...byLength].map(([length, of]) => `case ${length}:return ${choose(of, refuse)};`).join('');
  return [`${open}switch(v.length){${cases}}return ${refuse}}`];
}

/** An expression that gives the number of the member that `v` is. */
function choose(members: readonly [string, number][], refuse: string): string {
  return members.map(([member, value]) => `v===${literal(member)}?${value}:`).join('') + refuse;
}

/** A binary tree of comparisons over ascending cuts. */
function branches(cuts: readonly number[], from: number, to: number): string {
  if (from === to) return String(from + 1);
  const middle = (from + to) >> 1;
  return `v<${cuts[middle]}?${wrapped(branches(cuts, from, middle))}:${wrapped(branches(cuts, middle + 1, to))}`;
}

function wrapped(expression: string): string {
  return expression.includes('?') ? `(${expression})` : expression;
}
