export type DecisionId = "device-class" | "processing-level" | "waiting" | "machine-use" | "water-use" | "cleaning-route" | "interrupted-washer" | "ultrasonic-compatibility" | "washer-compatibility" | "washer-load" | "washer-program" | "counts-as-sterilizing" | "inspection" | "oiling" | "packing" | "sterilizer-cycle" | "sterilizer-load" | "sterilizing-method" | "arriving-patient" | "surface-care" | "vial-use" | "waste-route" | "work-restriction" | "air-removal-test-result" | "load-release" | "pack-use" | "spore-test-result" | "may-reprocess" | "protective-equipment" | "spill-response";
export type FactId = "use.class" | "use.level" | "water.purpose" | "water.kind" | "water.hardness" | "water.conductivity" | "water.standing" | "water.bacteria" | "check.machine" | "check.marked-out" | "check.daily-done" | "check.alarm" | "check.leak" | "check.seal" | "check.door-locks" | "check.electrics-sound" | "check.arms-turn" | "check.supplies-in" | "check.tests-passed" | "check.service-late" | "check.service-late-by" | "answer.washer-compatibility" | "answer.ultrasonic-compatibility" | "load.all-for-washer" | "load.within-makers-amount" | "load.overlapping" | "load.nothing-holds-water" | "load.cassettes-stand" | "load.sharps-held" | "load.metals-apart" | "washer.arms-free" | "washer.supplied" | "washer.checked" | "washer.stop" | "washer.was-drying" | "washer.resumed" | "washer.pause" | "washer.stopped-before" | "washer.danger" | "item.visible-soil" | "item.wet" | "item.surface" | "item.damaged" | "item.joint" | "item.dull" | "item.lumen-clear" | "item.mark-bad" | "item.proposed-method" | "pack.stands-dry-heat" | "sterilizer.cleared" | "sterilizer.cycle-fits" | "sterilizer.packs-checked" | "sterilizer.crowded" | "sterilizer.traps-water" | "sterilizer.metal-above" | "sterilizer.feed-water" | "visit.signs" | "visit.urgent" | "vial.kind" | "vial.sound" | "vial.opened" | "vial.other-patient" | "vial.used-needle" | "vial.dated" | "vial.open-for" | "surface.kind" | "surface.cover" | "surface.blood" | "waste.kind" | "staff.signs" | "staff.well-for" | "cycle.medium" | "cycle.completed" | "cycle.recorded" | "cycle.readings-met" | "cycle.wet-packs" | "cycle.torn-pack" | "cycle.has-implant" | "cycle.spore-result" | "cycle.first-after-repair" | "indicator.outside" | "indicator.inside" | "airtest.done" | "airtest.valid" | "airtest.even" | "airtest.leak" | "spore.organism" | "spore.reading" | "spore.control" | "spore.same-lot" | "spore.round" | "spore.cycle-good" | "spore.waited" | "stored.intact" | "stored.dry" | "stored.dropped" | "stored.labeled" | "stored.released" | "stored.age" | "stored.in-treatment-room" | "work.task" | "work.hot" | "spill.what" | "spill.across" | "spill.sharps" | "spill.amount" | "spill.sheet" | "spill.fumes" | "spill.reached-someone" | "staff.safety-trained" | "staff.signed-off" | "staff.observed-runs" | "staff.since-refresher" | "staff.away" | "staff.change-not-shown" | "staff.vaccine-offered" | "staff.working-days" | "staff.skin" | "staff.ill" | "instrument.kind" | "instrument.materials" | "instrument.contact" | "instrument.single-use" | "instrument.heat-tolerant" | "instrument.washer-by-maker" | "instrument.ultrasonic-by-maker" | "instrument.immersible" | "instrument.hinged" | "instrument.sharp" | "instrument.has-lumen" | "instrument.lumen-width" | "instrument.lumen-ends" | "instrument.oiling" | "instrument.implantable" | "load.wait" | "load.kept-moist" | "load.soil" | "load.arrangement" | "load.purpose" | "pack.wrapping" | "pack.shape" | "pack.stands-steam" | "machine.dynamic-air-removal" | "machine.leak-test" | "machine.water-tank" | "clinic.machines" | "clinic.places-implants" | "clinic.dates-packs" | "stored.straight-from-sterilizer";
/** A situation. Quantities are plain numbers in the unit of the fact, days are `YYYY-MM-DD`; absent or null is not stated. */
export interface Facts {
  "use.class"?: "noncritical" | "semicritical" | "critical" | null | undefined;
  "use.level"?: "clean-and-wipe" | "high-level-disinfect" | "heat-sterilize" | "discard" | "do-not-use" | null | undefined;
  "water.purpose"?: "washing-water" | "ultrasonic-solution" | "last-rinse" | "sterilizer-feed" | "dental-unit-water" | null | undefined;
  "water.kind"?: "tap-water" | "softened-water" | "demineralized-water" | "distilled-water" | "sterile-water" | "drained-water" | null | undefined;
  "water.hardness"?: number | null | undefined;
  "water.conductivity"?: number | null | undefined;
  "water.standing"?: number | null | undefined;
  "water.bacteria"?: number | null | undefined;
  "check.machine"?: "washer" | "ultrasonic-bath" | "steam-sterilizer" | "dry-heat-sterilizer" | "water-softener" | "purified-water-unit" | "heat-sealer" | "handpiece-oiler" | null | undefined;
  "check.marked-out"?: boolean | null | undefined;
  "check.daily-done"?: boolean | null | undefined;
  "check.alarm"?: boolean | null | undefined;
  "check.leak"?: boolean | null | undefined;
  "check.seal"?: "seal-sound" | "seal-worn" | "seal-torn" | null | undefined;
  "check.door-locks"?: boolean | null | undefined;
  "check.electrics-sound"?: boolean | null | undefined;
  "check.arms-turn"?: boolean | null | undefined;
  "check.supplies-in"?: boolean | null | undefined;
  "check.tests-passed"?: boolean | null | undefined;
  "check.service-late"?: boolean | null | undefined;
  "check.service-late-by"?: number | null | undefined;
  "answer.washer-compatibility"?: "permit" | "ask-maker" | "exclude" | null | undefined;
  "answer.ultrasonic-compatibility"?: "permit" | "ask-maker" | "exclude" | null | undefined;
  "load.all-for-washer"?: boolean | null | undefined;
  "load.within-makers-amount"?: boolean | null | undefined;
  "load.overlapping"?: boolean | null | undefined;
  "load.nothing-holds-water"?: boolean | null | undefined;
  "load.cassettes-stand"?: boolean | null | undefined;
  "load.sharps-held"?: boolean | null | undefined;
  "load.metals-apart"?: boolean | null | undefined;
  "washer.arms-free"?: boolean | null | undefined;
  "washer.supplied"?: boolean | null | undefined;
  "washer.checked"?: boolean | null | undefined;
  "washer.stop"?: "power-cut" | "door-opened" | "supply-missing" | "fault-alarm" | null | undefined;
  "washer.was-drying"?: boolean | null | undefined;
  "washer.resumed"?: boolean | null | undefined;
  "washer.pause"?: number | null | undefined;
  "washer.stopped-before"?: boolean | null | undefined;
  "washer.danger"?: boolean | null | undefined;
  "item.visible-soil"?: boolean | null | undefined;
  "item.wet"?: boolean | null | undefined;
  "item.surface"?: "sound-surface" | "spotted-surface" | "rusted-surface" | "flaking-surface" | null | undefined;
  "item.damaged"?: boolean | null | undefined;
  "item.joint"?: "joint-free" | "joint-stiff" | "joint-stays-stiff" | "joint-loose" | null | undefined;
  "item.dull"?: boolean | null | undefined;
  "item.lumen-clear"?: boolean | null | undefined;
  "item.mark-bad"?: boolean | null | undefined;
  "item.proposed-method"?: "steam-cycle" | "dry-heat-cycle" | "liquid-soaking" | "washer-disinfection" | "boiling-water" | "glass-beads" | "ultraviolet-light" | "microwave-oven" | "household-oven" | null | undefined;
  "pack.stands-dry-heat"?: boolean | null | undefined;
  "sterilizer.cleared"?: boolean | null | undefined;
  "sterilizer.cycle-fits"?: boolean | null | undefined;
  "sterilizer.packs-checked"?: boolean | null | undefined;
  "sterilizer.crowded"?: boolean | null | undefined;
  "sterilizer.traps-water"?: boolean | null | undefined;
  "sterilizer.metal-above"?: boolean | null | undefined;
  "sterilizer.feed-water"?: boolean | null | undefined;
  "visit.signs"?: "no-visit-sign" | "cold-visit-sign" | "fever-visit-sign" | "stomach-visit-sign" | "rash-visit-sign" | "long-cough-visit-sign" | null | undefined;
  "visit.urgent"?: boolean | null | undefined;
  "vial.kind"?: "single-dose-vial" | "multidose-vial" | "anesthetic-cartridge" | "infusion-bag" | null | undefined;
  "vial.sound"?: boolean | null | undefined;
  "vial.opened"?: boolean | null | undefined;
  "vial.other-patient"?: boolean | null | undefined;
  "vial.used-needle"?: boolean | null | undefined;
  "vial.dated"?: boolean | null | undefined;
  "vial.open-for"?: number | null | undefined;
  "surface.kind"?: "surface-near-patient" | "surface-housekeeping" | null | undefined;
  "surface.cover"?: "cover-whole" | "cover-failed" | "cover-none" | null | undefined;
  "surface.blood"?: boolean | null | undefined;
  "waste.kind"?: "waste-sharp" | "waste-dripping" | "waste-dry" | "waste-tooth" | "waste-tooth-amalgam" | "waste-amalgam" | "waste-medicine" | "waste-chemical" | "waste-unknown" | null | undefined;
  "staff.signs"?: "staff-well" | "staff-cold" | "staff-lip" | "staff-hand" | "staff-eye" | "staff-fever" | "staff-stomach" | "staff-rash" | "staff-long-cough" | null | undefined;
  "staff.well-for"?: number | null | undefined;
  "cycle.medium"?: "steam" | "dry-heat" | null | undefined;
  "cycle.completed"?: boolean | null | undefined;
  "cycle.recorded"?: boolean | null | undefined;
  "cycle.readings-met"?: boolean | null | undefined;
  "cycle.wet-packs"?: "no-wet-pack" | "one-wet-pack" | "several-wet-packs" | null | undefined;
  "cycle.torn-pack"?: boolean | null | undefined;
  "cycle.has-implant"?: boolean | null | undefined;
  "cycle.spore-result"?: "load-spores-none" | "load-spores-waiting" | "load-spores-negative" | "load-spores-positive" | null | undefined;
  "cycle.first-after-repair"?: boolean | null | undefined;
  "indicator.outside"?: "outside-changed" | "outside-not-changed" | "outside-missing" | null | undefined;
  "indicator.inside"?: "inside-changed" | "inside-not-changed" | "inside-hidden" | "inside-missing" | null | undefined;
  "airtest.done"?: boolean | null | undefined;
  "airtest.valid"?: boolean | null | undefined;
  "airtest.even"?: boolean | null | undefined;
  "airtest.leak"?: "leak-passed" | "leak-failed" | "leak-overdue" | null | undefined;
  "spore.organism"?: "geobacillus" | "atrophaeus" | null | undefined;
  "spore.reading"?: "spores-no-growth" | "spores-growth" | "spores-waiting" | "spores-lost" | null | undefined;
  "spore.control"?: "control-grew" | "control-failed" | "control-unread" | null | undefined;
  "spore.same-lot"?: boolean | null | undefined;
  "spore.round"?: "routine-test" | "repeat-after-positive" | null | undefined;
  "spore.cycle-good"?: boolean | null | undefined;
  "spore.waited"?: number | null | undefined;
  "stored.intact"?: boolean | null | undefined;
  "stored.dry"?: boolean | null | undefined;
  "stored.dropped"?: boolean | null | undefined;
  "stored.labeled"?: boolean | null | undefined;
  "stored.released"?: boolean | null | undefined;
  "stored.age"?: number | null | undefined;
  "stored.in-treatment-room"?: boolean | null | undefined;
  "work.task"?: "loading-sterilizer" | "unloading-sterilizer" | "storing-packs" | "unloading-washer" | "packing-clean-items" | "oiling-handpieces" | "carrying-used-items" | "sorting-used-items" | "emptying-strainers" | "closing-sharps-container" | "cleaning-by-hand" | "emptying-ultrasonic-bath" | "refilling-chemicals" | "cleaning-up-spill" | "opening-machine-by-hand" | null | undefined;
  "work.hot"?: boolean | null | undefined;
  "spill.what"?: "spilled-blood" | "spilled-dirty-water" | "spilled-chemical" | "spilled-water" | "spilled-unknown" | null | undefined;
  "spill.across"?: number | null | undefined;
  "spill.sharps"?: boolean | null | undefined;
  "spill.amount"?: number | null | undefined;
  "spill.sheet"?: boolean | null | undefined;
  "spill.fumes"?: boolean | null | undefined;
  "spill.reached-someone"?: boolean | null | undefined;
  "staff.safety-trained"?: boolean | null | undefined;
  "staff.signed-off"?: boolean | null | undefined;
  "staff.observed-runs"?: number | null | undefined;
  "staff.since-refresher"?: number | null | undefined;
  "staff.away"?: number | null | undefined;
  "staff.change-not-shown"?: boolean | null | undefined;
  "staff.vaccine-offered"?: boolean | null | undefined;
  "staff.working-days"?: number | null | undefined;
  "staff.skin"?: "skin-whole" | "skin-covered" | "skin-open" | null | undefined;
  "staff.ill"?: boolean | null | undefined;
  "instrument.kind"?: "hand-instrument" | "hinged-instrument" | "handpiece" | "bur" | "root-canal-file" | "scaler-tip" | "tray" | "cassette" | "impression-tray" | "suction-tip" | "syringe-tip" | "clamp" | "x-ray-holder" | "light-guide" | "plastic-accessory" | "scalpel-handle" | null | undefined;
  "instrument.materials"?: readonly ("stainless-steel" | "carbon-steel" | "tungsten-carbide" | "aluminium" | "anodised-aluminium" | "chrome-plated" | "brass-or-copper" | "titanium" | "nickel-titanium" | "heat-resistant-plastic" | "heat-sensitive-plastic" | "silicone-or-rubber" | "glass" | "optical-fibre" | "ceramic" | "diamond-grit" | "textile")[] | null | undefined;
  "instrument.contact"?: "intact-skin" | "mucous-membrane" | "tissue-or-bone" | null | undefined;
  "instrument.single-use"?: boolean | null | undefined;
  "instrument.heat-tolerant"?: boolean | null | undefined;
  "instrument.washer-by-maker"?: "allowed" | "forbidden" | "silent" | null | undefined;
  "instrument.ultrasonic-by-maker"?: "allowed" | "forbidden" | "silent" | null | undefined;
  "instrument.immersible"?: boolean | null | undefined;
  "instrument.hinged"?: boolean | null | undefined;
  "instrument.sharp"?: boolean | null | undefined;
  "instrument.has-lumen"?: boolean | null | undefined;
  "instrument.lumen-width"?: number | null | undefined;
  "instrument.lumen-ends"?: "open-at-both-ends" | "open-at-one-end" | null | undefined;
  "instrument.oiling"?: "no-oil" | "joint-oil" | "handpiece-oil" | null | undefined;
  "instrument.implantable"?: boolean | null | undefined;
  "load.wait"?: number | null | undefined;
  "load.kept-moist"?: boolean | null | undefined;
  "load.soil"?: "light-soil" | "heavy-soil" | "dried-soil" | "stuck-material" | null | undefined;
  "load.arrangement"?: "loose-items" | "cassettes" | "mixed-load" | null | undefined;
  "load.purpose"?: "wash" | "moist-hold" | null | undefined;
  "pack.wrapping"?: "unwrapped" | "wrapped" | null | undefined;
  "pack.shape"?: "solid" | "hollow-wide" | "hollow-narrow" | "porous" | null | undefined;
  "pack.stands-steam"?: boolean | null | undefined;
  "machine.dynamic-air-removal"?: boolean | null | undefined;
  "machine.leak-test"?: boolean | null | undefined;
  "machine.water-tank"?: boolean | null | undefined;
  "clinic.machines"?: readonly ("washer" | "ultrasonic-bath" | "steam-sterilizer" | "dry-heat-sterilizer" | "water-softener" | "purified-water-unit" | "heat-sealer" | "handpiece-oiler")[] | null | undefined;
  "clinic.places-implants"?: boolean | null | undefined;
  "clinic.dates-packs"?: boolean | null | undefined;
  "stored.straight-from-sterilizer"?: boolean | null | undefined;
}
export interface Outcomes {
  "device-class": Brief;
  "processing-level": Brief;
  "waiting": Brief;
  "machine-use": Brief;
  "water-use": Brief;
  "cleaning-route": Brief;
  "interrupted-washer": Brief;
  "ultrasonic-compatibility": Brief;
  "washer-compatibility": Brief;
  "washer-load": Brief;
  "washer-program": Brief;
  "counts-as-sterilizing": Brief;
  "inspection": Brief;
  "oiling": Brief;
  "packing": Brief;
  "sterilizer-cycle": Brief;
  "sterilizer-load": Brief;
  "sterilizing-method": Brief;
  "arriving-patient": Brief;
  "surface-care": Brief;
  "vial-use": Brief;
  "waste-route": Brief;
  "work-restriction": Brief;
  "air-removal-test-result": Brief;
  "load-release": Brief;
  "pack-use": Brief;
  "spore-test-result": Brief;
  "may-reprocess": Brief;
  "protective-equipment": Brief;
  "spill-response": Brief;
}
export declare const rulebook: Readonly<{
  title: string;
  clinic: string;
  version: string;
  on: string;
  digest: string;
  format: string;
}>;
export declare const decisions: readonly {
  id: DecisionId;
  kind: 'verdict' | 'choice';
  question: string;
  /** Least to most restrictive; of a choice its programs, the one preferred first, and none. */
  outcomes: readonly string[];
  reads: readonly FactId[];
}[];
export type Value = string | boolean | number | readonly string[];
export interface Reason {
  /** Absent where no rule speaks. */
  rule?: string;
  outcome?: string;
  because: string;
  /** False while a missing fact leaves open whether the rule applies. */
  certain: boolean;
  /** As the caller gave them. */
  facts: Record<string, Value>;
  source?: { id: string; at?: string; evidence?: string; checked?: string; note?: string };
}
export interface Offer {
  program: string;
  meets: boolean;
  mayMeet: boolean;
  lacks: { rule: string; facts: string[] }[];
}
/** The parts of an answer are worked out when they are read; toJSON gives them all. */
export interface Answer {
  readonly decision: DecisionId;
  readonly outcome: string;
  readonly possible: string[];
  readonly settled: boolean;
  readonly reasons: Reason[];
  readonly needed: FactId[];
  readonly instead: string[];
  readonly cautions: string[];
  readonly offers?: Offer[];
  readonly rulebook: string;
  toJSON(): Omit<Answer, 'toJSON'>;
}
/** An answer in short: the rules that apply, and those that may while facts are missing. */
export interface Brief {
  outcome: string;
  settled: boolean;
  rules: readonly string[];
  open: readonly string[];
}
export interface Condition {
  fact: FactId;
  test: Readonly<{ is: string; members?: readonly (string | boolean)[]; value?: number | string; unit?: string; limit?: string }>;
  /** Of the answer of another decision: those still possible. Absent where it is not stated. */
  value: Value | null | undefined;
  /** Null: unknown. */
  truth: boolean | null;
}
export interface Trace {
  decision: DecisionId;
  rules: { rule: string; truth: boolean | null; conditions: Condition[] }[];
  rulebook: string;
}
/**
 * By fact id. Values as in a situation, with NaN as well for not stated; or of an enum, a boolean or an answer the places of members
 * (of a boolean 0 and 1), of a set bit masks by place of member, in a typed array of whole numbers, where the largest number
 * (-1 where signed) is not stated. Places are those of describeFact(...).members.
 */
