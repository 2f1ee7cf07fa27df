// Made from rules/schema by `npm run types`. Do not edit.

export type Document =
  | CardDocument
  | ClinicDocument
  | DecisionDocument
  | EquipmentDocument
  | FactsDocument
  | FixtureDocument
  | FormDocument
  | InstrumentsDocument
  | LimitsDocument
  | OverridesDocument
  | PackDocument
  | PhrasesDocument
  | PolicyDocument
  | ProcedureDocument
  | RequirementsDocument
  | SourcesDocument
  | TasksDocument
  | TermsDocument
  | TranslationDocument
  | WordingDocument;
/**
 * Kebab-case, dotted by topic: `holding.longest-dry-wait`.
 */
export type Id = string;
/**
 * A short name, no full stop.
 */
export type Label = string;
/**
 * What a fact must be. A plain value means equal to it.
 */
export type Test =
  | string
  | boolean
  | {
      /**
       * For an enum or an answer: one of these.
       *
       * @minItems 1
       */
      'one-of'?: (string | boolean)[];
      /**
       * For a set: at least one of these is in it.
       *
       * @minItems 1
       */
      'any-of'?: string[];
      /**
       * For a set: all of these are in it.
       *
       * @minItems 1
       */
      'all-of'?: string[];
      /**
       * For a set or an enum: none of these.
       *
       * @minItems 1
       */
      'none-of'?: string[];
      'at-least'?: Operand;
      'at-most'?: Operand;
      above?: Operand;
      below?: Operand;
      /**
       * Both ends belong to it.
       *
       * @minItems 2
       * @maxItems 2
       */
      between?: Operand[];
    };
/**
 * A quantity, a date, a count, or a limit by id.
 */
export type Operand =
  | string
  | number
  | {
      limit: Id;
    };
/**
 * A sentence or a few, in inline Markdown. References are links with an empty text: `[](limit:id)`.
 */
export type Text = string;
/**
 * What a line restates: `step:run-washer/start`, `rule:waiting/in-time`, `task:care.washer-start`, `limit:hands.wash`, `procedure:run-washer` for its cautions.
 */
export type Origin = string;
/**
 * A calendar date, YYYY-MM-DD.
 */
export type Date = string;
/**
 * A language and where it is spoken: `en-CA`, `fr-CA`.
 */
export type Language = string;
/**
 * A source id alone (only for `common-practice` and `clinic`), or the id with clause and evidence.
 */
export type Source =
  | string
  | {
      id: Id;
      /**
       * Clause, table or page.
       */
      at?: string;
      evidence?: Evidence;
      checked?: Date;
      note?: Text;
    };
/**
 * How the value was checked: read in the source, recalled from memory, computed from a formula in the source, or decided by the clinic.
 */
export type Evidence = 'read' | 'recalled' | 'computed' | 'decided';
/**
 * How often at the latest: `1 d`, `25 cycles`, `1 mo or 25 cycles` (whichever comes first), `1 cycle` (every cycle).
 */
export type Interval = string;
/**
 * A number and a unit: `10 min`, `134 °C`, `25 cycles`, `A0 600`, `F0 15 min`.
 */
export type Quantity = string;
/**
 * A text, or the forms of a word that is counted, by the plural rules of CLDR.
 */
export type Words =
  | string
  | {
      zero?: Text;
      one?: Text;
      two?: Text;
      few?: Text;
      many?: Text;
      other: Text;
    };

/**
 * A wall card: one page in large type for the place where work happens. It restates rules and adds none.
 */
