import type { Interval } from '../measure/interval.js';
import type { Quantity } from '../measure/quantity.js';
import type {
  CardDocument,
  ClinicDocument,
  Deviation,
  EquipmentDocument,
  Evidence,
  FormDocument,
  Words,
} from '../read/types.gen.js';
import type { SaidTexts } from './dictionary.js';

/** Where a thing was written. */
export interface Place {
  file: string;
  line: number;
  column: number;
}

/** A cited source. */
export interface Citation {
  id: string;
  at?: string;
  evidence?: Evidence;
  checked?: string;
  note?: string;
}

/** One layer that set a value: the pack's id, or `clinic`. The last of a chain is the one in force. */
export interface SetBy {
  layer: string;
  /** As the terminal shows it: `10 minutes`. */
  value: string;
  /** Of a limit. */
  quantity?: Quantity;
  /** Of a task. */
  every?: Interval;
  source: Citation;
  because?: string;
  from?: string;
  deviation?: Deviation;
  place: Place;
}

export interface Source {
  id: string;
  title: string;
  publisher?: string;
  year?: number;
  edition?: string;
  url?: string;
  type: string;
  /** Last day on which this edition was in force. */
  withdrawn?: string;
  /** When somebody last looked at a public copy. */
  checked?: string;
  note?: string;
}

export interface Term {
  id: string;
  label: string;
  plural?: string;
  domain?: string;
  definition: string;
  /** Whether it is printed in the glossary. */
  glossary: boolean;
  place: Place;
}

export type FactType = 'enum' | 'set' | 'boolean' | 'quantity' | 'count' | 'date' | 'answer';
export type StatedBy = 'person' | 'instrument' | 'program' | 'machine' | 'clinic';

export interface Fact {
  id: string;
  label: string;
  type: FactType;
  /** Ids of the possible members of an enum or set, or the outcomes of an answer, in order. */
  members: string[];
  /** For `answer`: the decision. */
  decision?: string;
  /** UCUM code of the unit that plain numbers are in. */
  unit?: string;
  minimum?: Quantity;
  maximum?: Quantity;
  statedBy: StatedBy;
  question: string;
  help?: string;
  onlyWhen?: Condition;
}

/** The typed tree of a condition. Every comparison is with a constant, in the base unit of the fact's dimension. */
export type Condition =
  | { kind: 'all'; of: Condition[] }
  | { kind: 'any'; of: Condition[] }
  | { kind: 'not'; of: Condition }
  | { kind: 'test'; fact: string; test: Test };

export type Test =
  /** Enum, boolean, answer: equal to one of these. */
  | { kind: 'one-of'; members: (string | boolean)[] }
  /** Set: at least one, all, or none of these is in it. Enum: `none-of`, it is none of these. */
  | { kind: 'any-of' | 'all-of' | 'none-of'; members: string[] }
  /** Quantity, count, date. `value` is in the base unit; a date is its day number since 1970-01-01. */
  | {
      kind: 'compare';
      op: Comparison;
      value: number;
      shown: string;
      /** UCUM code of the unit in which it was written, of a quantity. */
      unit?: string;
      limit?: string;
    };

export type Comparison = 'at-least' | 'at-most' | 'above' | 'below';

export interface Limit {
  id: string;
  label: string;
  stricter: 'lower' | 'higher';
  value: Quantity;
  source: Citation;
  note?: string;
  /** Layers that set it, oldest first. */
  chain: SetBy[];
}

/** Words that code puts between values; where they depend on a number, one for each form. */
export type Phrase = Words;

/** A fact's value: enum member, boolean, set of members, or number in the base unit. */
export type FactValue = string | boolean | number | readonly string[];
export type Situation = Readonly<Record<string, FactValue>>;

export interface Example {
  given: Situation;
  applies: boolean;
  place: Place;
}

export interface Rule {
  /** `decision/rule`. */
  id: string;
  /** Unique within its decision. */
  name: string;
  when: Condition;
  /** In a verdict. */
  outcome?: string;
  /** In a choice: what a program must offer, one condition a need. */
  needs?: Condition;
  addsOnly: boolean;
  because: string;
  instead?: string;
  cautions: string[];
  source: Citation;
  examples: Example[];
  /** The layer that wrote it: a pack's id, or `clinic`. */
  layer: string;
  deviation?: Deviation;
  place: Place;
}