export type Columns = Readonly<Partial<Record<FactId, ArrayLike<unknown> | null>>>;
export interface Many {
  decision: DecisionId;
  /** By number in outcomes, the outcome. */
  names: readonly string[];
  rules: readonly string[];
  /** How many 32-bit words of fired belong to one situation. */
  words: number;
  outcomes: Uint8Array | Uint16Array;
  /** 1 where no missing fact can change the outcome. */
  settled: Uint8Array;
  /** Rule r applies for certain in situation i where fired[i * words + (r >> 5)] has bit r & 31. */
  fired: Uint32Array;
}
/** A value that does not fit its fact. */
export declare class FactError extends TypeError {
  readonly fact: FactId;
  readonly expected: string;
}
/** Throws a RangeError for an unknown decision, a FactError for a value that does not fit. The same holds for all below. */
export declare function decide(decision: DecisionId, facts: Facts): Answer;
export declare function outcomeOf(decision: DecisionId, facts: Facts): string;
export declare function decideAll(facts: Facts): Outcomes;
export declare function trace(decision: DecisionId, facts: Facts): Trace;
export declare function decideMany(decision: DecisionId, columns: Columns, count: number): Many;
export declare function decideAllMany(columns: Columns, count: number): Record<DecisionId, Many>;
export declare function describeFact(fact: FactId): {
  id: FactId;
  type: 'enum' | 'set' | 'boolean' | 'quantity' | 'count' | 'date' | 'answer';
  members?: string[];
  unit?: string;
  bounds?: string;
  expected: string;
};