export interface CardDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'card';
  id: Id;
  title: Label;
  /**
   * Zones in which it hangs: terms of the domain zone. The card of a machine hangs beside it.
   *
   * @minItems 1
   */
  places: Id[];
  machine?: Id;
  /**
   * Place among the cards: lower comes first (default 50).
   */
  order?: number;
  'only-when'?: Condition;
  /**
   * What can hurt someone, in a box.
   */
  caution?: {
    say: Text;
    /**
     * The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force.
     *
     * @minItems 1
     */
    from: Origin[];
  };
  /**
   * Which program usual loads need.
   */
  choose?: {
    decision: Id;
    /**
     * Loads that come every day, the widest first. One is printed with the program of this card's machine that is sure to do, unless the lines above it say so already.
     *
     * @minItems 1
     */
    loads: {
      say: Text;
      /**
       * What is loaded: one situation, or several that all have to get the same program.
       *
       * @minItems 1
       */
      given: Situation[];
    }[];
  };
  /**
   * @minItems 2
   * @maxItems 12
   */
  points: {
    id: Id;
    say: Text;
    /**
     * The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force.
     *
     * @minItems 1
     */
    from: Origin[];
  }[];
  /**
   * When to stop the work.
   */
  stop?: {
    say: Text;
    /**
     * The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force.
     *
     * @minItems 1
     */
    from: Origin[];
  };
  /**
   * Whom to call, and when.
   *
   * @minItems 1
   */
  call: {
    when: Text;
    /**
     * A contact of the clinic or a role: `contact:service`, `role:infection-lead`.
     */
    whom: string;
  }[];
}
/**
 * A map is all of these. `all`, `any` and `not` nest; every other key is a fact id with a test.
 */
export interface Condition {
  /**
   * @minItems 1
   */
  all?: Condition[];
  /**
   * @minItems 1
   */
  any?: Condition[];
  not?: Condition;
  [k: string]: Test | Condition[] | Condition | undefined;
}
/**
 * Fact values by fact id.
 */
export interface Situation {
  [k: string]: string | number | boolean | string[];
}
/**
 * Who and where the clinic is, and its document control.
 */
export interface ClinicDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'clinic';
  id: Id;
  /**
   * Name of the clinic.
   */
  name: string;
  /**
   * @minItems 1
   */
  address: string[];
  /**
   * Telephone.
   */
  phone: string;
  region: string;
  /**
   * The packs the clinic uses, with a SemVer range each.
   */
  packs: {
    /**
     * SemVer range.
     */
    [k: string]: string;
  };
  document: {
    title: Label;
    /**
     * Document number.
     */
    number: string;
    /**
     * Version of the manual.
     */
    version: string;
    effective: Date;
    'review-by': Date;
    'approved-by': Id;
    paper?: 'a4' | 'letter';
    language?: Language;
  };
  /**
   * @minItems 1
   */
  people: {
    id: Id;
    /**
     * Full name.
     */
    name: string;
    /**
     * Job title as used in the clinic.
     */
    job: string;
    /**
     * Terms of the domain role.
     *
     * @minItems 1
     */
    roles: Id[];
  }[];
  /**
   * @minItems 1
   */
  rooms: {
    id: Id;
    /**
     * Name as on the door.
     */
    name: string;
    /**
     * Terms of the domain zone that are in it.
     *
     * @minItems 1
     */
    zones: Id[];
    note?: Text;
  }[];
  /**
   * @minItems 1
   */
  contacts: {
    id: Id;
    for: Label;
    /**
     * Who.
     */
    name: string;
    /**
     * Telephone.
     */
    phone: string;
    note?: Text;
  }[];
  facts?: Situation;
  /**
   * @minItems 1
   */
  supplies?: {
    for: Label;
    /**
     * Name on the container.
     */
    name: string;
    use: Text;
    /**
     * Where it is kept.
     */
    where?: string;
  }[];
  about: Text;
}
/**
 * A question with outcomes, or a choice among the programs of the clinic's machines.
 */
export interface DecisionDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'decision';
  id: Id;
  title: Label;
  stage: Id;
  /**
   * Place within its chapter: lower comes first (default 50).
   */
  order?: number;
  /**
   * The question as a person would put it.
   */
  question: string;
  about?: Text;
  'only-when'?: Condition;
  register?: Label;
  /**
   * In a verdict: from the least to the most restrictive.
   *
   * @minItems 2
   */
  outcomes?: Id[];
  /**
   * In a verdict: what each outcome says to a person, in a few words.
   */
  say?: {
    [k: string]: Text;
  };
  otherwise?: Id;
  /**
   * Marks a choice.
   */
  choose?: 'program';
  /**
   * In a choice: machine kinds whose programs are looked at.
   *
   * @minItems 1
   */
  from?: Id[];
  /**
   * In a choice: how acceptable programs are ranked.
   *
   * @minItems 1
   */
  prefer?: {
    fact: Id;
    first: 'lowest' | 'highest';
  }[];
  /**
   * Situations that no rule speaks about on purpose; `analyse` and `check` are quiet about them.
   *
   * @minItems 1
   */
  gaps?: {
    when?: Condition;
    because: Text;
  }[];
  /**
   * @minItems 1
   */
  rules: Rule[];
}
/**
 * One rule of a decision.
 */