interface DecisionHead {
  id: string;
  title: string;
  stage: string;
  /** Place within its chapter: lower comes first. */
  order: number;
  question: string;
  about?: string;
  /** Printed only for clinics where this holds. */
  onlyWhen?: Condition;
  register?: string;
  rules: Rule[];
  /** Where it is intended that no rule speaks: everywhere, or where a condition holds, and why. */
  gaps: { when?: Condition; because: string; layer: string; place: Place }[];
  /** Rules that a later layer retired, kept for the record. */
  retired: { rule: Rule; by: SetBy }[];
  place: Place;
}

export interface Verdict extends DecisionHead {
  kind: 'verdict';
  /** Least to most restrictive. */
  outcomes: string[];
  say: Record<string, string>;
  otherwise: string;
}

export interface Choice extends DecisionHead {
  kind: 'choice';
  /** Machine kinds whose programs are looked at. */
  from: string[];
  prefer: { fact: string; first: 'lowest' | 'highest' }[];
}

export type Decision = Verdict | Choice;

export interface Task {
  id: string;
  title: string;
  machine?: string;
  onlyWhen?: Condition;
  every?: Interval;
  on: string[];
  when?: string;
  role: string;
  wear: string[];
  steps: string[];
  pass: string;
  ifNot?: string;
  record?: string;
  caution?: string;
  source: Citation;
  layer: string;
  /** Layers that set the interval, oldest first; empty when the task only follows events. */
  chain: SetBy[];
  place: Place;
}

/** A task as it falls on one machine, or on the clinic: the strictest of the rules' and the maker's interval. */
export interface Duty {
  task: string;
  /** Machine id; absent for a task of the clinic. */
  machine?: string;
  every?: Interval;
  /** Where the maker states the interval in force, when it is the maker's. */
  maker?: string;
}

export interface Step {
  /** `procedure/step`. */
  id: string;
  name: string;
  onlyWhen?: Condition;
  do: string;
  why?: string;
  caution?: string;
  ifNot?: string;
  /** In few words, for a wall card. */
  onCard?: string;
  source?: Citation;
  layer: string;
  place: Place;
}

export interface Procedure {
  id: string;
  title: string;
  stage: string;
  /** Place within its chapter: lower comes first. */
  order: number;
  purpose: string;
  onlyWhen?: Condition;
  who: string[];
  where: string;
  wear: string[];
  ready: string[];
  cautions: string[];
  /** Only those that hold for this clinic. */
  steps: Step[];
  done: string;
  records: string[];
  decisions: string[];
  source: Citation;
  layer: string;
  place: Place;
}

export interface Form extends Omit<FormDocument, 'kind' | 'only-when' | 'columns'> {
  onlyWhen?: Condition;
  columns: {
    id: string;
    label: string;
    unit?: string;
    width: number;
    limit?: string;
    numbered?: boolean;
    onlyWhen?: Condition;
  }[];
  layer: string;
  place: Place;
}

export type OriginKind = 'step' | 'rule' | 'task' | 'limit' | 'procedure';

/** What a line of a wall card restates: `{ kind: 'step', id: 'run-washer/start' }`. */
export interface Origin {
  kind: OriginKind;
  id: string;
}

/** One line of a wall card. */
export interface CardLine {
  say: string;
  from: Origin[];
  /** The layer that wrote these words. */
  layer: string;
}

/** A wall card: a page for the place where work happens. It restates rules and adds none. */
export interface Card extends Pick<CardDocument, 'id' | 'title' | 'places' | 'machine'> {
  /** Place among the cards: lower comes first. */
  order: number;
  onlyWhen?: Condition;
  caution?: CardLine;
  /** The programs that usual loads need. */
  choose?: { decision: string; loads: { say: string; given: Situation[] }[] };
  points: (CardLine & { id: string })[];
  stop?: CardLine;
  /** Whom to call: a contact of the clinic or a role. */
  call: { when: string; whom: { kind: 'contact' | 'role'; id: string } }[];
  layer: string;
  place: Place;
}

