/** The part of the module that reads facts: errors, cells of sets and of days, the cells and values of one situation. */
export const runtimeRead = String.raw`
/** A value that does not fit its fact. */
export class FactError extends TypeError {
  constructor(fact, expected) {
    super(fact + ': expected ' + expected);
    this.name = 'FactError';
    this.fact = fact;
    this.expected = expected;
  }
}
function refuse(k) {
  throw new FactError(ids[k], expectedOf(facts()[k]));
}
let known;
function facts() {
  return (known ??= JSON.parse(factTexts()).map(([type, unit, bounds, members], k) => ({
    id: ids[k],
    type: types[type],
    ...(unit && { unit }),
    ...(bounds && { bounds }),
    ...(members?.length > 0 && { members }),
  })));
}
function expectedOf({ type, members, unit, bounds }) {
  switch (type) {
    case 'boolean':
      return 'true or false';
    case 'set':
      return 'a list of any of ' + members.join(', ');
    case 'count':
      return 'a whole number of 0 or more';
    case 'date':
      return 'a day as YYYY-MM-DD';
    case 'quantity':
      return 'a number in ' + (unit ?? '1') + (bounds ? ', ' + bounds : '');
    default:
      return 'one of ' + members.join(', ');
  }
}
function unknownDecision(id) {
  throw new RangeError('no decision ' + String(id));
}
/** The cell of a plain boolean. */
function B(v, k) {
  return v === true ? 1 : v === false ? 2 : v == null ? 0 : refuse(k);
}
const hasOwn = Object.prototype.hasOwnProperty;
function valueOf(given, k) {
  const id = ids[k];
  return guarded[k] && !hasOwn.call(given, id) ? undefined : given[id];
}
/** Reads what a decision looks at; returns how many of these facts are missing. */
function read(m, given) {
  const { reads } = m;
  if (2 * reads.length > ids.length) gather(given);
  else for (let i = 0; i < reads.length; i++) V[reads[i]] = valueOf(given, reads[i]);
  let n = 0;
  for (let i = 0; i < reads.length; i++) {
    const k = reads[i];
    if ((C[k] = decoders[k](V[k], k)) === 0) M[n++] = k;
  }
  fresh();
  return n;
}
/** The order in which callers usually state facts, learned from what they state; at each place, the fact. */
let order = ids;
let place = Int32Array.from(ids.keys());
const placeOf = new Map(ids.map((id, k) => [id, k]));
let strays = 0;
/** Takes the values of all facts: walks through what is stated instead of looking for each fact, which is slow where keys are absent. */
function gather(given) {
  const count = ids.length;
  for (let k = 0; k < count; k++) V[k] = undefined;
  const kind = Object.getPrototypeOf(given);
  if (kind !== Object.prototype && kind !== null) {
    for (let k = 0; k < count; k++) V[k] = valueOf(given, k);
    return;
  }
  const usual = order;
  const facts = place;
  const values = V;
  let j = -1;
  for (const id in given) {
    const v = given[id];
    j++;
    if (usual[j] !== id) {
      j++;
      if (usual[j] !== id) {
        const from = j;
        j = seek(usual, id, from + 1);
        if (j < 0) {
          j = from - 2;
          continue;
        }
      }
    }
    values[facts[j]] = v;
  }
  if (strays > 500) learnOrder(given);
}
/** The place of a fact that is not where it was expected; -1 of one that there is not. */
function seek(usual, id, from) {
  const end = from + 5;
  for (let j = from; j < end && j < usual.length; j++) if (usual[j] === id) return j;
  if (!placeOf.has(id)) return -1;
  strays++;
  return usual.indexOf(id);
}
/** Facts that this situation leaves out come after the one they came after before. */
function learnOrder(given) {
  strays = 0;
  const learned = Object.keys(given).filter((id) => placeOf.has(id));
  const stated = new Set(learned);
  order.forEach((id, j) => {
    if (!stated.has(id)) learned.splice(j === 0 ? 0 : learned.indexOf(order[j - 1]) + 1, 0, id);
  });
  order = learned;
  place = Int32Array.from(learned, (id) => placeOf.get(id));
}
/** Reads all facts. */
function readAll(given) {
  gather(given);
  let n = 0;
  for (let k = 0; k < ids.length; k++) if ((C[k] = decoders[k](V[k], k)) === 0) M[n++] = k;
  return n;
}
/** Reads again what an answer was given for. */
function readAgain(m, values) {
  let n = 0;
  for (let i = 0; i < m.reads.length; i++) {
    const k = m.reads[i];
    if ((C[k] = decoders[k](values[i], k)) === 0) M[n++] = k;
  }
  fresh();
  return n;
}
/** The number of a calendar day, or undefined when there is no such day. */
function dayOf(text) {
  if (typeof text !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(text)) return undefined;
  const time = Date.parse(text + 'T00:00:00Z');
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== text) return undefined;
  return time / 86400000;
}
/** Whether a selection of classes has one, all, none or not all of some. */
function holds(op, some, m) {
  if (typeof m === 'number') {
    const both = m & some;
    return op === 0 ? both !== 0 : op === 1 ? both === some : op === 2 ? both === 0 : both !== some;
  }
  const one = (each) => m.has(each);
  return op === 0 ? some.some(one) : op === 1 ? some.every(one) : op === 2 ? !some.some(one) : !some.every(one);
}
function setOf(line, tests, parts, classes) {
  const b = new Int32Array(4 * line).fill(-1);
  return { line, tests, parts, era: 0, b, masks: [0], at: classes < 0 ? new Map() : new Int32Array(1 << classes) };
}
/** Works out the line of a set's selection, kept for the next time. Lines are bounded: when full, all are dropped. */
function fill(s, m, key) {
  const { line, masks, at } = s;
  if (masks.length >= 4096 || masks.length * line > 4000000) {
    masks.length = 1;
    s.era++;
    if (key === undefined) at.fill(0);
    else at.clear();
  }
  const k = masks.length;
  masks.push(m);
  if (key === undefined) at[m] = k;
  else at.set(key, k);
  const from = k * line;
  if (s.b.length < from + line) {
    const longer = new Int32Array(2 * (from + line));
    longer.set(s.b);
    s.b = longer;
  }
  const b = s.b;
  b.fill(-1, from, from + line);
  for (const [op, some, pairs] of s.tests)
    if (!holds(op, some, m)) for (let i = 0; i < pairs.length; i += 2) b[from + pairs[i]] &= ~pairs[i + 1];
  return k;
}
/** A set with many classes: its selection is a Set of them. */
function wideSlot(s, list, classOf) {
  const m = new Set();
  for (let i = 0; i < list.length; i++) {
    const each = classOf(list[i]);
    if (each > 0) m.add(each - 1);
  }
  const key = [...m].sort((a, b) => a - b).join();
  return s.at.get(key) ?? fill(s, m, key);
}
`;