export interface Rule {
  id: Id;
  when: Condition;
  outcome?: Id;
  needs?: Condition;
  /**
   * In a choice: the rule adds needs, but by itself does not answer the question (so adding it can only make the answer stricter).
   */
  'adds-only'?: boolean;
  because: Text;
  instead?: Id;
  /**
   * What can hurt someone here.
   *
   * @minItems 1
   */
  cautions?: Text[];
  from?: Date;
  until?: Date;
  source: Source;
  /**
   * At least one situation in which it applies and one in which it does not.
   *
   * @minItems 1
   */
  examples?: Example[];
}
/**
 * A situation and whether the rule applies in it. Examples are run by `rulebook check`.
 */
export interface Example {
  given: Situation;
  /**
   * Whether the rule is true in that situation.
   */
  applies: boolean;
}
/**
 * One machine as its maker states it.
 */
export interface EquipmentDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'equipment';
  id: Id;
  machine: Id;
  name: Label;
  /**
   * Maker.
   */
  maker: string;
  /**
   * Model.
   */
  model: string;
  /**
   * Serial number.
   */
  serial: string;
  room: Id;
  installed: Date;
  /**
   * false takes its programs out of every choice.
   */
  'in-service'?: boolean;
  instructions: {
    /**
     * Title of the maker's instructions.
     */
    title: string;
    /**
     * Edition or revision.
     */
    edition: string;
    /**
     * Where the copy is.
     */
    kept: string;
  };
  facts?: Situation;
  /**
   * Task intervals that the maker states; the stricter of these and the rules holds.
   */
  intervals?: {
    [k: string]: {
      every: Interval;
      /**
       * Where in the maker's instructions.
       */
      at: string;
    };
  };
  /**
   * @minItems 1
   */
  programs?: {
    id: Id;
    name: Label;
    use: Text;
    facts: Situation;
    /**
     * @minItems 1
     */
    stages: {
      name: Label;
      temperature?: Quantity;
      time?: Quantity;
      /**
       * Pressure of the chamber, absolute or gauge. That of a stage of 100 °C or more is compared with steam tables.
       */
      pressure?: {
        absolute?: Quantity;
        gauge?: Quantity;
        altitude?: Quantity;
      };
      note?: Label;
    }[];
    note?: Text;
  }[];
  /**
   * How its maker says it is opened by hand after a power failure, step by step.
   *
   * @minItems 1
   */
  opening?: Text[];
  note?: Text;
}
/**
 * Typed inputs of conditions.
 */
export interface FactsDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'facts';
  facts: {
    [k: string]: {
      label: Label;
      /**
       * `answer` is the outcome of a decision, used as a fact.
       */
      type: 'enum' | 'set' | 'boolean' | 'quantity' | 'count' | 'date' | 'answer';
      of?: Id;
      /**
       * For quantity: the unit that plain numbers are in.
       */
      unit?: string;
      minimum?: Quantity;
      maximum?: Quantity;
      /**
       * Who states it: a person who is asked (the default), the instrument register, a machine sheet (of a program or the machine), or the clinic folder.
       */
      'stated-by'?: 'person' | 'instrument' | 'program' | 'machine' | 'clinic';
      /**
       * The question to put to a person.
       */
      question: string;
      help?: Text;
      'only-when'?: Condition;
    };
  };
}
/**
 * Published values that the rules must meet.
 */