/** One stage of a program as its maker states it. */
export interface Stage {
  name: string;
  temperature?: Quantity;
  time?: Quantity;
  pressure?: StagePressure;
  note?: string;
}

/** Pressure of the chamber. A gauge counts from the air's, which is that of the altitude. */
export type StagePressure = { absolute: Quantity } | { gauge: Quantity; altitude: Quantity };

export interface Program {
  /** `machine/program`. */
  id: string;
  name: string;
  machine: string;
  use: string;
  /** The program's facts with its machine's. */
  facts: Situation;
  stages: Stage[];
  note?: string;
  place: Place;
}

export interface Machine extends Omit<EquipmentDocument, 'kind' | 'programs' | 'facts' | 'intervals' | 'machine' | 'in-service'> {
  /** Machine kind. */
  kind: string;
  inService: boolean;
  facts: Situation;
  /** Task intervals that the maker states, by task. */
  intervals: Record<string, { every: Interval; at: string }>;
  programs: Program[];
  place: Place;
}

export interface InstrumentFamily {
  id: string;
  name: string;
  group: string;
  count?: number;
  facts: Situation;
  maker?: string;
  instructions?: string;
  note?: string;
}

/** One change that a region or a clinic makes to what a lower layer says. */
export interface Change {
  kind: 'limit' | 'interval' | 'term' | 'add-rule' | 'replace-rule' | 'retire-rule' | 'add-step' | 'replace-step';
  /** Id of the limit, task, term, rule (`decision/rule`) or step (`procedure/step`). */
  about: string;
  layer: string;
  /** What was done, in words for the terminal: `10 minutes becomes 8 minutes`. */
  change: string;
  /** Of a limit: its values. */
  limit?: { was: Quantity; becomes: Quantity };
  /** Of a task: its intervals; without `was` it only followed events. */
  interval?: { was?: Interval; becomes: Interval };
  /** Of a term: its new name. */
  label?: string;
  because: string;
  source?: Citation;
  /** Present where the change is less strict and recorded as such. */
  deviation?: Deviation;
  place: Place;
}

export type Clinic = Omit<ClinicDocument, 'kind' | 'facts'> & { facts: Situation };

/** Everything that the layers say on one day, each value with the layers that set it. */
export interface LinkedRules {
  /** Date for which values were chosen. */
  on: string;
  packs: { id: string; version: string; title: string; region?: string; about: string; licence: string }[];
  /** What all texts but the clinic's are written in. */
  language: string;
  /** Where that is no language of the packs: what lines of templates say. */
  translation?: { templates: SaidTexts };
  paper: 'a4' | 'letter';
  /** How words of the packs and templates are written in this region. */
  wording: Record<string, string>;
  /** The phrases that manuals are put together from. */
  phrases: Record<string, Phrase>;
  /** How long a look at a source counts: the shortest that a pack states. */
  lookAgainAfter?: Interval;
  /** The second unit that is printed in brackets, by UCUM code of the first. */
  alsoUnits: Record<string, string>;
  sources: Map<string, Source>;
  terms: Map<string, Term>;
  facts: Map<string, Fact>;
  limits: Map<string, Limit>;
  decisions: Map<string, Decision>;
  tasks: Map<string, Task>;
  procedures: Map<string, Procedure>;
  forms: Map<string, Form>;
  cards: Map<string, Card>;
  clinic: Clinic;
  machines: Map<string, Machine>;
  instruments: Map<string, InstrumentFamily>;
  /** What the region and the clinic change, in the order of layers. A change with a `deviation` is a recorded deviation. */
  changes: Change[];
}

/** The linked rules tailored to one clinic: only what holds for its machines and the facts it states. */
export interface Rulebook extends LinkedRules {
  /** SHA-256 of all that answers and pages depend on, in hexadecimal. */
  digest: string;
  /** Each task as it falls on each machine and on the clinic. */
  duties: Duty[];
  /**
   * Procedures, forms, tasks and decisions that are not printed for this clinic: id and title, so that texts can still
   * name them. The decisions stay in `decisions`, since others may look at their answers.
   */
  notHere: Map<string, string>;
}