export interface FixtureDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'fixture';
  /**
   * Only where this region’s pack is used; everywhere when left out.
   */
  region?: string;
  fixtures: {
    [k: string]:
      | {
          /**
           * A published result of a formula.
           */
          prove: 'calculation';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          calculation:
            | 'a0'
            | 'a0-lower'
            | 'a0-held'
            | 'a0-mean'
            | 'f0'
            | 'f0-lower'
            | 'f0-held'
            | 'f0-mean'
            | 'equivalent-time'
            | 'log-reduction'
            | 'hold'
            | 'steam-pressure'
            | 'steam-gauge'
            | 'steam-temperature'
            | 'steam-temperature-of-gauge'
            | 'steam-difference'
            | 'air-pressure'
            | 'leak-rate'
            | 'convert'
            | 'conductivity'
            | 'softener'
            | 'softener-salt'
            | 'detergent-dose'
            | 'detergent-cycles';
          /**
           * Quantities by the names of the calculation's inputs; the readings of a sensor with commas between.
           */
          given: {
            [k: string]: string;
          };
          result: Quantity;
          within?: Quantity;
        }
      | {
          /**
           * A value that a limit must equal or be at least as strict as.
           */
          prove: 'limit';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          limit: Id;
          equals?: Quantity;
          'at-least-as-strict-as'?: Quantity;
        }
      | {
          /**
           * An interval that a task must equal or be at least as frequent as.
           */
          prove: 'interval';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          task: Id;
          equals?: Interval;
          'at-least-as-strict-as'?: Interval;
        }
      | {
          /**
           * A situation and its answer.
           */
          prove: 'situation';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          decision: Id;
          given: Situation;
          outcome?: Id;
          'at-least'?: Id;
          not?: Id;
        }
      | {
          /**
           * The answers just below, at and just above a threshold that a source states.
           */
          prove: 'boundary';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          decision: Id;
          fact: Id;
          /**
           * The published value of the fact.
           */
          threshold: string | number;
          given?: Situation;
          program?: Situation;
          below?: Id;
          at?: Id;
          above?: Id;
        }
      | {
          /**
           * A program that a choice must offer or refuse.
           */
          prove: 'program';
          title: Label;
          from?: Date;
          until?: Date;
          source: Source;
          decision: Id;
          given: Situation;
          program: Situation;
          fits: boolean;
        }
      | {
          /**
           * Sources that do not say the same.
           */
          prove: 'disagreement';
          title: Label;
          from?: Date;
          until?: Date;
          about?: Id;
          because: Text;
          /**
           * @minItems 2
           */
          positions: {
            /**
             * Where this is the guidance.
             */
            region?: string;
            says: Text;
            /**
             * The value of the limit or task, or `none` where nothing is asked for.
             */
            value?: string;
            source: Source;
          }[];
        };
  };
}
/**
 * A log sheet.
 */
export interface FormDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'form';
  id: Id;
  title: Label;
  purpose: Text;
  machine?: Id;
  'only-when'?: Condition;
  /**
   * @minItems 2
   */
  columns: {
    id: Id;
    label: Label;
    /**
     * Unit of what is written.
     */
    unit?: string;
    /**
     * Relative width.
     */
    width?: number;
    limit?: Id;
    'only-when'?: Condition;
    /**
     * Its lines are numbered 1, 2, 3 … on the blank sheet, such as the days of a month.
     */
    numbered?: boolean;
  }[];
  /**
   * Empty lines a sheet.
   */
  rows: number;
  /**
   * Empty lines of a sheet on a page of its own, where they are more than in the manual.
   */
  'sheet-rows'?: number;
  /**
   * What the head of a sheet asks for: the week, the month, or from when to when (default sheet).
   */
  period?: 'week' | 'month' | 'sheet';
  layout: 'portrait' | 'landscape';
  covers: Text;
  'signed-by': Id;
  'signed-when'?: Text;
  keep: Id;
  note?: Text;
  /**
   * Lines of a filled example: invented, never a record.
   *
   * @minItems 3
   * @maxItems 20
   */
  sample?: {
    /**
     * What is written, by column. Days are written YYYY-MM-DD and times HH:MM; they are printed as the region writes them.
     */
    cells: {
      [k: string]: string;
    };
    /**
     * The line on which something went wrong: its readings may lie outside their limits.
     */
    fault?: boolean;
  }[];
}
/**
 * Instrument families and what they are made of.
 */
export interface InstrumentsDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'instruments';
  instruments: {
    [k: string]: {
      name: Label;
      group: Label;
      count?: number;
      facts: Situation;
      /**
       * Maker.
       */
      maker?: string;
      /**
       * Maker's instructions that were read.
       */
      instructions?: string;
      note?: Text;
    };
  };
}
/**
 * Named quantities with their stricter direction and values by date.
 */
export interface LimitsDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'limits';
  limits: {
    [k: string]: {
      label: Label;
      /**
       * Which way is stricter.
       */
      stricter: 'lower' | 'higher';
      /**
       * Its values by date, oldest first.
       *
       * @minItems 1
       */
      values: LimitValue[];
      note?: Text;
    };
  };
}
/**
 * A value of a limit from a date on.
 */
export interface LimitValue {
  from?: Date;
  value: Quantity;
  source: Source;
}
/**
 * What a region or a clinic changes, and why.
 */
export interface OverridesDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'overrides';
  /**
   * @minItems 1
   */
  changes: (
    | {
        change: 'limit';
        limit: Id;
        value: Quantity;
        from?: Date;
        because: Text;
        source: Source;
        deviation?: Deviation;
      }
    | {
        change: 'interval';
        task: Id;
        every: Interval;
        because: Text;
        source: Source;
        deviation?: Deviation;
      }
    | {
        change: 'add-rule';
        decision: Id;
        rule: Rule;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'replace-rule';
        decision: Id;
        rule: Rule;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'retire-rule';
        decision: Id;
        rule: Id;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'add-step';
        procedure: Id;
        after: Id;
        step: Step;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'replace-step';
        procedure: Id;
        step: Step;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'add-point';
        policy: Id;
        after: Id;
        point: Point;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'replace-point';
        policy: Id;
        point: Point;
        because: Text;
        source?: Source;
        deviation?: Deviation;
      }
    | {
        change: 'term';
        term: Id;
        label: Label;
        plural?: Label;
        definition?: Text;
        because: Text;
        source?: Source;
      }
  )[];
}
/**
 * A recorded deviation: what makes a less strict change allowed.
 */
export interface Deviation {
  reason: Text;
  source: Source;
  'approved-by': Id;
  'approved-on'?: Date;
  'review-by': Date;
}
/**
 * One step of a procedure.
 */
export interface Step {
  id: Id;
  do: Text;
  why?: Text;
  'only-when'?: Condition;
  caution?: Text;
  'if-not'?: Text;
  'on-card'?: Text;
  source?: Source;
}
/**
 * One rule of a policy.
 */
export interface Point {
  id: Id;
  say: Text;
  why?: Text;
  'only-when'?: Condition;
  caution?: Text;
  'if-not'?: Text;
  source?: Source;
}
/**
 * The first document of a folder of rules: what it is, what it builds on, and for where.
 */
export interface PackDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'pack';
  id: Id;
  /**
   * SemVer version, such as 1.2.0.
   */
  version: string;
  title: Label;
  /**
   * ISO 3166 code of the region it is for.
   */
  region?: string;
  /**
   * The packs it builds on, with a SemVer range each.
   */
  extends?: {
    /**
     * SemVer range.
     */
    [k: string]: string;
  };
  /**
   * SPDX identifier.
   */
  licence: string;
  effective: Date;
  about: Text;
  /**
   * How manuals of this region are printed.
   */
  print?: {
    paper?: 'a4' | 'letter';
    language?: Language;
    /**
     * A second unit that is printed in brackets, by the unit it stands behind: `mg/L CaCO3: °dH`.
     */
    also?: {
      [k: string]: string;
    };
  };
  'look-again-after'?: Interval;
}
/**
 * Words that manuals are put together from: between the values of a condition, in heads and feet, on cards and forms.
 */
export interface PhrasesDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'phrases';
  /**
   * Phrases by id. `{name}` stands for a value.
   */
  phrases?: {
    [k: string]: Text;
  };
  /**
   * Phrases that depend on the number `{count}`, by id.
   */
  counted?: {
    [k: string]: {
      one: Text;
      other: Text;
    };
  };
}
/**
 * Rules of the clinic that hold at all times, beside the path of an instrument.
 */
export interface PolicyDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'policy';
  id: Id;
  title: Label;
  stage: Id;
  /**
   * Place within its chapter: lower comes first (default 50).
   */
  order?: number;
  purpose: Text;
  /**
   * Whom it binds: terms of the domain role.
   *
   * @minItems 1
   */
  who: Id[];
  'only-when'?: Condition;
  /**
   * @minItems 2
   */
  points: Point[];
  /**
   * Procedures that belong to it.
   *
   * @minItems 1
   */
  procedures?: Id[];
  /**
   * Tasks that belong to it; printed with how often and who.
   *
   * @minItems 1
   */
  tasks?: Id[];
  /**
   * Decisions that belong to it.
   *
   * @minItems 1
   */
  decisions?: Id[];
  /**
   * Forms on which it is written down.
   *
   * @minItems 1
   */
  forms?: Id[];
  source: Source;
}
/**
 * The ordered steps of one stage.
 */
export interface ProcedureDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'procedure';
  id: Id;
  title: Label;
  stage: Id;
  /**
   * Place within its chapter: lower comes first (default 50).
   */
  order?: number;
  purpose: Text;
  'only-when'?: Condition;
  /**
   * Roles: terms of the domain role.
   *
   * @minItems 1
   */
  who: Id[];
  where: Id;
  /**
   * Protective equipment: terms of the domain ppe.
   *
   * @minItems 1
   */
  wear: Id[];
  /**
   * What to have ready.
   *
   * @minItems 1
   */
  ready: Text[];
  /**
   * What can hurt someone, printed before the steps.
   *
   * @minItems 1
   */
  cautions?: Text[];
  /**
   * @minItems 2
   */
  steps: Step[];
  done: Text;
  /**
   * Forms on which it is written down.
   *
   * @minItems 1
   */
  records?: Id[];
  /**
   * Decisions that belong to it.
   *
   * @minItems 1
   */
  decisions?: Id[];
  source: Source;
}
/**
 * What a published source asks of a clinic's written program, item by item, and what answers each.
 */
export interface RequirementsDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'requirements';
  source: Id;
  /**
   * @minItems 1
   */
  items: {
    id: Id;
    /**
     * Number of the item as the source prints it.
     */
    item: string;
    section: Label;
    text: Text;
    /**
     * Clause, where it is not the number of the item.
     */
    clause?: string;
    evidence: Evidence;
    /**
     * Whether it is about the path of an instrument.
     */
    reprocessing: boolean;
    /**
     * What answers it: policies and their points, procedures, decisions, tasks, forms, limits, sections. Without it the item is open.
     *
     * @minItems 1
     *
     * Items: What answers it, kind and id: `policy:sharps`, `policy:sharps/recap` (a point), `procedure:wash`, `task:wipe`.
     */
    'answered-by'?: string[];
  }[];
}
/**
 * The bibliography.
 */
export interface SourcesDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'sources';
  sources: {
    [k: string]: {
      /**
       * Title as published.
       */
      title: string;
      /**
       * Who published it.
       */
      publisher?: string;
      year?: number;
      /**
       * Edition or revision.
       */
      edition?: string;
      /**
       * Where to find it.
       */
      url?: string;
      /**
       * What kind of source it is.
       */
      type: 'standard' | 'guideline' | 'regulation' | 'paper' | 'handbook' | 'maker' | 'common-practice' | 'clinic';
      withdrawn?: Date;
      checked?: Date;
      note?: Text;
    };
  };
}
/**
 * Checks, tests and services that come round.
 */
export interface TasksDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'tasks';
  tasks: {
    [k: string]: {
      title: Label;
      machine?: Id;
      'only-when'?: Condition;
      every?: Interval;
      /**
       * Events that call for it, besides the interval: after repair, on delivery.
       *
       * @minItems 1
       */
      on?: Text[];
      when?: Text;
      role: Id;
      /**
       * Protective equipment: terms of the domain ppe.
       *
       * @minItems 1
       */
      wear?: Id[];
      /**
       * What to do, verb first.
       *
       * @minItems 1
       */
      steps: Text[];
      pass: Text;
      'if-not'?: Text;
      record?: Id;
      caution?: Text;
      source: Source;
    };
  };
}
/**
 * Controlled words with definitions. They are the members of enumerations and the glossary.
 */
export interface TermsDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'terms';
  terms: {
    [k: string]: {
      label: Label;
      plural?: Label;
      domain?: Id;
      definition: Text;
      /**
       * false keeps a self-explaining word out of the printed glossary.
       */
      glossary?: boolean;
      source?: Source;
    };
  };
}
/**
 * What texts of a pack or of the templates say in another language.
 */
export interface TranslationDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'translation';
  language: Language;
  /**
   * Whose texts: a pack, a folder of a pack (`base/cleaning`), `templates`, or a folder of templates (`templates/manual`).
   */
  of: string;
  /**
   * @minItems 1
   */
  texts: {
    of: Words;
    say: Words;
    note?: Text;
  }[];
}
/**
 * How a region spells what the packs below it say.
 */
export interface WordingDocument {
  /**
   * The kind of document; it picks this schema.
   */
  kind: 'wording';
  /**
   * Whole words as the packs below write them, in lower case, and as they are written here. Case is kept; ids, titles of sources and a clinic’s own texts are left alone.
   */
  words: {
    /**
     * A word or words.
     */
    [k: string]: string;
  };
}
