-- Harrow Mills Dental: Instrument Reprocessing Manual, version 1.0, rules of 2026-12-01
-- digest b7b59a99ae06f7f3903545440e3c48b602d7f9b27b150084ad9ca3c671f1e630
--
-- Put one row a situation into "facts": NULL where a fact is not stated, a set as its members with commas between them, a quantity in
-- the unit that stands behind it. Then ask the view of a decision:
--   SELECT * FROM "decide device-class";
-- It gives the outcome, the outcomes still possible, whether no missing fact can change it, and the rules that apply and may apply.
-- A value that cannot be is refused when it is put in. The column of an answer is for callers who know it already.

CREATE TABLE "facts" (
  "situation id" BIGINT NOT NULL,
  "use.class" VARCHAR(200) CHECK ("use.class" IN ('noncritical', 'semicritical', 'critical')), -- Which class is it?
  "use.level" VARCHAR(200) CHECK ("use.level" IN ('clean-and-wipe', 'high-level-disinfect', 'heat-sterilize', 'discard', 'do-not-use')), -- What does it need between patients?
  "water.purpose" VARCHAR(200) CHECK ("water.purpose" IN ('washing-water', 'ultrasonic-solution', 'last-rinse', 'sterilizer-feed', 'dental-unit-water')), -- What shall the water be used for?
  "water.kind" VARCHAR(200) CHECK ("water.kind" IN ('tap-water', 'softened-water', 'demineralized-water', 'distilled-water', 'sterile-water', 'drained-water')), -- What kind of water is it?
  "water.hardness" DOUBLE PRECISION CHECK ("water.hardness" >= 0e+0 AND "water.hardness" <= 1e+9), -- How hard is the water? in mg{CaCO3}/L
  "water.conductivity" DOUBLE PRECISION CHECK ("water.conductivity" >= 0e+0 AND "water.conductivity" <= 1e+9), -- What does the conductivity meter show? in uS/cm
  "water.standing" DOUBLE PRECISION CHECK ("water.standing" >= 0e+0 AND "water.standing" <= 1e+9), -- How long ago was the container opened or the water drawn? in d
  "water.bacteria" DOUBLE PRECISION CHECK ("water.bacteria" >= 0e+0 AND "water.bacteria" <= 1e+9), -- What was the bacteria count of the last sample from this dental unit? in [CFU]/mL
  "check.machine" VARCHAR(200) CHECK ("check.machine" IN ('washer', 'ultrasonic-bath', 'steam-sterilizer', 'dry-heat-sterilizer', 'water-softener', 'purified-water-unit', 'heat-sealer', 'handpiece-oiler')), -- Which kind of machine is it?
  "check.marked-out" BOOLEAN, -- Does it carry an out-of-service sign, or has it been repaired, moved or installed and not yet signed back into use?
  "check.daily-done" BOOLEAN, -- Are all of today's checks of this machine done?
  "check.alarm" BOOLEAN, -- Does it show a fault message that comes back after switching off and on once?
  "check.leak" BOOLEAN, -- Is there water under it, or steam or hot water escaping while it runs?
  "check.seal" VARCHAR(200) CHECK ("check.seal" IN ('seal-sound', 'seal-worn', 'seal-torn')), -- What does the door seal look and feel like?
  "check.door-locks" BOOLEAN, -- Does the door close without force and stay locked while the cycle runs?
  "check.electrics-sound" BOOLEAN, -- Are the cable, plug and switches whole and dry, without a burnt smell?
  "check.arms-turn" BOOLEAN, -- Does every wash arm spin by the touch of a finger, with all nozzles open?
  "check.supplies-in" BOOLEAN, -- Does it have all it needs to run, such as water, detergent, salt or oil?
  "check.tests-passed" BOOLEAN, -- Did it pass every test that was due up to now?
  "check.service-late" BOOLEAN, -- Is its yearly service, calibration or pressure inspection past its due date?
  "check.service-late-by" DOUBLE PRECISION CHECK ("check.service-late-by" >= 0e+0 AND "check.service-late-by" <= 1e+9), -- By how many days is it overdue? in d
  "answer.washer-compatibility" VARCHAR(200) CHECK ("answer.washer-compatibility" IN ('permit', 'ask-maker', 'exclude')), -- May it go through the washer?
  "answer.ultrasonic-compatibility" VARCHAR(200) CHECK ("answer.ultrasonic-compatibility" IN ('permit', 'ask-maker', 'exclude')), -- May it go into the ultrasonic bath?
  "load.all-for-washer" BOOLEAN, -- Does the register say washer for every item in the load?
  "load.within-makers-amount" BOOLEAN, -- Is it no more than the washer's maker allows?
  "load.overlapping" BOOLEAN, -- Does any item cover, nest in or lie across another?
  "load.nothing-holds-water" BOOLEAN, -- Are all joints open, all hollows tilted down and all narrow lumens on a flushing nozzle?
  "load.cassettes-stand" BOOLEAN, -- Is each cassette locked and standing in its own slot, apart from the next?
  "load.sharps-held" BOOLEAN, -- Do all sharp ends point down, and is everything small under a lid?
  "load.metals-apart" BOOLEAN, -- Do items of different metals lie in separate baskets?
  "washer.arms-free" BOOLEAN, -- Does each wash arm, pushed by hand, turn a full circle without touching anything?
  "washer.supplied" BOOLEAN, -- Are the signs for detergent, rinse aid, salt and service off, and is the coarse filter clean and in place?
  "washer.checked" BOOLEAN, -- Are today's checks signed as passed, and does the washer carry no out-of-service sign?
  "washer.stop" VARCHAR(200) CHECK ("washer.stop" IN ('power-cut', 'door-opened', 'supply-missing', 'fault-alarm')), -- Why did the washer stop?
  "washer.was-drying" BOOLEAN, -- Did it stop in the drying stage?
  "washer.resumed" BOOLEAN, -- Did the washer resume by itself, and does its maker say that a resumed cycle counts?
  "washer.pause" DOUBLE PRECISION CHECK ("washer.pause" >= 0e+0 AND "washer.pause" <= 1e+9), -- How long did it stand still? in min
  "washer.stopped-before" BOOLEAN, -- Has it stopped for the same reason once already today?
  "washer.danger" BOOLEAN, -- Is there water on the floor, smoke, a smell of burning or a damaged cable?
  "item.visible-soil" BOOLEAN, -- Under the magnifier, is there blood, tissue, cement or any other soil on it?
  "item.wet" BOOLEAN, -- Is any part of it wet, or does water run out when it is tilted?
  "item.surface" VARCHAR(200) CHECK ("item.surface" IN ('sound-surface', 'spotted-surface', 'rusted-surface', 'flaking-surface')), -- What does its surface look like?
  "item.damaged" BOOLEAN, -- Is it cracked, bent, chipped or missing a part?
  "item.joint" VARCHAR(200) CHECK ("item.joint" IN ('joint-free', 'joint-stiff', 'joint-stays-stiff', 'joint-loose')), -- How does its joint move?
  "item.dull" BOOLEAN, -- Is its edge or point dull or nicked?
  "item.lumen-clear" BOOLEAN, -- Is its lumen clear?
  "item.mark-bad" BOOLEAN, -- Is its code unreadable, or its color band or ring loose or torn?
  "item.proposed-method" VARCHAR(200) CHECK ("item.proposed-method" IN ('steam-cycle', 'dry-heat-cycle', 'liquid-soaking', 'washer-disinfection', 'boiling-water', 'glass-beads', 'ultraviolet-light', 'microwave-oven', 'household-oven')), -- By which method would the item be made sterile?
  "pack.stands-dry-heat" BOOLEAN, -- Do the makers of all items in the load allow dry heat?
  "sterilizer.cleared" BOOLEAN, -- Have all tests due on this sterilizer today passed, and is it free of an out-of-service sign?
  "sterilizer.cycle-fits" BOOLEAN, -- Is the cycle that is set one that the rules allow for the hardest item in the load?
  "sterilizer.packs-checked" BOOLEAN, -- Is every pack dry, whole, closed and labeled, with an indicator inside?
  "sterilizer.crowded" BOOLEAN, -- Does anything touch the wall or the door, or does a pack lie on another?
  "sterilizer.traps-water" BOOLEAN, -- Does a cup, tray or tube lie so that water can stand in it?
  "sterilizer.metal-above" BOOLEAN, -- Does heavy metal stand above cloth, paper or lighter packs?
  "sterilizer.feed-water" BOOLEAN, -- Is the water in the tank at the fill mark, clear, and of the kind its maker asks for?
  "visit.signs" VARCHAR(200) CHECK ("visit.signs" IN ('no-visit-sign', 'cold-visit-sign', 'fever-visit-sign', 'stomach-visit-sign', 'rash-visit-sign', 'long-cough-visit-sign')), -- Which of these does the person who comes in have?
  "visit.urgent" BOOLEAN, -- Is there severe pain, swelling, bleeding or an injury that cannot wait?
  "vial.kind" VARCHAR(200) CHECK ("vial.kind" IN ('single-dose-vial', 'multidose-vial', 'anesthetic-cartridge', 'infusion-bag')), -- What is the medicine in?
  "vial.sound" BOOLEAN, -- Is it whole and clear, its label readable, and its printed date not past?
  "vial.opened" BOOLEAN, -- Has it been opened or pierced before?
  "vial.other-patient" BOOLEAN, -- Was it opened for another patient?
  "vial.used-needle" BOOLEAN, -- Has a used needle or syringe been in it, or was it in a treatment room for another patient?
  "vial.dated" BOOLEAN, -- Is the day of opening written on it?
  "vial.open-for" DOUBLE PRECISION CHECK ("vial.open-for" >= 0e+0 AND "vial.open-for" <= 1e+9), -- How many days ago was it opened? in d
  "surface.kind" VARCHAR(200) CHECK ("surface.kind" IN ('surface-near-patient', 'surface-housekeeping')), -- Which kind of surface is it?
  "surface.cover" VARCHAR(200) CHECK ("surface.cover" IN ('cover-whole', 'cover-failed', 'cover-none')), -- How was its cover when the patient left?
  "surface.blood" BOOLEAN, -- Is blood, or saliva with blood in it, to be seen on the surface itself?
  "waste.kind" VARCHAR(200) CHECK ("waste.kind" IN ('waste-sharp', 'waste-dripping', 'waste-dry', 'waste-tooth', 'waste-tooth-amalgam', 'waste-amalgam', 'waste-medicine', 'waste-chemical', 'waste-unknown')), -- What is thrown away?
  "staff.signs" VARCHAR(200) CHECK ("staff.signs" IN ('staff-well', 'staff-cold', 'staff-lip', 'staff-hand', 'staff-eye', 'staff-fever', 'staff-stomach', 'staff-rash', 'staff-long-cough')), -- Which of these does the person have?
  "staff.well-for" DOUBLE PRECISION CHECK ("staff.well-for" >= 0e+0 AND "staff.well-for" <= 1e+9), -- For how long has the fever been gone without medicine, or the vomiting and diarrhea been over? in h
  "cycle.medium" VARCHAR(200) CHECK ("cycle.medium" IN ('steam', 'dry-heat')), -- Was it a steam cycle or a dry heat cycle?
  "cycle.completed" BOOLEAN, -- Did the cycle run to its end, without a stop, an alarm or an error message?
  "cycle.recorded" BOOLEAN, -- Is there a record of this cycle?
  "cycle.readings-met" BOOLEAN, -- Did holding time and temperature, and for steam the pressure, reach what this cycle asks for?
  "cycle.wet-packs" VARCHAR(200) CHECK ("cycle.wet-packs" IN ('no-wet-pack', 'one-wet-pack', 'several-wet-packs')), -- How many packs of the load are wet, inside or outside, now that they have cooled?
  "cycle.torn-pack" BOOLEAN, -- Is a pack of the load torn, punctured or open at a seal?
  "cycle.has-implant" BOOLEAN, -- Is there an implant, or a part of one, in the load?
  "cycle.spore-result" VARCHAR(200) CHECK ("cycle.spore-result" IN ('load-spores-none', 'load-spores-waiting', 'load-spores-negative', 'load-spores-positive')), -- What did the spore test that ran with this load show?
  "cycle.first-after-repair" BOOLEAN, -- Is this the first load since the sterilizer was installed, moved or repaired?
  "indicator.outside" VARCHAR(200) CHECK ("indicator.outside" IN ('outside-changed', 'outside-not-changed', 'outside-missing')), -- What does the indicator on the outside of the pack show?
  "indicator.inside" VARCHAR(200) CHECK ("indicator.inside" IN ('inside-changed', 'inside-not-changed', 'inside-hidden', 'inside-missing')), -- What does the indicator inside the pack show?
  "airtest.done" BOOLEAN, -- Has the air removal test been run today, before the first load?
  "airtest.valid" BOOLEAN, -- Was the test pack in date, alone in a warm chamber, and run on the test cycle?
  "airtest.even" BOOLEAN, -- Has the whole test sheet changed to one even color, the center like the edges?
  "airtest.leak" VARCHAR(200) CHECK ("airtest.leak" IN ('leak-passed', 'leak-failed', 'leak-overdue')), -- How did the last leak test of this sterilizer come out?
  "spore.organism" VARCHAR(200) CHECK ("spore.organism" IN ('geobacillus', 'atrophaeus')), -- Which spore does the label of the test name?
  "spore.reading" VARCHAR(200) CHECK ("spore.reading" IN ('spores-no-growth', 'spores-growth', 'spores-waiting', 'spores-lost')), -- What happened to the test that went through the sterilizer?
  "spore.control" VARCHAR(200) CHECK ("spore.control" IN ('control-grew', 'control-failed', 'control-unread')), -- What happened to the control?
  "spore.same-lot" BOOLEAN, -- Do the test and the control carry the same lot number?
  "spore.round" VARCHAR(200) CHECK ("spore.round" IN ('routine-test', 'repeat-after-positive')), -- Is it the routine test, or the repeat after a positive test?
  "spore.cycle-good" BOOLEAN, -- Were the readings and the indicators of the tested cycle all in order?
  "spore.waited" DOUBLE PRECISION CHECK ("spore.waited" >= 0e+0 AND "spore.waited" <= 1e+9), -- How many days ago did the test run? in d
  "stored.intact" BOOLEAN, -- Is the wrap free of tears, holes and worn folds, is every seal closed, and has it never been opened?
  "stored.dry" BOOLEAN, -- Is it dry, without water marks, and was it kept where nothing can drip or splash on it?
  "stored.dropped" BOOLEAN, -- Has it been on the floor?
  "stored.labeled" BOOLEAN, -- Can you read date, sterilizer and load number on its label?
  "stored.released" BOOLEAN, -- Does the sterilizer log show that its load was released, and is it on no recall list?
  "stored.age" DOUBLE PRECISION CHECK ("stored.age" >= 0e+0 AND "stored.age" <= 1e+9), -- How long ago was it sterilized? in d
  "stored.in-treatment-room" BOOLEAN, -- Was the unwrapped item kept in a treatment room?
  "work.task" VARCHAR(200) CHECK ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'storing-packs', 'unloading-washer', 'packing-clean-items', 'oiling-handpieces', 'carrying-used-items', 'sorting-used-items', 'emptying-strainers', 'closing-sharps-container', 'cleaning-by-hand', 'emptying-ultrasonic-bath', 'refilling-chemicals', 'cleaning-up-spill', 'opening-machine-by-hand')), -- What are you about to do?
  "work.hot" BOOLEAN, -- Is the machine, the tray or the load still hot?
  "spill.what" VARCHAR(200) CHECK ("spill.what" IN ('spilled-blood', 'spilled-dirty-water', 'spilled-chemical', 'spilled-water', 'spilled-unknown')), -- What was spilled?
  "spill.across" DOUBLE PRECISION CHECK ("spill.across" >= 0e+0 AND "spill.across" <= 1e+9), -- How far across is it, at its widest? in cm
  "spill.sharps" BOOLEAN, -- Are there instruments, needles or broken glass in it?
  "spill.amount" DOUBLE PRECISION CHECK ("spill.amount" >= 0e+0 AND "spill.amount" <= 1e+9), -- How much has run out? in L
  "spill.sheet" BOOLEAN, -- Do you have the safety data sheet of this product in your hand?
  "spill.fumes" BOOLEAN, -- Does it fume, bubble, get warm, or sting your eyes or throat?
  "spill.reached-someone" BOOLEAN, -- Has any of it reached someone's skin, eyes or mouth?
  "staff.safety-trained" BOOLEAN, -- Has the person had the training on infection and safety that comes before the first used instrument?
  "staff.signed-off" BOOLEAN, -- Does the training record show a signature for each machine and task of today?
  "staff.observed-runs" DOUBLE PRECISION CHECK ("staff.observed-runs" >= 0 AND "staff.observed-runs" <= 9007199254740991 AND "staff.observed-runs" = FLOOR("staff.observed-runs")), -- How many complete runs has the person done while someone trained watched?
  "staff.since-refresher" DOUBLE PRECISION CHECK ("staff.since-refresher" >= 0e+0 AND "staff.since-refresher" <= 1e+9), -- How long ago was the person's last training on these rules, at hire or at a yearly refresher? in mo
  "staff.away" DOUBLE PRECISION CHECK ("staff.away" >= 0e+0 AND "staff.away" <= 1e+9), -- How long has the person not done this work? in mo
  "staff.change-not-shown" BOOLEAN, -- Has a machine, a product or a rule changed that the person has not been shown and signed for?
  "staff.vaccine-offered" BOOLEAN, -- Has the person been offered hepatitis B vaccination?
  "staff.working-days" DOUBLE PRECISION CHECK ("staff.working-days" >= 0e+0 AND "staff.working-days" <= 1e+9), -- How many working days ago did the person first work with used instruments? in d
  "staff.skin" VARCHAR(200) CHECK ("staff.skin" IN ('skin-whole', 'skin-covered', 'skin-open')), -- How is the skin of the person's hands and forearms today?
  "staff.ill" BOOLEAN, -- Does the person have a fever, vomiting, diarrhea, or an illness that could pass to others?
  "instrument.kind" VARCHAR(200) CHECK ("instrument.kind" IN ('hand-instrument', 'hinged-instrument', 'handpiece', 'bur', 'root-canal-file', 'scaler-tip', 'tray', 'cassette', 'impression-tray', 'suction-tip', 'syringe-tip', 'clamp', 'x-ray-holder', 'light-guide', 'plastic-accessory', 'scalpel-handle')), -- What kind of instrument is it?
  "instrument.materials" VARCHAR(4000) CHECK ("instrument.materials" = '' OR REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(',' || REPLACE("instrument.materials", ',', ',,') || ',', ',stainless-steel,', ''), ',carbon-steel,', ''), ',tungsten-carbide,', ''), ',aluminium,', ''), ',anodised-aluminium,', ''), ',chrome-plated,', ''), ',brass-or-copper,', ''), ',titanium,', ''), ',nickel-titanium,', ''), ',heat-resistant-plastic,', ''), ',heat-sensitive-plastic,', ''), ',silicone-or-rubber,', ''), ',glass,', ''), ',optical-fibre,', ''), ',ceramic,', ''), ',diamond-grit,', ''), ',textile,', '') = ''), -- What is it made of, every part that water or steam can reach?
  "instrument.contact" VARCHAR(200) CHECK ("instrument.contact" IN ('intact-skin', 'mucous-membrane', 'tissue-or-bone')), -- What does it touch in use?
  "instrument.single-use" BOOLEAN, -- Is it labeled for single use?
  "instrument.heat-tolerant" BOOLEAN, -- Does its maker say that it stands heat sterilization?
  "instrument.washer-by-maker" VARCHAR(200) CHECK ("instrument.washer-by-maker" IN ('allowed', 'forbidden', 'silent')), -- What do its maker's instructions say about an automatic washer?
  "instrument.ultrasonic-by-maker" VARCHAR(200) CHECK ("instrument.ultrasonic-by-maker" IN ('allowed', 'forbidden', 'silent')), -- What do its maker's instructions say about an ultrasonic bath?
  "instrument.immersible" BOOLEAN, -- May it be put under water?
  "instrument.hinged" BOOLEAN, -- Does it have a hinge, a box joint or a ratchet?
  "instrument.comes-apart" BOOLEAN, -- Does its maker ask for it to be taken apart for cleaning?
  "instrument.concave" BOOLEAN, -- Does it have a hollow that holds water when it lies flat?
  "instrument.sharp" BOOLEAN, -- Can it cut or prick the hand that holds it?
  "instrument.has-lumen" BOOLEAN, -- Does it have a tube, channel or blind hole?
  "instrument.lumen-width" DOUBLE PRECISION CHECK ("instrument.lumen-width" >= 0e+0 AND "instrument.lumen-width" <= 1e+9), -- How wide is the lumen at its narrowest? in mm
  "instrument.lumen-ends" VARCHAR(200) CHECK ("instrument.lumen-ends" IN ('open-at-both-ends', 'open-at-one-end')), -- Is the lumen open at both ends?
  "instrument.oiling" VARCHAR(200) CHECK ("instrument.oiling" IN ('no-oil', 'joint-oil', 'handpiece-oil')), -- What oil does its maker ask for?
  "instrument.implantable" BOOLEAN, -- Is it an implant, or a part of one, that stays in the patient?
  "load.wait" DOUBLE PRECISION CHECK ("load.wait" >= 0e+0 AND "load.wait" <= 1e+9), -- How long ago was the first instrument of this load used on the patient? in min
  "load.kept-moist" BOOLEAN, -- Has it been kept moist since?
  "load.soil" VARCHAR(200) CHECK ("load.soil" IN ('light-soil', 'heavy-soil', 'dried-soil', 'stuck-material')), -- What is the worst soil on it?
  "load.arrangement" VARCHAR(200) CHECK ("load.arrangement" IN ('loose-items', 'cassettes', 'mixed-load')), -- Is the load in cassettes, loose in baskets, or both?
  "load.purpose" VARCHAR(200) CHECK ("load.purpose" IN ('wash', 'moist-hold')), -- Shall the load be washed now, or kept moist until there is more?
  "pack.wrapping" VARCHAR(200) CHECK ("pack.wrapping" IN ('unwrapped', 'wrapped')), -- Is the item wrapped when it goes into the sterilizer?
  "pack.shape" VARCHAR(200) CHECK ("pack.shape" IN ('solid', 'hollow-wide', 'hollow-narrow', 'porous')), -- Is the item solid, hollow or porous?
  "pack.stands-steam" BOOLEAN, -- Do the makers of all items in the load allow steam?
  "program.purpose" VARCHAR(200) CHECK ("program.purpose" IN ('wash-cycle', 'hold-cycle', 'sterilizing-cycle', 'air-removal-test-cycle', 'leak-test-cycle')), -- What is the program for?
  "program.washes" VARCHAR(4000) CHECK ("program.washes" = '' OR REPLACE(REPLACE(REPLACE(',' || REPLACE("program.washes", ',', ',,') || ',', ',loose-items,', ''), ',cassettes,', ''), ',mixed-load,', '') = ''), -- Which arrangements does the washer program take?
  "program.removes" VARCHAR(4000) CHECK ("program.removes" = '' OR REPLACE(REPLACE(REPLACE(REPLACE(',' || REPLACE("program.removes", ',', ',,') || ',', ',light-soil,', ''), ',heavy-soil,', ''), ',dried-soil,', ''), ',stuck-material,', '') = ''), -- Which soils does the washer program remove?
  "program.a0" DOUBLE PRECISION CHECK ("program.a0" >= 0e+0 AND "program.a0" <= 1e+9), -- Which A0 does the disinfection stage reach? in {A0}
  "program.first-rinse-temperature" DOUBLE PRECISION CHECK ("program.first-rinse-temperature" >= (-1e+9) AND "program.first-rinse-temperature" <= 1e+9), -- How hot is the first rinse? in Cel
  "program.dries" BOOLEAN, -- Does the program dry the load?
  "program.sterilizes" VARCHAR(4000) CHECK ("program.sterilizes" = '' OR REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(',' || REPLACE("program.sterilizes", ',', ',,') || ',', ',unwrapped-solid,', ''), ',wrapped-solid,', ''), ',wide-hollow,', ''), ',narrow-hollow,', ''), ',porous-item,', '') = ''), -- Which items does the cycle sterilize, by its maker's statement?
  "program.medium" VARCHAR(200) CHECK ("program.medium" IN ('steam', 'dry-heat')), -- Does the cycle use steam or dry heat?
  "program.air-removal" VARCHAR(200) CHECK ("program.air-removal" IN ('gravity', 'dynamic', 'no-steam')), -- How does the cycle remove air?
  "program.hold-temperature" DOUBLE PRECISION CHECK ("program.hold-temperature" >= (-1e+9) AND "program.hold-temperature" <= 1e+9), -- At which temperature does the cycle hold? in Cel
  "program.hold-time" DOUBLE PRECISION CHECK ("program.hold-time" >= 0e+0 AND "program.hold-time" <= 1e+9), -- How long does the cycle hold that temperature? in min
  "program.dry-time" DOUBLE PRECISION CHECK ("program.dry-time" >= 0e+0 AND "program.dry-time" <= 1e+9), -- How long does the drying stage last? in min
  "program.duration" DOUBLE PRECISION CHECK ("program.duration" >= 0e+0 AND "program.duration" <= 1e+9), -- How long does the program take from start to end? in min
  "machine.built-in-softener" BOOLEAN, -- Does the machine soften its own water with salt?
  "machine.cycle-record" BOOLEAN, -- Does the machine print or store a record of each cycle?
  "machine.dynamic-air-removal" BOOLEAN, -- Does any cycle of the machine remove air by vacuum or steam pulses?
  "machine.leak-test" BOOLEAN, -- Does the machine have an automatic leak test cycle?
  "machine.water-tank" BOOLEAN, -- Does the machine take its water from a tank that is filled by hand?
  "machine.doses-detergent" BOOLEAN, -- Does the machine dose its detergent by pump?
  "clinic.machines" VARCHAR(4000) CHECK ("clinic.machines" = '' OR REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(REPLACE(',' || REPLACE("clinic.machines", ',', ',,') || ',', ',washer,', ''), ',ultrasonic-bath,', ''), ',steam-sterilizer,', ''), ',dry-heat-sterilizer,', ''), ',water-softener,', ''), ',purified-water-unit,', ''), ',heat-sealer,', ''), ',handpiece-oiler,', '') = ''), -- Which kinds of machine does the clinic have?
  "clinic.places-implants" BOOLEAN, -- Does the clinic place implants?
  "clinic.water-hardness" DOUBLE PRECISION CHECK ("clinic.water-hardness" >= 0e+0 AND "clinic.water-hardness" <= 1e+9), -- How hard is the water that feeds the washer? in mg{CaCO3}/L
  "clinic.dates-packs" BOOLEAN, -- Does the clinic give packs a use-by date (date-related storage), rather than judging each pack by its state (event-related storage)?
  "clinic.sprinklers" BOOLEAN, -- Is there a sprinkler head over the sterile storage?
  "clinic.spore-tests-by-mail" BOOLEAN, -- Are spore tests read by an outside laboratory?
  "stored.straight-from-sterilizer" BOOLEAN -- Is it carried, covered, straight from the sterilizer to the patient for whom it was sterilized?
);

-- Which class is this instrument?
CREATE VIEW "decide device-class" AS WITH "given" AS (
  SELECT "situation id", "instrument.contact", "instrument.kind"
  FROM "facts"
),
"rules of device-class" AS (
  SELECT "given"."situation id",
    "instrument.contact" IN ('intact-skin') AS "device-class/skin-only",
    "instrument.contact" IN ('mucous-membrane') AS "device-class/mucous-membrane",
    "instrument.contact" IN ('tissue-or-bone') AS "device-class/tissue-or-bone",
    "instrument.kind" IN ('handpiece', 'bur', 'syringe-tip', 'suction-tip', 'impression-tray', 'x-ray-holder', 'clamp', 'light-guide') AS "device-class/used-in-the-mouth",
    "instrument.kind" IN ('root-canal-file', 'scaler-tip', 'scalpel-handle') AS "device-class/enters-tissue"
  FROM "given"
),
"possible of device-class" AS (
  SELECT "situation id",
    ("device-class/skin-only" IS NOT FALSE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be noncritical",
    (("device-class/mucous-membrane" IS NOT FALSE OR "device-class/used-in-the-mouth" IS NOT FALSE) AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be semicritical",
    ("device-class/tissue-or-bone" IS NOT FALSE OR "device-class/enters-tissue" IS NOT FALSE OR ("device-class/skin-only" IS NOT TRUE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE)) AS "may be critical"
  FROM "rules of device-class"
)
SELECT "rules of device-class"."situation id",
  CASE WHEN "may be critical" THEN 'critical' WHEN "may be semicritical" THEN 'semicritical' WHEN "may be noncritical" THEN 'noncritical' ELSE 'critical' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be noncritical" THEN ',noncritical' ELSE '' END || CASE WHEN "may be semicritical" THEN ',semicritical' ELSE '' END || CASE WHEN "may be critical" THEN ',critical' ELSE '' END) AS "possible",
  (CASE WHEN "may be noncritical" THEN 1 ELSE 0 END + CASE WHEN "may be semicritical" THEN 1 ELSE 0 END + CASE WHEN "may be critical" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "device-class/skin-only" IS TRUE THEN ',device-class/skin-only' ELSE '' END || CASE WHEN "device-class/mucous-membrane" IS TRUE THEN ',device-class/mucous-membrane' ELSE '' END || CASE WHEN "device-class/tissue-or-bone" IS TRUE THEN ',device-class/tissue-or-bone' ELSE '' END || CASE WHEN "device-class/used-in-the-mouth" IS TRUE THEN ',device-class/used-in-the-mouth' ELSE '' END || CASE WHEN "device-class/enters-tissue" IS TRUE THEN ',device-class/enters-tissue' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "device-class/skin-only" IS NULL THEN ',device-class/skin-only' ELSE '' END || CASE WHEN "device-class/mucous-membrane" IS NULL THEN ',device-class/mucous-membrane' ELSE '' END || CASE WHEN "device-class/tissue-or-bone" IS NULL THEN ',device-class/tissue-or-bone' ELSE '' END || CASE WHEN "device-class/used-in-the-mouth" IS NULL THEN ',device-class/used-in-the-mouth' ELSE '' END || CASE WHEN "device-class/enters-tissue" IS NULL THEN ',device-class/enters-tissue' ELSE '' END) AS "open"
FROM "rules of device-class" JOIN "possible of device-class" ON "possible of device-class"."situation id" = "rules of device-class"."situation id";

-- What does this instrument need between patients?
CREATE VIEW "decide processing-level" AS WITH "given" AS (
  SELECT "situation id", "instrument.kind", "instrument.heat-tolerant", "instrument.implantable", "instrument.single-use", "use.class", "instrument.contact"
  FROM "facts"
),
"rules of device-class" AS (
  SELECT "given"."situation id",
    "instrument.contact" IN ('intact-skin') AS "device-class/skin-only",
    "instrument.contact" IN ('mucous-membrane') AS "device-class/mucous-membrane",
    "instrument.contact" IN ('tissue-or-bone') AS "device-class/tissue-or-bone",
    "instrument.kind" IN ('handpiece', 'bur', 'syringe-tip', 'suction-tip', 'impression-tray', 'x-ray-holder', 'clamp', 'light-guide') AS "device-class/used-in-the-mouth",
    "instrument.kind" IN ('root-canal-file', 'scaler-tip', 'scalpel-handle') AS "device-class/enters-tissue"
  FROM "given"
),
"possible of device-class" AS (
  SELECT "situation id",
    ("device-class/skin-only" IS NOT FALSE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be noncritical",
    (("device-class/mucous-membrane" IS NOT FALSE OR "device-class/used-in-the-mouth" IS NOT FALSE) AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be semicritical",
    ("device-class/tissue-or-bone" IS NOT FALSE OR "device-class/enters-tissue" IS NOT FALSE OR ("device-class/skin-only" IS NOT TRUE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE)) AS "may be critical"
  FROM "rules of device-class"
),
"stated use.class" AS (
  SELECT "given"."situation id",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'noncritical' ELSE "may be noncritical" END AS "may be noncritical",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'semicritical' ELSE "may be semicritical" END AS "may be semicritical",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'critical' ELSE "may be critical" END AS "may be critical"
  FROM "given" JOIN "possible of device-class" ON "possible of device-class"."situation id" = "given"."situation id"
),
"rules of processing-level" AS (
  SELECT "given"."situation id",
    CASE WHEN NOT ("use.class may be semicritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be noncritical" THEN FALSE END AS "processing-level/noncritical",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be semicritical" THEN FALSE END AND "instrument.kind" NOT IN ('handpiece', 'cassette') AND "instrument.heat-tolerant" = TRUE) AS "processing-level/semicritical-that-stands-heat",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be semicritical" THEN FALSE END AND "instrument.kind" NOT IN ('handpiece', 'cassette') AND "instrument.heat-tolerant" = FALSE) AS "processing-level/semicritical-that-does-not",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be semicritical") THEN TRUE WHEN NOT "use.class may be critical" THEN FALSE END OR "instrument.implantable" = TRUE) AS "processing-level/critical",
    "instrument.kind" IN ('handpiece') AS "processing-level/handpiece",
    "instrument.kind" IN ('cassette') AS "processing-level/cassette",
    "instrument.single-use" = TRUE AS "processing-level/single-use",
    ("instrument.heat-tolerant" = FALSE AND "instrument.single-use" = FALSE AND (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be semicritical") THEN TRUE WHEN NOT "use.class may be critical" THEN FALSE END OR "instrument.kind" IN ('handpiece', 'cassette') OR "instrument.implantable" = TRUE)) AS "processing-level/needs-heat-and-does-not-stand-it",
    ("instrument.kind" IN ('syringe-tip', 'scaler-tip') AND "instrument.heat-tolerant" = FALSE AND "instrument.single-use" = FALSE) AS "processing-level/parts-on-the-lines"
  FROM "given" JOIN (SELECT "situation id" AS "key use.class", "may be noncritical" AS "use.class may be noncritical", "may be semicritical" AS "use.class may be semicritical", "may be critical" AS "use.class may be critical" FROM "stated use.class") AS "answer use.class" ON "answer use.class"."key use.class" = "given"."situation id"
),
"possible of processing-level" AS (
  SELECT "situation id",
    ("processing-level/noncritical" IS NOT FALSE AND "processing-level/semicritical-that-does-not" IS NOT TRUE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be clean-and-wipe",
    ("processing-level/semicritical-that-does-not" IS NOT FALSE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be high-level-disinfect",
    (("processing-level/semicritical-that-stands-heat" IS NOT FALSE OR "processing-level/critical" IS NOT FALSE OR "processing-level/handpiece" IS NOT FALSE OR "processing-level/cassette" IS NOT FALSE OR ("processing-level/noncritical" IS NOT TRUE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/semicritical-that-does-not" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE)) AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be heat-sterilize",
    ("processing-level/single-use" IS NOT FALSE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be discard",
    ("processing-level/needs-heat-and-does-not-stand-it" IS NOT FALSE OR "processing-level/parts-on-the-lines" IS NOT FALSE) AS "may be do-not-use"
  FROM "rules of processing-level"
)
SELECT "rules of processing-level"."situation id",
  CASE WHEN "may be do-not-use" THEN 'do-not-use' WHEN "may be discard" THEN 'discard' WHEN "may be heat-sterilize" THEN 'heat-sterilize' WHEN "may be high-level-disinfect" THEN 'high-level-disinfect' WHEN "may be clean-and-wipe" THEN 'clean-and-wipe' ELSE 'heat-sterilize' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be clean-and-wipe" THEN ',clean-and-wipe' ELSE '' END || CASE WHEN "may be high-level-disinfect" THEN ',high-level-disinfect' ELSE '' END || CASE WHEN "may be heat-sterilize" THEN ',heat-sterilize' ELSE '' END || CASE WHEN "may be discard" THEN ',discard' ELSE '' END || CASE WHEN "may be do-not-use" THEN ',do-not-use' ELSE '' END) AS "possible",
  (CASE WHEN "may be clean-and-wipe" THEN 1 ELSE 0 END + CASE WHEN "may be high-level-disinfect" THEN 1 ELSE 0 END + CASE WHEN "may be heat-sterilize" THEN 1 ELSE 0 END + CASE WHEN "may be discard" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-use" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "processing-level/noncritical" IS TRUE THEN ',processing-level/noncritical' ELSE '' END || CASE WHEN "processing-level/semicritical-that-stands-heat" IS TRUE THEN ',processing-level/semicritical-that-stands-heat' ELSE '' END || CASE WHEN "processing-level/semicritical-that-does-not" IS TRUE THEN ',processing-level/semicritical-that-does-not' ELSE '' END || CASE WHEN "processing-level/critical" IS TRUE THEN ',processing-level/critical' ELSE '' END || CASE WHEN "processing-level/handpiece" IS TRUE THEN ',processing-level/handpiece' ELSE '' END || CASE WHEN "processing-level/cassette" IS TRUE THEN ',processing-level/cassette' ELSE '' END || CASE WHEN "processing-level/single-use" IS TRUE THEN ',processing-level/single-use' ELSE '' END || CASE WHEN "processing-level/needs-heat-and-does-not-stand-it" IS TRUE THEN ',processing-level/needs-heat-and-does-not-stand-it' ELSE '' END || CASE WHEN "processing-level/parts-on-the-lines" IS TRUE THEN ',processing-level/parts-on-the-lines' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "processing-level/noncritical" IS NULL THEN ',processing-level/noncritical' ELSE '' END || CASE WHEN "processing-level/semicritical-that-stands-heat" IS NULL THEN ',processing-level/semicritical-that-stands-heat' ELSE '' END || CASE WHEN "processing-level/semicritical-that-does-not" IS NULL THEN ',processing-level/semicritical-that-does-not' ELSE '' END || CASE WHEN "processing-level/critical" IS NULL THEN ',processing-level/critical' ELSE '' END || CASE WHEN "processing-level/handpiece" IS NULL THEN ',processing-level/handpiece' ELSE '' END || CASE WHEN "processing-level/cassette" IS NULL THEN ',processing-level/cassette' ELSE '' END || CASE WHEN "processing-level/single-use" IS NULL THEN ',processing-level/single-use' ELSE '' END || CASE WHEN "processing-level/needs-heat-and-does-not-stand-it" IS NULL THEN ',processing-level/needs-heat-and-does-not-stand-it' ELSE '' END || CASE WHEN "processing-level/parts-on-the-lines" IS NULL THEN ',processing-level/parts-on-the-lines' ELSE '' END) AS "open"
FROM "rules of processing-level" JOIN "possible of processing-level" ON "possible of processing-level"."situation id" = "rules of processing-level"."situation id";

-- What does this load need before it is washed?
CREATE VIEW "decide waiting" AS WITH "given" AS (
  SELECT "situation id", "load.wait", "load.soil", "load.kept-moist"
  FROM "facts"
),
"rules of waiting" AS (
  SELECT "given"."situation id",
    ("load.wait" <= 8e+0 AND "load.soil" IN ('light-soil')) AS "waiting/in-time",
    ("load.kept-moist" = TRUE AND "load.wait" <= 4.8e+2 AND "load.soil" IN ('light-soil')) AS "waiting/kept-moist-in-time",
    ("load.kept-moist" = FALSE AND "load.wait" > 8e+0) AS "waiting/dried-a-little",
    "load.soil" IN ('heavy-soil') AS "waiting/heavy-soil",
    ("load.kept-moist" = TRUE AND "load.wait" > 4.8e+2) AS "waiting/moist-too-long",
    ("load.kept-moist" = FALSE AND "load.wait" >= 6e+1) AS "waiting/dry-for-long",
    "load.soil" IN ('dried-soil') AS "waiting/dried-soil",
    "load.soil" IN ('stuck-material') AS "waiting/stuck-material"
  FROM "given"
),
"possible of waiting" AS (
  SELECT "situation id",
    (("waiting/in-time" IS NOT FALSE OR "waiting/kept-moist-in-time" IS NOT FALSE) AND "waiting/dried-a-little" IS NOT TRUE AND "waiting/heavy-soil" IS NOT TRUE AND "waiting/moist-too-long" IS NOT TRUE AND "waiting/dry-for-long" IS NOT TRUE AND "waiting/dried-soil" IS NOT TRUE AND "waiting/stuck-material" IS NOT TRUE) AS "may be wash",
    (("waiting/dried-a-little" IS NOT FALSE OR "waiting/heavy-soil" IS NOT FALSE OR "waiting/moist-too-long" IS NOT FALSE) AND "waiting/dry-for-long" IS NOT TRUE AND "waiting/dried-soil" IS NOT TRUE AND "waiting/stuck-material" IS NOT TRUE) AS "may be soak-first",
    (("waiting/dry-for-long" IS NOT FALSE OR "waiting/dried-soil" IS NOT FALSE OR ("waiting/in-time" IS NOT TRUE AND "waiting/kept-moist-in-time" IS NOT TRUE AND "waiting/dried-a-little" IS NOT TRUE AND "waiting/heavy-soil" IS NOT TRUE AND "waiting/moist-too-long" IS NOT TRUE AND "waiting/dry-for-long" IS NOT TRUE AND "waiting/dried-soil" IS NOT TRUE AND "waiting/stuck-material" IS NOT TRUE)) AND "waiting/stuck-material" IS NOT TRUE) AS "may be treat-as-dried",
    "waiting/stuck-material" IS NOT FALSE AS "may be remove-first"
  FROM "rules of waiting"
)
SELECT "rules of waiting"."situation id",
  CASE WHEN "may be remove-first" THEN 'remove-first' WHEN "may be treat-as-dried" THEN 'treat-as-dried' WHEN "may be soak-first" THEN 'soak-first' WHEN "may be wash" THEN 'wash' ELSE 'treat-as-dried' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be wash" THEN ',wash' ELSE '' END || CASE WHEN "may be soak-first" THEN ',soak-first' ELSE '' END || CASE WHEN "may be treat-as-dried" THEN ',treat-as-dried' ELSE '' END || CASE WHEN "may be remove-first" THEN ',remove-first' ELSE '' END) AS "possible",
  (CASE WHEN "may be wash" THEN 1 ELSE 0 END + CASE WHEN "may be soak-first" THEN 1 ELSE 0 END + CASE WHEN "may be treat-as-dried" THEN 1 ELSE 0 END + CASE WHEN "may be remove-first" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "waiting/in-time" IS TRUE THEN ',waiting/in-time' ELSE '' END || CASE WHEN "waiting/kept-moist-in-time" IS TRUE THEN ',waiting/kept-moist-in-time' ELSE '' END || CASE WHEN "waiting/dried-a-little" IS TRUE THEN ',waiting/dried-a-little' ELSE '' END || CASE WHEN "waiting/heavy-soil" IS TRUE THEN ',waiting/heavy-soil' ELSE '' END || CASE WHEN "waiting/moist-too-long" IS TRUE THEN ',waiting/moist-too-long' ELSE '' END || CASE WHEN "waiting/dry-for-long" IS TRUE THEN ',waiting/dry-for-long' ELSE '' END || CASE WHEN "waiting/dried-soil" IS TRUE THEN ',waiting/dried-soil' ELSE '' END || CASE WHEN "waiting/stuck-material" IS TRUE THEN ',waiting/stuck-material' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "waiting/in-time" IS NULL THEN ',waiting/in-time' ELSE '' END || CASE WHEN "waiting/kept-moist-in-time" IS NULL THEN ',waiting/kept-moist-in-time' ELSE '' END || CASE WHEN "waiting/dried-a-little" IS NULL THEN ',waiting/dried-a-little' ELSE '' END || CASE WHEN "waiting/heavy-soil" IS NULL THEN ',waiting/heavy-soil' ELSE '' END || CASE WHEN "waiting/moist-too-long" IS NULL THEN ',waiting/moist-too-long' ELSE '' END || CASE WHEN "waiting/dry-for-long" IS NULL THEN ',waiting/dry-for-long' ELSE '' END || CASE WHEN "waiting/dried-soil" IS NULL THEN ',waiting/dried-soil' ELSE '' END || CASE WHEN "waiting/stuck-material" IS NULL THEN ',waiting/stuck-material' ELSE '' END) AS "open"
FROM "rules of waiting" JOIN "possible of waiting" ON "possible of waiting"."situation id" = "rules of waiting"."situation id";

-- May this machine be used today?
CREATE VIEW "decide machine-use" AS WITH "given" AS (
  SELECT "situation id", "check.marked-out", "check.daily-done", "check.alarm", "check.leak", "check.electrics-sound", "check.supplies-in", "check.tests-passed", "check.service-late", "check.seal", "check.machine", "check.door-locks", "check.arms-turn", "check.service-late-by"
  FROM "facts"
),
"rules of machine-use" AS (
  SELECT "given"."situation id",
    ("check.marked-out" = FALSE AND "check.daily-done" = TRUE AND "check.alarm" = FALSE AND "check.leak" = FALSE AND "check.electrics-sound" = TRUE AND "check.supplies-in" = TRUE AND "check.tests-passed" = TRUE AND "check.service-late" = FALSE AND NOT ((("check.machine" IN ('washer', 'steam-sterilizer', 'dry-heat-sterilizer') AND "check.seal" IN ('seal-worn', 'seal-torn')) OR ("check.machine" IN ('washer', 'steam-sterilizer', 'dry-heat-sterilizer') AND "check.door-locks" = FALSE) OR ("check.machine" IN ('washer') AND "check.arms-turn" = FALSE)))) AS "machine-use/all-in-order",
    (("check.machine" IN ('washer', 'steam-sterilizer', 'dry-heat-sterilizer') AND "check.seal" IN ('seal-worn')) OR ("check.service-late" = TRUE AND "check.service-late-by" <= 3.04375e+1)) AS "machine-use/running-late",
    ("check.service-late" = TRUE AND "check.service-late-by" > 3.04375e+1) AS "machine-use/service-far-too-late",
    "check.marked-out" = TRUE AS "machine-use/marked-out",
    "check.daily-done" = FALSE AS "machine-use/daily-checks-open",
    ("check.alarm" = TRUE OR "check.leak" = TRUE OR ("check.machine" IN ('washer', 'steam-sterilizer', 'dry-heat-sterilizer') AND "check.seal" IN ('seal-torn')) OR ("check.machine" IN ('washer', 'steam-sterilizer', 'dry-heat-sterilizer') AND "check.door-locks" = FALSE) OR "check.electrics-sound" = FALSE OR ("check.machine" IN ('washer') AND "check.arms-turn" = FALSE) OR "check.tests-passed" = FALSE) AS "machine-use/fault-found",
    "check.supplies-in" = FALSE AS "machine-use/supplies-missing"
  FROM "given"
),
"possible of machine-use" AS (
  SELECT "situation id",
    ("machine-use/all-in-order" IS NOT FALSE AND "machine-use/running-late" IS NOT TRUE AND "machine-use/service-far-too-late" IS NOT TRUE AND "machine-use/marked-out" IS NOT TRUE AND "machine-use/daily-checks-open" IS NOT TRUE AND "machine-use/fault-found" IS NOT TRUE AND "machine-use/supplies-missing" IS NOT TRUE) AS "may be use",
    ("machine-use/running-late" IS NOT FALSE AND "machine-use/service-far-too-late" IS NOT TRUE AND "machine-use/marked-out" IS NOT TRUE AND "machine-use/daily-checks-open" IS NOT TRUE AND "machine-use/fault-found" IS NOT TRUE AND "machine-use/supplies-missing" IS NOT TRUE) AS "may be use-and-report",
    ("machine-use/service-far-too-late" IS NOT FALSE OR "machine-use/marked-out" IS NOT FALSE OR "machine-use/daily-checks-open" IS NOT FALSE OR "machine-use/fault-found" IS NOT FALSE OR "machine-use/supplies-missing" IS NOT FALSE OR ("machine-use/all-in-order" IS NOT TRUE AND "machine-use/running-late" IS NOT TRUE AND "machine-use/service-far-too-late" IS NOT TRUE AND "machine-use/marked-out" IS NOT TRUE AND "machine-use/daily-checks-open" IS NOT TRUE AND "machine-use/fault-found" IS NOT TRUE AND "machine-use/supplies-missing" IS NOT TRUE)) AS "may be do-not-use"
  FROM "rules of machine-use"
)
SELECT "rules of machine-use"."situation id",
  CASE WHEN "may be do-not-use" THEN 'do-not-use' WHEN "may be use-and-report" THEN 'use-and-report' WHEN "may be use" THEN 'use' ELSE 'do-not-use' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be use" THEN ',use' ELSE '' END || CASE WHEN "may be use-and-report" THEN ',use-and-report' ELSE '' END || CASE WHEN "may be do-not-use" THEN ',do-not-use' ELSE '' END) AS "possible",
  (CASE WHEN "may be use" THEN 1 ELSE 0 END + CASE WHEN "may be use-and-report" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-use" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "machine-use/all-in-order" IS TRUE THEN ',machine-use/all-in-order' ELSE '' END || CASE WHEN "machine-use/running-late" IS TRUE THEN ',machine-use/running-late' ELSE '' END || CASE WHEN "machine-use/service-far-too-late" IS TRUE THEN ',machine-use/service-far-too-late' ELSE '' END || CASE WHEN "machine-use/marked-out" IS TRUE THEN ',machine-use/marked-out' ELSE '' END || CASE WHEN "machine-use/daily-checks-open" IS TRUE THEN ',machine-use/daily-checks-open' ELSE '' END || CASE WHEN "machine-use/fault-found" IS TRUE THEN ',machine-use/fault-found' ELSE '' END || CASE WHEN "machine-use/supplies-missing" IS TRUE THEN ',machine-use/supplies-missing' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "machine-use/all-in-order" IS NULL THEN ',machine-use/all-in-order' ELSE '' END || CASE WHEN "machine-use/running-late" IS NULL THEN ',machine-use/running-late' ELSE '' END || CASE WHEN "machine-use/service-far-too-late" IS NULL THEN ',machine-use/service-far-too-late' ELSE '' END || CASE WHEN "machine-use/marked-out" IS NULL THEN ',machine-use/marked-out' ELSE '' END || CASE WHEN "machine-use/daily-checks-open" IS NULL THEN ',machine-use/daily-checks-open' ELSE '' END || CASE WHEN "machine-use/fault-found" IS NULL THEN ',machine-use/fault-found' ELSE '' END || CASE WHEN "machine-use/supplies-missing" IS NULL THEN ',machine-use/supplies-missing' ELSE '' END) AS "open"
FROM "rules of machine-use" JOIN "possible of machine-use" ON "possible of machine-use"."situation id" = "rules of machine-use"."situation id";

-- May this water be used for this purpose?
CREATE VIEW "decide water-use" AS WITH "given" AS (
  SELECT "situation id", "water.purpose", "water.kind", "water.hardness", "water.conductivity", "water.standing", "water.bacteria"
  FROM "facts"
),
"rules of water-use" AS (
  SELECT "given"."situation id",
    ("water.purpose" IN ('washing-water', 'ultrasonic-solution') AND "water.kind" NOT IN ('drained-water') AND "water.hardness" <= 1.5e+2) AS "water-use/soft-enough-to-wash",
    ("water.purpose" IN ('washing-water', 'ultrasonic-solution') AND "water.hardness" > 1.5e+2) AS "water-use/too-hard-to-wash",
    ("water.purpose" IN ('last-rinse') AND "water.kind" IN ('demineralized-water', 'distilled-water', 'sterile-water') AND "water.conductivity" <= 1e+1 AND ("water.purpose" IN ('last-rinse', 'sterilizer-feed') AND "water.standing" <= 7e+0)) AS "water-use/purified-last-rinse",
    ("water.purpose" IN ('last-rinse') AND "water.kind" IN ('demineralized-water', 'distilled-water') AND "water.conductivity" > 1e+1) AS "water-use/tired-resin-last-rinse",
    ("water.purpose" IN ('last-rinse') AND "water.kind" IN ('sterile-water') AND "water.conductivity" > 1e+1) AS "water-use/saline-last-rinse",
    ("water.purpose" IN ('last-rinse') AND "water.kind" IN ('tap-water', 'softened-water') AND "water.hardness" <= 5e+1) AS "water-use/soft-tap-last-rinse",
    ("water.purpose" IN ('last-rinse') AND "water.kind" IN ('tap-water', 'softened-water') AND "water.hardness" > 5e+1) AS "water-use/hard-tap-last-rinse",
    ("water.purpose" IN ('sterilizer-feed') AND "water.kind" IN ('demineralized-water', 'distilled-water') AND "water.conductivity" <= 1e+1 AND "water.hardness" <= 1e+0 AND ("water.purpose" IN ('last-rinse', 'sterilizer-feed') AND "water.standing" <= 7e+0)) AS "water-use/pure-enough-for-steam",
    ("water.purpose" IN ('sterilizer-feed') AND "water.kind" IN ('tap-water', 'softened-water')) AS "water-use/unpurified-for-steam",
    ("water.purpose" IN ('sterilizer-feed') AND "water.kind" IN ('sterile-water')) AS "water-use/sterile-bottle-for-steam",
    ("water.purpose" IN ('sterilizer-feed') AND "water.conductivity" > 1e+1) AS "water-use/too-salty-for-steam",
    ("water.purpose" IN ('sterilizer-feed') AND "water.hardness" > 1e+0) AS "water-use/too-hard-for-steam",
    ("water.purpose" IN ('last-rinse', 'sterilizer-feed') AND ("water.purpose" IN ('last-rinse', 'sterilizer-feed') AND "water.standing" > 7e+0)) AS "water-use/stood-too-long",
    "water.kind" IN ('drained-water') AS "water-use/drained-water",
    ("water.purpose" IN ('dental-unit-water') AND "water.kind" NOT IN ('drained-water') AND ("water.purpose" IN ('dental-unit-water') AND "water.bacteria" <= 5e+2)) AS "water-use/clean-dental-unit",
    ("water.purpose" IN ('dental-unit-water') AND ("water.purpose" IN ('dental-unit-water') AND "water.bacteria" > 5e+2)) AS "water-use/germs-in-dental-unit",
    ("water.purpose" IN ('washing-water', 'ultrasonic-solution') AND "water.conductivity" > 5e+2) AS "water-use/too-salty-to-wash"
  FROM "given"
),
"possible of water-use" AS (
  SELECT "situation id",
    (("water-use/soft-enough-to-wash" IS NOT FALSE OR "water-use/purified-last-rinse" IS NOT FALSE OR "water-use/pure-enough-for-steam" IS NOT FALSE OR "water-use/clean-dental-unit" IS NOT FALSE) AND "water-use/tired-resin-last-rinse" IS NOT TRUE AND "water-use/soft-tap-last-rinse" IS NOT TRUE AND "water-use/too-hard-to-wash" IS NOT TRUE AND "water-use/hard-tap-last-rinse" IS NOT TRUE AND "water-use/too-salty-to-wash" IS NOT TRUE AND "water-use/saline-last-rinse" IS NOT TRUE AND "water-use/unpurified-for-steam" IS NOT TRUE AND "water-use/sterile-bottle-for-steam" IS NOT TRUE AND "water-use/too-salty-for-steam" IS NOT TRUE AND "water-use/too-hard-for-steam" IS NOT TRUE AND "water-use/stood-too-long" IS NOT TRUE AND "water-use/drained-water" IS NOT TRUE AND "water-use/germs-in-dental-unit" IS NOT TRUE) AS "may be use",
    (("water-use/tired-resin-last-rinse" IS NOT FALSE OR "water-use/soft-tap-last-rinse" IS NOT FALSE) AND "water-use/too-hard-to-wash" IS NOT TRUE AND "water-use/hard-tap-last-rinse" IS NOT TRUE AND "water-use/too-salty-to-wash" IS NOT TRUE AND "water-use/saline-last-rinse" IS NOT TRUE AND "water-use/unpurified-for-steam" IS NOT TRUE AND "water-use/sterile-bottle-for-steam" IS NOT TRUE AND "water-use/too-salty-for-steam" IS NOT TRUE AND "water-use/too-hard-for-steam" IS NOT TRUE AND "water-use/stood-too-long" IS NOT TRUE AND "water-use/drained-water" IS NOT TRUE AND "water-use/germs-in-dental-unit" IS NOT TRUE) AS "may be use-and-watch",
    (("water-use/too-hard-to-wash" IS NOT FALSE OR "water-use/hard-tap-last-rinse" IS NOT FALSE OR "water-use/too-salty-to-wash" IS NOT FALSE OR ("water-use/soft-enough-to-wash" IS NOT TRUE AND "water-use/too-hard-to-wash" IS NOT TRUE AND "water-use/purified-last-rinse" IS NOT TRUE AND "water-use/tired-resin-last-rinse" IS NOT TRUE AND "water-use/saline-last-rinse" IS NOT TRUE AND "water-use/soft-tap-last-rinse" IS NOT TRUE AND "water-use/hard-tap-last-rinse" IS NOT TRUE AND "water-use/pure-enough-for-steam" IS NOT TRUE AND "water-use/unpurified-for-steam" IS NOT TRUE AND "water-use/sterile-bottle-for-steam" IS NOT TRUE AND "water-use/too-salty-for-steam" IS NOT TRUE AND "water-use/too-hard-for-steam" IS NOT TRUE AND "water-use/stood-too-long" IS NOT TRUE AND "water-use/drained-water" IS NOT TRUE AND "water-use/clean-dental-unit" IS NOT TRUE AND "water-use/germs-in-dental-unit" IS NOT TRUE AND "water-use/too-salty-to-wash" IS NOT TRUE)) AND "water-use/saline-last-rinse" IS NOT TRUE AND "water-use/unpurified-for-steam" IS NOT TRUE AND "water-use/sterile-bottle-for-steam" IS NOT TRUE AND "water-use/too-salty-for-steam" IS NOT TRUE AND "water-use/too-hard-for-steam" IS NOT TRUE AND "water-use/stood-too-long" IS NOT TRUE AND "water-use/drained-water" IS NOT TRUE AND "water-use/germs-in-dental-unit" IS NOT TRUE) AS "may be treat-first",
    ("water-use/saline-last-rinse" IS NOT FALSE OR "water-use/unpurified-for-steam" IS NOT FALSE OR "water-use/sterile-bottle-for-steam" IS NOT FALSE OR "water-use/too-salty-for-steam" IS NOT FALSE OR "water-use/too-hard-for-steam" IS NOT FALSE OR "water-use/stood-too-long" IS NOT FALSE OR "water-use/drained-water" IS NOT FALSE OR "water-use/germs-in-dental-unit" IS NOT FALSE) AS "may be do-not-use"
  FROM "rules of water-use"
)
SELECT "rules of water-use"."situation id",
  CASE WHEN "may be do-not-use" THEN 'do-not-use' WHEN "may be treat-first" THEN 'treat-first' WHEN "may be use-and-watch" THEN 'use-and-watch' WHEN "may be use" THEN 'use' ELSE 'treat-first' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be use" THEN ',use' ELSE '' END || CASE WHEN "may be use-and-watch" THEN ',use-and-watch' ELSE '' END || CASE WHEN "may be treat-first" THEN ',treat-first' ELSE '' END || CASE WHEN "may be do-not-use" THEN ',do-not-use' ELSE '' END) AS "possible",
  (CASE WHEN "may be use" THEN 1 ELSE 0 END + CASE WHEN "may be use-and-watch" THEN 1 ELSE 0 END + CASE WHEN "may be treat-first" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-use" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "water-use/soft-enough-to-wash" IS TRUE THEN ',water-use/soft-enough-to-wash' ELSE '' END || CASE WHEN "water-use/too-hard-to-wash" IS TRUE THEN ',water-use/too-hard-to-wash' ELSE '' END || CASE WHEN "water-use/purified-last-rinse" IS TRUE THEN ',water-use/purified-last-rinse' ELSE '' END || CASE WHEN "water-use/tired-resin-last-rinse" IS TRUE THEN ',water-use/tired-resin-last-rinse' ELSE '' END || CASE WHEN "water-use/saline-last-rinse" IS TRUE THEN ',water-use/saline-last-rinse' ELSE '' END || CASE WHEN "water-use/soft-tap-last-rinse" IS TRUE THEN ',water-use/soft-tap-last-rinse' ELSE '' END || CASE WHEN "water-use/hard-tap-last-rinse" IS TRUE THEN ',water-use/hard-tap-last-rinse' ELSE '' END || CASE WHEN "water-use/pure-enough-for-steam" IS TRUE THEN ',water-use/pure-enough-for-steam' ELSE '' END || CASE WHEN "water-use/unpurified-for-steam" IS TRUE THEN ',water-use/unpurified-for-steam' ELSE '' END || CASE WHEN "water-use/sterile-bottle-for-steam" IS TRUE THEN ',water-use/sterile-bottle-for-steam' ELSE '' END || CASE WHEN "water-use/too-salty-for-steam" IS TRUE THEN ',water-use/too-salty-for-steam' ELSE '' END || CASE WHEN "water-use/too-hard-for-steam" IS TRUE THEN ',water-use/too-hard-for-steam' ELSE '' END || CASE WHEN "water-use/stood-too-long" IS TRUE THEN ',water-use/stood-too-long' ELSE '' END || CASE WHEN "water-use/drained-water" IS TRUE THEN ',water-use/drained-water' ELSE '' END || CASE WHEN "water-use/clean-dental-unit" IS TRUE THEN ',water-use/clean-dental-unit' ELSE '' END || CASE WHEN "water-use/germs-in-dental-unit" IS TRUE THEN ',water-use/germs-in-dental-unit' ELSE '' END || CASE WHEN "water-use/too-salty-to-wash" IS TRUE THEN ',water-use/too-salty-to-wash' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "water-use/soft-enough-to-wash" IS NULL THEN ',water-use/soft-enough-to-wash' ELSE '' END || CASE WHEN "water-use/too-hard-to-wash" IS NULL THEN ',water-use/too-hard-to-wash' ELSE '' END || CASE WHEN "water-use/purified-last-rinse" IS NULL THEN ',water-use/purified-last-rinse' ELSE '' END || CASE WHEN "water-use/tired-resin-last-rinse" IS NULL THEN ',water-use/tired-resin-last-rinse' ELSE '' END || CASE WHEN "water-use/saline-last-rinse" IS NULL THEN ',water-use/saline-last-rinse' ELSE '' END || CASE WHEN "water-use/soft-tap-last-rinse" IS NULL THEN ',water-use/soft-tap-last-rinse' ELSE '' END || CASE WHEN "water-use/hard-tap-last-rinse" IS NULL THEN ',water-use/hard-tap-last-rinse' ELSE '' END || CASE WHEN "water-use/pure-enough-for-steam" IS NULL THEN ',water-use/pure-enough-for-steam' ELSE '' END || CASE WHEN "water-use/unpurified-for-steam" IS NULL THEN ',water-use/unpurified-for-steam' ELSE '' END || CASE WHEN "water-use/sterile-bottle-for-steam" IS NULL THEN ',water-use/sterile-bottle-for-steam' ELSE '' END || CASE WHEN "water-use/too-salty-for-steam" IS NULL THEN ',water-use/too-salty-for-steam' ELSE '' END || CASE WHEN "water-use/too-hard-for-steam" IS NULL THEN ',water-use/too-hard-for-steam' ELSE '' END || CASE WHEN "water-use/stood-too-long" IS NULL THEN ',water-use/stood-too-long' ELSE '' END || CASE WHEN "water-use/drained-water" IS NULL THEN ',water-use/drained-water' ELSE '' END || CASE WHEN "water-use/clean-dental-unit" IS NULL THEN ',water-use/clean-dental-unit' ELSE '' END || CASE WHEN "water-use/germs-in-dental-unit" IS NULL THEN ',water-use/germs-in-dental-unit' ELSE '' END || CASE WHEN "water-use/too-salty-to-wash" IS NULL THEN ',water-use/too-salty-to-wash' ELSE '' END) AS "open"
FROM "rules of water-use" JOIN "possible of water-use" ON "possible of water-use"."situation id" = "rules of water-use"."situation id";

-- May this instrument go through the automatic washer?
CREATE VIEW "decide washer-compatibility" AS WITH "given" AS (
  SELECT "situation id", "instrument.washer-by-maker", "instrument.materials", "instrument.single-use", "instrument.immersible", "instrument.kind", "instrument.lumen-width", "instrument.has-lumen", "instrument.lumen-ends", "instrument.heat-tolerant"
  FROM "facts"
),
"rules of washer-compatibility" AS (
  SELECT "given"."situation id",
    "instrument.washer-by-maker" IN ('allowed') AS "washer-compatibility/maker-allows",
    ("instrument.washer-by-maker" IN ('silent') AND (POSITION(',stainless-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-resistant-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0)) AS "washer-compatibility/silent-but-sturdy",
    "instrument.washer-by-maker" IN ('forbidden') AS "washer-compatibility/maker-forbids",
    "instrument.single-use" = TRUE AS "washer-compatibility/single-use",
    "instrument.immersible" = FALSE AS "washer-compatibility/not-under-water",
    (POSITION(',aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',anodised-aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',brass-or-copper,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/soft-metals",
    (POSITION(',carbon-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',chrome-plated,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/metals-that-rust",
    ("instrument.kind" IN ('bur') AND POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/carbide-burs",
    ("instrument.kind" IN ('bur', 'scaler-tip', 'root-canal-file') AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/burs-tips-and-files",
    ("instrument.kind" IN ('handpiece') AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/handpieces",
    ((("instrument.has-lumen" = TRUE AND "instrument.lumen-width" < 5e+0) OR ("instrument.has-lumen" = TRUE AND "instrument.lumen-ends" IN ('open-at-one-end'))) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/lumens",
    POSITION(',heat-sensitive-plastic,' IN ',' || "instrument.materials" || ',') > 0 AS "washer-compatibility/heat-sensitive-plastic",
    POSITION(',textile,' IN ',' || "instrument.materials" || ',') > 0 AS "washer-compatibility/cloth",
    (("instrument.kind" IN ('light-guide') OR (POSITION(',optical-fibre,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',silicone-or-rubber,' IN ',' || "instrument.materials" || ',') > 0)) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/light-guides-and-silicone",
    ((POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',nickel-titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',ceramic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',diamond-grit,' IN ',' || "instrument.materials" || ',') > 0) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/special-materials",
    ("instrument.heat-tolerant" = FALSE AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/does-not-stand-heat",
    ("instrument.has-lumen" = TRUE AND "instrument.washer-by-maker" IN ('silent', 'forbidden')) AS "washer-compatibility/lumen-without-instructions"
  FROM "given"
),
"possible of washer-compatibility" AS (
  SELECT "situation id",
    (("washer-compatibility/maker-allows" IS NOT FALSE OR "washer-compatibility/silent-but-sturdy" IS NOT FALSE) AND "washer-compatibility/light-guides-and-silicone" IS NOT TRUE AND "washer-compatibility/special-materials" IS NOT TRUE AND "washer-compatibility/does-not-stand-heat" IS NOT TRUE AND "washer-compatibility/lumen-without-instructions" IS NOT TRUE AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE) AS "may be permit",
    (("washer-compatibility/light-guides-and-silicone" IS NOT FALSE OR "washer-compatibility/special-materials" IS NOT FALSE OR "washer-compatibility/does-not-stand-heat" IS NOT FALSE OR "washer-compatibility/lumen-without-instructions" IS NOT FALSE OR ("washer-compatibility/maker-allows" IS NOT TRUE AND "washer-compatibility/silent-but-sturdy" IS NOT TRUE AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE AND "washer-compatibility/light-guides-and-silicone" IS NOT TRUE AND "washer-compatibility/special-materials" IS NOT TRUE AND "washer-compatibility/does-not-stand-heat" IS NOT TRUE AND "washer-compatibility/lumen-without-instructions" IS NOT TRUE)) AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE) AS "may be ask-maker",
    ("washer-compatibility/maker-forbids" IS NOT FALSE OR "washer-compatibility/single-use" IS NOT FALSE OR "washer-compatibility/not-under-water" IS NOT FALSE OR "washer-compatibility/soft-metals" IS NOT FALSE OR "washer-compatibility/metals-that-rust" IS NOT FALSE OR "washer-compatibility/carbide-burs" IS NOT FALSE OR "washer-compatibility/burs-tips-and-files" IS NOT FALSE OR "washer-compatibility/handpieces" IS NOT FALSE OR "washer-compatibility/lumens" IS NOT FALSE OR "washer-compatibility/heat-sensitive-plastic" IS NOT FALSE OR "washer-compatibility/cloth" IS NOT FALSE) AS "may be exclude"
  FROM "rules of washer-compatibility"
)
SELECT "rules of washer-compatibility"."situation id",
  CASE WHEN "may be exclude" THEN 'exclude' WHEN "may be ask-maker" THEN 'ask-maker' WHEN "may be permit" THEN 'permit' ELSE 'ask-maker' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be permit" THEN ',permit' ELSE '' END || CASE WHEN "may be ask-maker" THEN ',ask-maker' ELSE '' END || CASE WHEN "may be exclude" THEN ',exclude' ELSE '' END) AS "possible",
  (CASE WHEN "may be permit" THEN 1 ELSE 0 END + CASE WHEN "may be ask-maker" THEN 1 ELSE 0 END + CASE WHEN "may be exclude" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "washer-compatibility/maker-allows" IS TRUE THEN ',washer-compatibility/maker-allows' ELSE '' END || CASE WHEN "washer-compatibility/silent-but-sturdy" IS TRUE THEN ',washer-compatibility/silent-but-sturdy' ELSE '' END || CASE WHEN "washer-compatibility/maker-forbids" IS TRUE THEN ',washer-compatibility/maker-forbids' ELSE '' END || CASE WHEN "washer-compatibility/single-use" IS TRUE THEN ',washer-compatibility/single-use' ELSE '' END || CASE WHEN "washer-compatibility/not-under-water" IS TRUE THEN ',washer-compatibility/not-under-water' ELSE '' END || CASE WHEN "washer-compatibility/soft-metals" IS TRUE THEN ',washer-compatibility/soft-metals' ELSE '' END || CASE WHEN "washer-compatibility/metals-that-rust" IS TRUE THEN ',washer-compatibility/metals-that-rust' ELSE '' END || CASE WHEN "washer-compatibility/carbide-burs" IS TRUE THEN ',washer-compatibility/carbide-burs' ELSE '' END || CASE WHEN "washer-compatibility/burs-tips-and-files" IS TRUE THEN ',washer-compatibility/burs-tips-and-files' ELSE '' END || CASE WHEN "washer-compatibility/handpieces" IS TRUE THEN ',washer-compatibility/handpieces' ELSE '' END || CASE WHEN "washer-compatibility/lumens" IS TRUE THEN ',washer-compatibility/lumens' ELSE '' END || CASE WHEN "washer-compatibility/heat-sensitive-plastic" IS TRUE THEN ',washer-compatibility/heat-sensitive-plastic' ELSE '' END || CASE WHEN "washer-compatibility/cloth" IS TRUE THEN ',washer-compatibility/cloth' ELSE '' END || CASE WHEN "washer-compatibility/light-guides-and-silicone" IS TRUE THEN ',washer-compatibility/light-guides-and-silicone' ELSE '' END || CASE WHEN "washer-compatibility/special-materials" IS TRUE THEN ',washer-compatibility/special-materials' ELSE '' END || CASE WHEN "washer-compatibility/does-not-stand-heat" IS TRUE THEN ',washer-compatibility/does-not-stand-heat' ELSE '' END || CASE WHEN "washer-compatibility/lumen-without-instructions" IS TRUE THEN ',washer-compatibility/lumen-without-instructions' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "washer-compatibility/maker-allows" IS NULL THEN ',washer-compatibility/maker-allows' ELSE '' END || CASE WHEN "washer-compatibility/silent-but-sturdy" IS NULL THEN ',washer-compatibility/silent-but-sturdy' ELSE '' END || CASE WHEN "washer-compatibility/maker-forbids" IS NULL THEN ',washer-compatibility/maker-forbids' ELSE '' END || CASE WHEN "washer-compatibility/single-use" IS NULL THEN ',washer-compatibility/single-use' ELSE '' END || CASE WHEN "washer-compatibility/not-under-water" IS NULL THEN ',washer-compatibility/not-under-water' ELSE '' END || CASE WHEN "washer-compatibility/soft-metals" IS NULL THEN ',washer-compatibility/soft-metals' ELSE '' END || CASE WHEN "washer-compatibility/metals-that-rust" IS NULL THEN ',washer-compatibility/metals-that-rust' ELSE '' END || CASE WHEN "washer-compatibility/carbide-burs" IS NULL THEN ',washer-compatibility/carbide-burs' ELSE '' END || CASE WHEN "washer-compatibility/burs-tips-and-files" IS NULL THEN ',washer-compatibility/burs-tips-and-files' ELSE '' END || CASE WHEN "washer-compatibility/handpieces" IS NULL THEN ',washer-compatibility/handpieces' ELSE '' END || CASE WHEN "washer-compatibility/lumens" IS NULL THEN ',washer-compatibility/lumens' ELSE '' END || CASE WHEN "washer-compatibility/heat-sensitive-plastic" IS NULL THEN ',washer-compatibility/heat-sensitive-plastic' ELSE '' END || CASE WHEN "washer-compatibility/cloth" IS NULL THEN ',washer-compatibility/cloth' ELSE '' END || CASE WHEN "washer-compatibility/light-guides-and-silicone" IS NULL THEN ',washer-compatibility/light-guides-and-silicone' ELSE '' END || CASE WHEN "washer-compatibility/special-materials" IS NULL THEN ',washer-compatibility/special-materials' ELSE '' END || CASE WHEN "washer-compatibility/does-not-stand-heat" IS NULL THEN ',washer-compatibility/does-not-stand-heat' ELSE '' END || CASE WHEN "washer-compatibility/lumen-without-instructions" IS NULL THEN ',washer-compatibility/lumen-without-instructions' ELSE '' END) AS "open"
FROM "rules of washer-compatibility" JOIN "possible of washer-compatibility" ON "possible of washer-compatibility"."situation id" = "rules of washer-compatibility"."situation id";

-- May this instrument go into the ultrasonic bath?
CREATE VIEW "decide ultrasonic-compatibility" AS WITH "given" AS (
  SELECT "situation id", "instrument.ultrasonic-by-maker", "instrument.materials", "instrument.single-use", "instrument.immersible", "instrument.kind", "instrument.lumen-ends", "instrument.has-lumen"
  FROM "facts"
),
"rules of ultrasonic-compatibility" AS (
  SELECT "given"."situation id",
    "instrument.ultrasonic-by-maker" IN ('allowed') AS "ultrasonic-compatibility/maker-allows",
    ("instrument.ultrasonic-by-maker" IN ('silent') AND (POSITION(',stainless-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',nickel-titanium,' IN ',' || "instrument.materials" || ',') > 0)) AS "ultrasonic-compatibility/silent-but-hard",
    "instrument.ultrasonic-by-maker" IN ('forbidden') AS "ultrasonic-compatibility/maker-forbids",
    "instrument.single-use" = TRUE AS "ultrasonic-compatibility/single-use",
    "instrument.immersible" = FALSE AS "ultrasonic-compatibility/not-under-water",
    ("instrument.kind" IN ('handpiece') AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/handpieces",
    ("instrument.kind" IN ('light-guide') OR (POSITION(',optical-fibre,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',chrome-plated,' IN ',' || "instrument.materials" || ',') > 0)) AS "ultrasonic-compatibility/fine-layers",
    (POSITION(',silicone-or-rubber,' IN ',' || "instrument.materials" || ',') > 0 AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/silicone",
    POSITION(',textile,' IN ',' || "instrument.materials" || ',') > 0 AS "ultrasonic-compatibility/cloth",
    ((POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',ceramic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-resistant-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-sensitive-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',anodised-aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',brass-or-copper,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',carbon-steel,' IN ',' || "instrument.materials" || ',') > 0) AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/brittle-or-soft",
    (("instrument.has-lumen" = TRUE AND "instrument.lumen-ends" IN ('open-at-one-end')) AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/closed-lumen",
    ("instrument.kind" IN ('hand-instrument') AND POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0) AS "ultrasonic-compatibility/our-mirrors-stay-out"
  FROM "given"
),
"possible of ultrasonic-compatibility" AS (
  SELECT "situation id",
    (("ultrasonic-compatibility/maker-allows" IS NOT FALSE OR "ultrasonic-compatibility/silent-but-hard" IS NOT FALSE) AND "ultrasonic-compatibility/brittle-or-soft" IS NOT TRUE AND "ultrasonic-compatibility/closed-lumen" IS NOT TRUE AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE) AS "may be permit",
    (("ultrasonic-compatibility/brittle-or-soft" IS NOT FALSE OR "ultrasonic-compatibility/closed-lumen" IS NOT FALSE OR ("ultrasonic-compatibility/maker-allows" IS NOT TRUE AND "ultrasonic-compatibility/silent-but-hard" IS NOT TRUE AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/brittle-or-soft" IS NOT TRUE AND "ultrasonic-compatibility/closed-lumen" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE)) AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE) AS "may be ask-maker",
    ("ultrasonic-compatibility/maker-forbids" IS NOT FALSE OR "ultrasonic-compatibility/single-use" IS NOT FALSE OR "ultrasonic-compatibility/not-under-water" IS NOT FALSE OR "ultrasonic-compatibility/handpieces" IS NOT FALSE OR "ultrasonic-compatibility/fine-layers" IS NOT FALSE OR "ultrasonic-compatibility/silicone" IS NOT FALSE OR "ultrasonic-compatibility/cloth" IS NOT FALSE OR "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT FALSE) AS "may be exclude"
  FROM "rules of ultrasonic-compatibility"
)
SELECT "rules of ultrasonic-compatibility"."situation id",
  CASE WHEN "may be exclude" THEN 'exclude' WHEN "may be ask-maker" THEN 'ask-maker' WHEN "may be permit" THEN 'permit' ELSE 'ask-maker' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be permit" THEN ',permit' ELSE '' END || CASE WHEN "may be ask-maker" THEN ',ask-maker' ELSE '' END || CASE WHEN "may be exclude" THEN ',exclude' ELSE '' END) AS "possible",
  (CASE WHEN "may be permit" THEN 1 ELSE 0 END + CASE WHEN "may be ask-maker" THEN 1 ELSE 0 END + CASE WHEN "may be exclude" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "ultrasonic-compatibility/maker-allows" IS TRUE THEN ',ultrasonic-compatibility/maker-allows' ELSE '' END || CASE WHEN "ultrasonic-compatibility/silent-but-hard" IS TRUE THEN ',ultrasonic-compatibility/silent-but-hard' ELSE '' END || CASE WHEN "ultrasonic-compatibility/maker-forbids" IS TRUE THEN ',ultrasonic-compatibility/maker-forbids' ELSE '' END || CASE WHEN "ultrasonic-compatibility/single-use" IS TRUE THEN ',ultrasonic-compatibility/single-use' ELSE '' END || CASE WHEN "ultrasonic-compatibility/not-under-water" IS TRUE THEN ',ultrasonic-compatibility/not-under-water' ELSE '' END || CASE WHEN "ultrasonic-compatibility/handpieces" IS TRUE THEN ',ultrasonic-compatibility/handpieces' ELSE '' END || CASE WHEN "ultrasonic-compatibility/fine-layers" IS TRUE THEN ',ultrasonic-compatibility/fine-layers' ELSE '' END || CASE WHEN "ultrasonic-compatibility/silicone" IS TRUE THEN ',ultrasonic-compatibility/silicone' ELSE '' END || CASE WHEN "ultrasonic-compatibility/cloth" IS TRUE THEN ',ultrasonic-compatibility/cloth' ELSE '' END || CASE WHEN "ultrasonic-compatibility/brittle-or-soft" IS TRUE THEN ',ultrasonic-compatibility/brittle-or-soft' ELSE '' END || CASE WHEN "ultrasonic-compatibility/closed-lumen" IS TRUE THEN ',ultrasonic-compatibility/closed-lumen' ELSE '' END || CASE WHEN "ultrasonic-compatibility/our-mirrors-stay-out" IS TRUE THEN ',ultrasonic-compatibility/our-mirrors-stay-out' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "ultrasonic-compatibility/maker-allows" IS NULL THEN ',ultrasonic-compatibility/maker-allows' ELSE '' END || CASE WHEN "ultrasonic-compatibility/silent-but-hard" IS NULL THEN ',ultrasonic-compatibility/silent-but-hard' ELSE '' END || CASE WHEN "ultrasonic-compatibility/maker-forbids" IS NULL THEN ',ultrasonic-compatibility/maker-forbids' ELSE '' END || CASE WHEN "ultrasonic-compatibility/single-use" IS NULL THEN ',ultrasonic-compatibility/single-use' ELSE '' END || CASE WHEN "ultrasonic-compatibility/not-under-water" IS NULL THEN ',ultrasonic-compatibility/not-under-water' ELSE '' END || CASE WHEN "ultrasonic-compatibility/handpieces" IS NULL THEN ',ultrasonic-compatibility/handpieces' ELSE '' END || CASE WHEN "ultrasonic-compatibility/fine-layers" IS NULL THEN ',ultrasonic-compatibility/fine-layers' ELSE '' END || CASE WHEN "ultrasonic-compatibility/silicone" IS NULL THEN ',ultrasonic-compatibility/silicone' ELSE '' END || CASE WHEN "ultrasonic-compatibility/cloth" IS NULL THEN ',ultrasonic-compatibility/cloth' ELSE '' END || CASE WHEN "ultrasonic-compatibility/brittle-or-soft" IS NULL THEN ',ultrasonic-compatibility/brittle-or-soft' ELSE '' END || CASE WHEN "ultrasonic-compatibility/closed-lumen" IS NULL THEN ',ultrasonic-compatibility/closed-lumen' ELSE '' END || CASE WHEN "ultrasonic-compatibility/our-mirrors-stay-out" IS NULL THEN ',ultrasonic-compatibility/our-mirrors-stay-out' ELSE '' END) AS "open"
FROM "rules of ultrasonic-compatibility" JOIN "possible of ultrasonic-compatibility" ON "possible of ultrasonic-compatibility"."situation id" = "rules of ultrasonic-compatibility"."situation id";

-- Which way is this instrument cleaned?
CREATE VIEW "decide cleaning-route" AS WITH "given" AS (
  SELECT "situation id", COALESCE("clinic.machines", 'heat-sealer,steam-sterilizer,ultrasonic-bath,washer') AS "clinic.machines", "instrument.single-use", "answer.washer-compatibility", "answer.ultrasonic-compatibility", "instrument.washer-by-maker", "instrument.materials", "instrument.immersible", "instrument.kind", "instrument.lumen-width", "instrument.has-lumen", "instrument.lumen-ends", "instrument.heat-tolerant", "instrument.ultrasonic-by-maker"
  FROM "facts"
),
"rules of washer-compatibility" AS (
  SELECT "given"."situation id",
    "instrument.washer-by-maker" IN ('allowed') AS "washer-compatibility/maker-allows",
    ("instrument.washer-by-maker" IN ('silent') AND (POSITION(',stainless-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-resistant-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0)) AS "washer-compatibility/silent-but-sturdy",
    "instrument.washer-by-maker" IN ('forbidden') AS "washer-compatibility/maker-forbids",
    "instrument.single-use" = TRUE AS "washer-compatibility/single-use",
    "instrument.immersible" = FALSE AS "washer-compatibility/not-under-water",
    (POSITION(',aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',anodised-aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',brass-or-copper,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/soft-metals",
    (POSITION(',carbon-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',chrome-plated,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/metals-that-rust",
    ("instrument.kind" IN ('bur') AND POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0) AS "washer-compatibility/carbide-burs",
    ("instrument.kind" IN ('bur', 'scaler-tip', 'root-canal-file') AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/burs-tips-and-files",
    ("instrument.kind" IN ('handpiece') AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/handpieces",
    ((("instrument.has-lumen" = TRUE AND "instrument.lumen-width" < 5e+0) OR ("instrument.has-lumen" = TRUE AND "instrument.lumen-ends" IN ('open-at-one-end'))) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/lumens",
    POSITION(',heat-sensitive-plastic,' IN ',' || "instrument.materials" || ',') > 0 AS "washer-compatibility/heat-sensitive-plastic",
    POSITION(',textile,' IN ',' || "instrument.materials" || ',') > 0 AS "washer-compatibility/cloth",
    (("instrument.kind" IN ('light-guide') OR (POSITION(',optical-fibre,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',silicone-or-rubber,' IN ',' || "instrument.materials" || ',') > 0)) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/light-guides-and-silicone",
    ((POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',nickel-titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',ceramic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',diamond-grit,' IN ',' || "instrument.materials" || ',') > 0) AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/special-materials",
    ("instrument.heat-tolerant" = FALSE AND "instrument.washer-by-maker" IN ('silent')) AS "washer-compatibility/does-not-stand-heat",
    ("instrument.has-lumen" = TRUE AND "instrument.washer-by-maker" IN ('silent', 'forbidden')) AS "washer-compatibility/lumen-without-instructions"
  FROM "given"
),
"possible of washer-compatibility" AS (
  SELECT "situation id",
    (("washer-compatibility/maker-allows" IS NOT FALSE OR "washer-compatibility/silent-but-sturdy" IS NOT FALSE) AND "washer-compatibility/light-guides-and-silicone" IS NOT TRUE AND "washer-compatibility/special-materials" IS NOT TRUE AND "washer-compatibility/does-not-stand-heat" IS NOT TRUE AND "washer-compatibility/lumen-without-instructions" IS NOT TRUE AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE) AS "may be permit",
    (("washer-compatibility/light-guides-and-silicone" IS NOT FALSE OR "washer-compatibility/special-materials" IS NOT FALSE OR "washer-compatibility/does-not-stand-heat" IS NOT FALSE OR "washer-compatibility/lumen-without-instructions" IS NOT FALSE OR ("washer-compatibility/maker-allows" IS NOT TRUE AND "washer-compatibility/silent-but-sturdy" IS NOT TRUE AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE AND "washer-compatibility/light-guides-and-silicone" IS NOT TRUE AND "washer-compatibility/special-materials" IS NOT TRUE AND "washer-compatibility/does-not-stand-heat" IS NOT TRUE AND "washer-compatibility/lumen-without-instructions" IS NOT TRUE)) AND "washer-compatibility/maker-forbids" IS NOT TRUE AND "washer-compatibility/single-use" IS NOT TRUE AND "washer-compatibility/not-under-water" IS NOT TRUE AND "washer-compatibility/soft-metals" IS NOT TRUE AND "washer-compatibility/metals-that-rust" IS NOT TRUE AND "washer-compatibility/carbide-burs" IS NOT TRUE AND "washer-compatibility/burs-tips-and-files" IS NOT TRUE AND "washer-compatibility/handpieces" IS NOT TRUE AND "washer-compatibility/lumens" IS NOT TRUE AND "washer-compatibility/heat-sensitive-plastic" IS NOT TRUE AND "washer-compatibility/cloth" IS NOT TRUE) AS "may be ask-maker",
    ("washer-compatibility/maker-forbids" IS NOT FALSE OR "washer-compatibility/single-use" IS NOT FALSE OR "washer-compatibility/not-under-water" IS NOT FALSE OR "washer-compatibility/soft-metals" IS NOT FALSE OR "washer-compatibility/metals-that-rust" IS NOT FALSE OR "washer-compatibility/carbide-burs" IS NOT FALSE OR "washer-compatibility/burs-tips-and-files" IS NOT FALSE OR "washer-compatibility/handpieces" IS NOT FALSE OR "washer-compatibility/lumens" IS NOT FALSE OR "washer-compatibility/heat-sensitive-plastic" IS NOT FALSE OR "washer-compatibility/cloth" IS NOT FALSE) AS "may be exclude"
  FROM "rules of washer-compatibility"
),
"rules of ultrasonic-compatibility" AS (
  SELECT "given"."situation id",
    "instrument.ultrasonic-by-maker" IN ('allowed') AS "ultrasonic-compatibility/maker-allows",
    ("instrument.ultrasonic-by-maker" IN ('silent') AND (POSITION(',stainless-steel,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',tungsten-carbide,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',titanium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',nickel-titanium,' IN ',' || "instrument.materials" || ',') > 0)) AS "ultrasonic-compatibility/silent-but-hard",
    "instrument.ultrasonic-by-maker" IN ('forbidden') AS "ultrasonic-compatibility/maker-forbids",
    "instrument.single-use" = TRUE AS "ultrasonic-compatibility/single-use",
    "instrument.immersible" = FALSE AS "ultrasonic-compatibility/not-under-water",
    ("instrument.kind" IN ('handpiece') AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/handpieces",
    ("instrument.kind" IN ('light-guide') OR (POSITION(',optical-fibre,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',chrome-plated,' IN ',' || "instrument.materials" || ',') > 0)) AS "ultrasonic-compatibility/fine-layers",
    (POSITION(',silicone-or-rubber,' IN ',' || "instrument.materials" || ',') > 0 AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/silicone",
    POSITION(',textile,' IN ',' || "instrument.materials" || ',') > 0 AS "ultrasonic-compatibility/cloth",
    ((POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',ceramic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-resistant-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-sensitive-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',anodised-aluminium,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',brass-or-copper,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',carbon-steel,' IN ',' || "instrument.materials" || ',') > 0) AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/brittle-or-soft",
    (("instrument.has-lumen" = TRUE AND "instrument.lumen-ends" IN ('open-at-one-end')) AND "instrument.ultrasonic-by-maker" IN ('silent')) AS "ultrasonic-compatibility/closed-lumen",
    ("instrument.kind" IN ('hand-instrument') AND POSITION(',glass,' IN ',' || "instrument.materials" || ',') > 0) AS "ultrasonic-compatibility/our-mirrors-stay-out"
  FROM "given"
),
"possible of ultrasonic-compatibility" AS (
  SELECT "situation id",
    (("ultrasonic-compatibility/maker-allows" IS NOT FALSE OR "ultrasonic-compatibility/silent-but-hard" IS NOT FALSE) AND "ultrasonic-compatibility/brittle-or-soft" IS NOT TRUE AND "ultrasonic-compatibility/closed-lumen" IS NOT TRUE AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE) AS "may be permit",
    (("ultrasonic-compatibility/brittle-or-soft" IS NOT FALSE OR "ultrasonic-compatibility/closed-lumen" IS NOT FALSE OR ("ultrasonic-compatibility/maker-allows" IS NOT TRUE AND "ultrasonic-compatibility/silent-but-hard" IS NOT TRUE AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/brittle-or-soft" IS NOT TRUE AND "ultrasonic-compatibility/closed-lumen" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE)) AND "ultrasonic-compatibility/maker-forbids" IS NOT TRUE AND "ultrasonic-compatibility/single-use" IS NOT TRUE AND "ultrasonic-compatibility/not-under-water" IS NOT TRUE AND "ultrasonic-compatibility/handpieces" IS NOT TRUE AND "ultrasonic-compatibility/fine-layers" IS NOT TRUE AND "ultrasonic-compatibility/silicone" IS NOT TRUE AND "ultrasonic-compatibility/cloth" IS NOT TRUE AND "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT TRUE) AS "may be ask-maker",
    ("ultrasonic-compatibility/maker-forbids" IS NOT FALSE OR "ultrasonic-compatibility/single-use" IS NOT FALSE OR "ultrasonic-compatibility/not-under-water" IS NOT FALSE OR "ultrasonic-compatibility/handpieces" IS NOT FALSE OR "ultrasonic-compatibility/fine-layers" IS NOT FALSE OR "ultrasonic-compatibility/silicone" IS NOT FALSE OR "ultrasonic-compatibility/cloth" IS NOT FALSE OR "ultrasonic-compatibility/our-mirrors-stay-out" IS NOT FALSE) AS "may be exclude"
  FROM "rules of ultrasonic-compatibility"
),
"stated answer.washer-compatibility" AS (
  SELECT "given"."situation id",
    CASE WHEN (("given"."answer.washer-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.washer-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.washer-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.washer-compatibility" = 'permit' ELSE "may be permit" END AS "may be permit",
    CASE WHEN (("given"."answer.washer-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.washer-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.washer-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.washer-compatibility" = 'ask-maker' ELSE "may be ask-maker" END AS "may be ask-maker",
    CASE WHEN (("given"."answer.washer-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.washer-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.washer-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.washer-compatibility" = 'exclude' ELSE "may be exclude" END AS "may be exclude"
  FROM "given" JOIN "possible of washer-compatibility" ON "possible of washer-compatibility"."situation id" = "given"."situation id"
),
"stated answer.ultrasonic-compatibility" AS (
  SELECT "given"."situation id",
    CASE WHEN (("given"."answer.ultrasonic-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.ultrasonic-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.ultrasonic-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.ultrasonic-compatibility" = 'permit' ELSE "may be permit" END AS "may be permit",
    CASE WHEN (("given"."answer.ultrasonic-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.ultrasonic-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.ultrasonic-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.ultrasonic-compatibility" = 'ask-maker' ELSE "may be ask-maker" END AS "may be ask-maker",
    CASE WHEN (("given"."answer.ultrasonic-compatibility" = 'permit' AND "may be permit") OR ("given"."answer.ultrasonic-compatibility" = 'ask-maker' AND "may be ask-maker") OR ("given"."answer.ultrasonic-compatibility" = 'exclude' AND "may be exclude")) THEN "given"."answer.ultrasonic-compatibility" = 'exclude' ELSE "may be exclude" END AS "may be exclude"
  FROM "given" JOIN "possible of ultrasonic-compatibility" ON "possible of ultrasonic-compatibility"."situation id" = "given"."situation id"
),
"rules of cleaning-route" AS (
  SELECT "given"."situation id",
    (POSITION(',washer,' IN ',' || "clinic.machines" || ',') > 0 AND CASE WHEN NOT ("answer.washer-compatibility may be ask-maker" OR "answer.washer-compatibility may be exclude") THEN TRUE WHEN NOT "answer.washer-compatibility may be permit" THEN FALSE END) AS "cleaning-route/washer-takes-it",
    ((NOT POSITION(',washer,' IN ',' || "clinic.machines" || ',') > 0 OR CASE WHEN NOT ("answer.washer-compatibility may be permit" OR "answer.washer-compatibility may be ask-maker") THEN TRUE WHEN NOT "answer.washer-compatibility may be exclude" THEN FALSE END) AND POSITION(',ultrasonic-bath,' IN ',' || "clinic.machines" || ',') > 0 AND CASE WHEN NOT ("answer.ultrasonic-compatibility may be ask-maker" OR "answer.ultrasonic-compatibility may be exclude") THEN TRUE WHEN NOT "answer.ultrasonic-compatibility may be permit" THEN FALSE END) AS "cleaning-route/bath-takes-it",
    ((NOT POSITION(',washer,' IN ',' || "clinic.machines" || ',') > 0 OR CASE WHEN NOT ("answer.washer-compatibility may be permit" OR "answer.washer-compatibility may be ask-maker") THEN TRUE WHEN NOT "answer.washer-compatibility may be exclude" THEN FALSE END) AND (NOT POSITION(',ultrasonic-bath,' IN ',' || "clinic.machines" || ',') > 0 OR CASE WHEN NOT ("answer.ultrasonic-compatibility may be permit" OR "answer.ultrasonic-compatibility may be ask-maker") THEN TRUE WHEN NOT "answer.ultrasonic-compatibility may be exclude" THEN FALSE END)) AS "cleaning-route/only-by-hand",
    (POSITION(',washer,' IN ',' || "clinic.machines" || ',') > 0 AND CASE WHEN NOT ("answer.washer-compatibility may be permit" OR "answer.washer-compatibility may be exclude") THEN TRUE WHEN NOT "answer.washer-compatibility may be ask-maker" THEN FALSE END) AS "cleaning-route/washer-answer-missing",
    ((NOT POSITION(',washer,' IN ',' || "clinic.machines" || ',') > 0 OR CASE WHEN NOT ("answer.washer-compatibility may be permit" OR "answer.washer-compatibility may be ask-maker") THEN TRUE WHEN NOT "answer.washer-compatibility may be exclude" THEN FALSE END) AND POSITION(',ultrasonic-bath,' IN ',' || "clinic.machines" || ',') > 0 AND CASE WHEN NOT ("answer.ultrasonic-compatibility may be permit" OR "answer.ultrasonic-compatibility may be exclude") THEN TRUE WHEN NOT "answer.ultrasonic-compatibility may be ask-maker" THEN FALSE END) AS "cleaning-route/bath-answer-missing",
    "instrument.single-use" = TRUE AS "cleaning-route/single-use"
  FROM "given" JOIN (SELECT "situation id" AS "key answer.washer-compatibility", "may be permit" AS "answer.washer-compatibility may be permit", "may be ask-maker" AS "answer.washer-compatibility may be ask-maker", "may be exclude" AS "answer.washer-compatibility may be exclude" FROM "stated answer.washer-compatibility") AS "answer answer.washer-compatibility" ON "answer answer.washer-compatibility"."key answer.washer-compatibility" = "given"."situation id" JOIN (SELECT "situation id" AS "key answer.ultrasonic-compatibility", "may be permit" AS "answer.ultrasonic-compatibility may be permit", "may be ask-maker" AS "answer.ultrasonic-compatibility may be ask-maker", "may be exclude" AS "answer.ultrasonic-compatibility may be exclude" FROM "stated answer.ultrasonic-compatibility") AS "answer answer.ultrasonic-compatibility" ON "answer answer.ultrasonic-compatibility"."key answer.ultrasonic-compatibility" = "given"."situation id"
),
"possible of cleaning-route" AS (
  SELECT "situation id",
    ("cleaning-route/washer-takes-it" IS NOT FALSE AND "cleaning-route/bath-takes-it" IS NOT TRUE AND "cleaning-route/only-by-hand" IS NOT TRUE AND "cleaning-route/washer-answer-missing" IS NOT TRUE AND "cleaning-route/bath-answer-missing" IS NOT TRUE AND "cleaning-route/single-use" IS NOT TRUE) AS "may be washer",
    ("cleaning-route/bath-takes-it" IS NOT FALSE AND "cleaning-route/only-by-hand" IS NOT TRUE AND "cleaning-route/washer-answer-missing" IS NOT TRUE AND "cleaning-route/bath-answer-missing" IS NOT TRUE AND "cleaning-route/single-use" IS NOT TRUE) AS "may be ultrasonic-bath",
    ("cleaning-route/only-by-hand" IS NOT FALSE AND "cleaning-route/washer-answer-missing" IS NOT TRUE AND "cleaning-route/bath-answer-missing" IS NOT TRUE AND "cleaning-route/single-use" IS NOT TRUE) AS "may be by-hand",
    (("cleaning-route/washer-answer-missing" IS NOT FALSE OR "cleaning-route/bath-answer-missing" IS NOT FALSE OR ("cleaning-route/washer-takes-it" IS NOT TRUE AND "cleaning-route/bath-takes-it" IS NOT TRUE AND "cleaning-route/only-by-hand" IS NOT TRUE AND "cleaning-route/washer-answer-missing" IS NOT TRUE AND "cleaning-route/bath-answer-missing" IS NOT TRUE AND "cleaning-route/single-use" IS NOT TRUE)) AND "cleaning-route/single-use" IS NOT TRUE) AS "may be ask-lead",
    "cleaning-route/single-use" IS NOT FALSE AS "may be discard"
  FROM "rules of cleaning-route"
)
SELECT "rules of cleaning-route"."situation id",
  CASE WHEN "may be discard" THEN 'discard' WHEN "may be ask-lead" THEN 'ask-lead' WHEN "may be by-hand" THEN 'by-hand' WHEN "may be ultrasonic-bath" THEN 'ultrasonic-bath' WHEN "may be washer" THEN 'washer' ELSE 'ask-lead' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be washer" THEN ',washer' ELSE '' END || CASE WHEN "may be ultrasonic-bath" THEN ',ultrasonic-bath' ELSE '' END || CASE WHEN "may be by-hand" THEN ',by-hand' ELSE '' END || CASE WHEN "may be ask-lead" THEN ',ask-lead' ELSE '' END || CASE WHEN "may be discard" THEN ',discard' ELSE '' END) AS "possible",
  (CASE WHEN "may be washer" THEN 1 ELSE 0 END + CASE WHEN "may be ultrasonic-bath" THEN 1 ELSE 0 END + CASE WHEN "may be by-hand" THEN 1 ELSE 0 END + CASE WHEN "may be ask-lead" THEN 1 ELSE 0 END + CASE WHEN "may be discard" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "cleaning-route/washer-takes-it" IS TRUE THEN ',cleaning-route/washer-takes-it' ELSE '' END || CASE WHEN "cleaning-route/bath-takes-it" IS TRUE THEN ',cleaning-route/bath-takes-it' ELSE '' END || CASE WHEN "cleaning-route/only-by-hand" IS TRUE THEN ',cleaning-route/only-by-hand' ELSE '' END || CASE WHEN "cleaning-route/washer-answer-missing" IS TRUE THEN ',cleaning-route/washer-answer-missing' ELSE '' END || CASE WHEN "cleaning-route/bath-answer-missing" IS TRUE THEN ',cleaning-route/bath-answer-missing' ELSE '' END || CASE WHEN "cleaning-route/single-use" IS TRUE THEN ',cleaning-route/single-use' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "cleaning-route/washer-takes-it" IS NULL THEN ',cleaning-route/washer-takes-it' ELSE '' END || CASE WHEN "cleaning-route/bath-takes-it" IS NULL THEN ',cleaning-route/bath-takes-it' ELSE '' END || CASE WHEN "cleaning-route/only-by-hand" IS NULL THEN ',cleaning-route/only-by-hand' ELSE '' END || CASE WHEN "cleaning-route/washer-answer-missing" IS NULL THEN ',cleaning-route/washer-answer-missing' ELSE '' END || CASE WHEN "cleaning-route/bath-answer-missing" IS NULL THEN ',cleaning-route/bath-answer-missing' ELSE '' END || CASE WHEN "cleaning-route/single-use" IS NULL THEN ',cleaning-route/single-use' ELSE '' END) AS "open"
FROM "rules of cleaning-route" JOIN "possible of cleaning-route" ON "possible of cleaning-route"."situation id" = "rules of cleaning-route"."situation id";

-- The washer stopped before the end. What happens to this load?
CREATE VIEW "decide interrupted-washer" AS WITH "given" AS (
  SELECT "situation id", "washer.stop", "washer.resumed", "washer.pause", "washer.was-drying", "washer.stopped-before", "washer.danger"
  FROM "facts"
),
"rules of interrupted-washer" AS (
  SELECT "given"."situation id",
    ("washer.stop" IN ('power-cut') AND ("washer.stop" IN ('power-cut') AND "washer.resumed" = TRUE) AND "washer.pause" <= 1e+1) AS "interrupted-washer/resumed-by-itself",
    ("washer.was-drying" = TRUE AND "washer.stop" IN ('power-cut', 'door-opened')) AS "interrupted-washer/stopped-while-drying",
    (("washer.stop" IN ('door-opened', 'supply-missing') OR ("washer.stop" IN ('power-cut') AND "washer.resumed" = FALSE) OR "washer.pause" > 1e+1) AND "washer.was-drying" = FALSE) AS "interrupted-washer/cut-short",
    ("washer.stop" IN ('fault-alarm') OR "washer.stopped-before" = TRUE) AS "interrupted-washer/fault",
    "washer.danger" = TRUE AS "interrupted-washer/danger"
  FROM "given"
),
"possible of interrupted-washer" AS (
  SELECT "situation id",
    (("interrupted-washer/resumed-by-itself" IS NOT FALSE OR "interrupted-washer/stopped-while-drying" IS NOT FALSE) AND "interrupted-washer/cut-short" IS NOT TRUE AND "interrupted-washer/fault" IS NOT TRUE AND "interrupted-washer/danger" IS NOT TRUE) AS "may be continue",
    (("interrupted-washer/cut-short" IS NOT FALSE OR ("interrupted-washer/resumed-by-itself" IS NOT TRUE AND "interrupted-washer/stopped-while-drying" IS NOT TRUE AND "interrupted-washer/cut-short" IS NOT TRUE AND "interrupted-washer/fault" IS NOT TRUE AND "interrupted-washer/danger" IS NOT TRUE)) AND "interrupted-washer/fault" IS NOT TRUE AND "interrupted-washer/danger" IS NOT TRUE) AS "may be wash-again",
    ("interrupted-washer/fault" IS NOT FALSE OR "interrupted-washer/danger" IS NOT FALSE) AS "may be call-service"
  FROM "rules of interrupted-washer"
)
SELECT "rules of interrupted-washer"."situation id",
  CASE WHEN "may be call-service" THEN 'call-service' WHEN "may be wash-again" THEN 'wash-again' WHEN "may be continue" THEN 'continue' ELSE 'wash-again' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be continue" THEN ',continue' ELSE '' END || CASE WHEN "may be wash-again" THEN ',wash-again' ELSE '' END || CASE WHEN "may be call-service" THEN ',call-service' ELSE '' END) AS "possible",
  (CASE WHEN "may be continue" THEN 1 ELSE 0 END + CASE WHEN "may be wash-again" THEN 1 ELSE 0 END + CASE WHEN "may be call-service" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "interrupted-washer/resumed-by-itself" IS TRUE THEN ',interrupted-washer/resumed-by-itself' ELSE '' END || CASE WHEN "interrupted-washer/stopped-while-drying" IS TRUE THEN ',interrupted-washer/stopped-while-drying' ELSE '' END || CASE WHEN "interrupted-washer/cut-short" IS TRUE THEN ',interrupted-washer/cut-short' ELSE '' END || CASE WHEN "interrupted-washer/fault" IS TRUE THEN ',interrupted-washer/fault' ELSE '' END || CASE WHEN "interrupted-washer/danger" IS TRUE THEN ',interrupted-washer/danger' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "interrupted-washer/resumed-by-itself" IS NULL THEN ',interrupted-washer/resumed-by-itself' ELSE '' END || CASE WHEN "interrupted-washer/stopped-while-drying" IS NULL THEN ',interrupted-washer/stopped-while-drying' ELSE '' END || CASE WHEN "interrupted-washer/cut-short" IS NULL THEN ',interrupted-washer/cut-short' ELSE '' END || CASE WHEN "interrupted-washer/fault" IS NULL THEN ',interrupted-washer/fault' ELSE '' END || CASE WHEN "interrupted-washer/danger" IS NULL THEN ',interrupted-washer/danger' ELSE '' END) AS "open"
FROM "rules of interrupted-washer" JOIN "possible of interrupted-washer" ON "possible of interrupted-washer"."situation id" = "rules of interrupted-washer"."situation id";

-- May this loaded washer be started?
CREATE VIEW "decide washer-load" AS WITH "given" AS (
  SELECT "situation id", "load.all-for-washer", "load.within-makers-amount", "load.soil", "load.overlapping", "load.nothing-holds-water", "load.cassettes-stand", "load.sharps-held", "load.metals-apart", "washer.arms-free", "washer.supplied", "washer.checked"
  FROM "facts"
),
"rules of washer-load" AS (
  SELECT "given"."situation id",
    ("load.all-for-washer" = TRUE AND "load.within-makers-amount" = TRUE AND "load.soil" NOT IN ('stuck-material') AND "load.overlapping" = FALSE AND "load.nothing-holds-water" = TRUE AND "load.cassettes-stand" = TRUE AND "load.sharps-held" = TRUE AND "load.metals-apart" = TRUE AND "washer.arms-free" = TRUE AND "washer.supplied" = TRUE AND "washer.checked" = TRUE) AS "washer-load/everything-right",
    ("washer.arms-free" = FALSE OR "load.within-makers-amount" = FALSE) AS "washer-load/too-full",
    ("load.overlapping" = TRUE OR "load.cassettes-stand" = FALSE) AS "washer-load/covered",
    "load.nothing-holds-water" = FALSE AS "washer-load/holds-its-soil",
    "load.sharps-held" = FALSE AS "washer-load/sharps-loose",
    "load.metals-apart" = FALSE AS "washer-load/metals-together",
    "load.all-for-washer" = FALSE AS "washer-load/wrong-item",
    "load.soil" IN ('stuck-material') AS "washer-load/stuck-material",
    "washer.supplied" = FALSE AS "washer-load/not-supplied",
    "washer.checked" = FALSE AS "washer-load/not-checked"
  FROM "given"
),
"possible of washer-load" AS (
  SELECT "situation id",
    ("washer-load/everything-right" IS NOT FALSE AND "washer-load/too-full" IS NOT TRUE AND "washer-load/covered" IS NOT TRUE AND "washer-load/holds-its-soil" IS NOT TRUE AND "washer-load/sharps-loose" IS NOT TRUE AND "washer-load/metals-together" IS NOT TRUE AND "washer-load/wrong-item" IS NOT TRUE AND "washer-load/stuck-material" IS NOT TRUE AND "washer-load/not-supplied" IS NOT TRUE AND "washer-load/not-checked" IS NOT TRUE) AS "may be start",
    (("washer-load/too-full" IS NOT FALSE OR "washer-load/covered" IS NOT FALSE OR "washer-load/holds-its-soil" IS NOT FALSE OR "washer-load/sharps-loose" IS NOT FALSE OR "washer-load/metals-together" IS NOT FALSE OR ("washer-load/everything-right" IS NOT TRUE AND "washer-load/too-full" IS NOT TRUE AND "washer-load/covered" IS NOT TRUE AND "washer-load/holds-its-soil" IS NOT TRUE AND "washer-load/sharps-loose" IS NOT TRUE AND "washer-load/metals-together" IS NOT TRUE AND "washer-load/wrong-item" IS NOT TRUE AND "washer-load/stuck-material" IS NOT TRUE AND "washer-load/not-supplied" IS NOT TRUE AND "washer-load/not-checked" IS NOT TRUE)) AND "washer-load/wrong-item" IS NOT TRUE AND "washer-load/stuck-material" IS NOT TRUE AND "washer-load/not-supplied" IS NOT TRUE AND "washer-load/not-checked" IS NOT TRUE) AS "may be rearrange",
    ("washer-load/wrong-item" IS NOT FALSE OR "washer-load/stuck-material" IS NOT FALSE OR "washer-load/not-supplied" IS NOT FALSE OR "washer-load/not-checked" IS NOT FALSE) AS "may be do-not-start"
  FROM "rules of washer-load"
)
SELECT "rules of washer-load"."situation id",
  CASE WHEN "may be do-not-start" THEN 'do-not-start' WHEN "may be rearrange" THEN 'rearrange' WHEN "may be start" THEN 'start' ELSE 'rearrange' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be start" THEN ',start' ELSE '' END || CASE WHEN "may be rearrange" THEN ',rearrange' ELSE '' END || CASE WHEN "may be do-not-start" THEN ',do-not-start' ELSE '' END) AS "possible",
  (CASE WHEN "may be start" THEN 1 ELSE 0 END + CASE WHEN "may be rearrange" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-start" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "washer-load/everything-right" IS TRUE THEN ',washer-load/everything-right' ELSE '' END || CASE WHEN "washer-load/too-full" IS TRUE THEN ',washer-load/too-full' ELSE '' END || CASE WHEN "washer-load/covered" IS TRUE THEN ',washer-load/covered' ELSE '' END || CASE WHEN "washer-load/holds-its-soil" IS TRUE THEN ',washer-load/holds-its-soil' ELSE '' END || CASE WHEN "washer-load/sharps-loose" IS TRUE THEN ',washer-load/sharps-loose' ELSE '' END || CASE WHEN "washer-load/metals-together" IS TRUE THEN ',washer-load/metals-together' ELSE '' END || CASE WHEN "washer-load/wrong-item" IS TRUE THEN ',washer-load/wrong-item' ELSE '' END || CASE WHEN "washer-load/stuck-material" IS TRUE THEN ',washer-load/stuck-material' ELSE '' END || CASE WHEN "washer-load/not-supplied" IS TRUE THEN ',washer-load/not-supplied' ELSE '' END || CASE WHEN "washer-load/not-checked" IS TRUE THEN ',washer-load/not-checked' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "washer-load/everything-right" IS NULL THEN ',washer-load/everything-right' ELSE '' END || CASE WHEN "washer-load/too-full" IS NULL THEN ',washer-load/too-full' ELSE '' END || CASE WHEN "washer-load/covered" IS NULL THEN ',washer-load/covered' ELSE '' END || CASE WHEN "washer-load/holds-its-soil" IS NULL THEN ',washer-load/holds-its-soil' ELSE '' END || CASE WHEN "washer-load/sharps-loose" IS NULL THEN ',washer-load/sharps-loose' ELSE '' END || CASE WHEN "washer-load/metals-together" IS NULL THEN ',washer-load/metals-together' ELSE '' END || CASE WHEN "washer-load/wrong-item" IS NULL THEN ',washer-load/wrong-item' ELSE '' END || CASE WHEN "washer-load/stuck-material" IS NULL THEN ',washer-load/stuck-material' ELSE '' END || CASE WHEN "washer-load/not-supplied" IS NULL THEN ',washer-load/not-supplied' ELSE '' END || CASE WHEN "washer-load/not-checked" IS NULL THEN ',washer-load/not-checked' ELSE '' END) AS "open"
FROM "rules of washer-load" JOIN "possible of washer-load" ON "possible of washer-load"."situation id" = "rules of washer-load"."situation id";

-- Which program does this load need?
CREATE VIEW "decide washer-program" AS WITH "given" AS (
  SELECT "situation id", "load.purpose", "load.arrangement", "load.soil"
  FROM "facts"
),
"rules of washer-program" AS (
  SELECT "given"."situation id",
    ("load.purpose" IN ('wash') AND "load.arrangement" IN ('loose-items')) AS "washer-program/loose-items",
    ("load.purpose" IN ('wash') AND "load.arrangement" IN ('cassettes')) AS "washer-program/cassettes",
    ("load.purpose" IN ('wash') AND "load.arrangement" IN ('mixed-load')) AS "washer-program/mixed-load",
    "load.purpose" IN ('moist-hold') AS "washer-program/hold-only",
    "load.purpose" IN ('wash') AS "washer-program/cool-first",
    "load.purpose" IN ('wash') AS "washer-program/cleans-and-disinfects",
    "load.purpose" IN ('wash') AS "washer-program/dries",
    ("load.purpose" IN ('wash') AND "load.soil" IN ('heavy-soil')) AS "washer-program/heavy-soil",
    ("load.purpose" IN ('wash') AND "load.soil" IN ('dried-soil')) AS "washer-program/dried-soil",
    ("load.purpose" IN ('wash') AND "load.soil" IN ('stuck-material')) AS "washer-program/stuck-material"
  FROM "given"
),
"possible of washer-program" AS (
  SELECT "situation id",
    (("washer-program/loose-items" IS NOT FALSE OR "washer-program/cassettes" IS NOT FALSE OR "washer-program/mixed-load" IS NOT FALSE OR "washer-program/hold-only" IS NOT FALSE) AND "washer-program/loose-items" IS NOT TRUE AND "washer-program/cassettes" IS NOT TRUE AND "washer-program/mixed-load" IS NOT TRUE AND "washer-program/cleans-and-disinfects" IS NOT TRUE AND "washer-program/dries" IS NOT TRUE AND "washer-program/heavy-soil" IS NOT TRUE AND "washer-program/dried-soil" IS NOT TRUE AND "washer-program/stuck-material" IS NOT TRUE) AS "may be washer-1/wet-wait",
    (("washer-program/loose-items" IS NOT FALSE OR "washer-program/cassettes" IS NOT FALSE OR "washer-program/mixed-load" IS NOT FALSE OR "washer-program/hold-only" IS NOT FALSE) AND "washer-program/hold-only" IS NOT TRUE AND "washer-program/heavy-soil" IS NOT TRUE AND "washer-program/dried-soil" IS NOT TRUE AND "washer-program/stuck-material" IS NOT TRUE) AS "may be washer-1/everyday-wash",
    (("washer-program/loose-items" IS NOT FALSE OR "washer-program/cassettes" IS NOT FALSE OR "washer-program/mixed-load" IS NOT FALSE OR "washer-program/hold-only" IS NOT FALSE) AND "washer-program/hold-only" IS NOT TRUE AND "washer-program/stuck-material" IS NOT TRUE) AS "may be washer-1/stubborn-soil-wash",
    (NOT (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/loose-items" IS FALSE AND "washer-program/cassettes" IS FALSE AND "washer-program/mixed-load" IS FALSE AND "washer-program/cleans-and-disinfects" IS FALSE AND "washer-program/dries" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) AND NOT (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) AND NOT (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/stuck-material" IS FALSE)) AS "may be none"
  FROM "rules of washer-program"
)
SELECT "rules of washer-program"."situation id",
  CASE WHEN (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/loose-items" IS FALSE AND "washer-program/cassettes" IS FALSE AND "washer-program/mixed-load" IS FALSE AND "washer-program/cleans-and-disinfects" IS FALSE AND "washer-program/dries" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) THEN 'washer-1/wet-wait' WHEN (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) THEN 'washer-1/everyday-wash' WHEN (("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/stuck-material" IS FALSE) THEN 'washer-1/stubborn-soil-wash' ELSE 'none' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be washer-1/wet-wait" THEN ',washer-1/wet-wait' ELSE '' END || CASE WHEN "may be washer-1/everyday-wash" THEN ',washer-1/everyday-wash' ELSE '' END || CASE WHEN "may be washer-1/stubborn-soil-wash" THEN ',washer-1/stubborn-soil-wash' ELSE '' END || CASE WHEN "may be none" THEN ',none' ELSE '' END) AS "possible",
  (((("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/loose-items" IS FALSE AND "washer-program/cassettes" IS FALSE AND "washer-program/mixed-load" IS FALSE AND "washer-program/cleans-and-disinfects" IS FALSE AND "washer-program/dries" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) OR NOT "may be washer-1/wet-wait") AND ((("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/heavy-soil" IS FALSE AND "washer-program/dried-soil" IS FALSE AND "washer-program/stuck-material" IS FALSE) OR NOT "may be washer-1/everyday-wash") AND ((("washer-program/loose-items" IS TRUE OR "washer-program/cassettes" IS TRUE OR "washer-program/mixed-load" IS TRUE OR "washer-program/hold-only" IS TRUE) AND "washer-program/hold-only" IS FALSE AND "washer-program/stuck-material" IS FALSE) OR NOT "may be washer-1/stubborn-soil-wash")) AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "washer-program/loose-items" IS TRUE THEN ',washer-program/loose-items' ELSE '' END || CASE WHEN "washer-program/cassettes" IS TRUE THEN ',washer-program/cassettes' ELSE '' END || CASE WHEN "washer-program/mixed-load" IS TRUE THEN ',washer-program/mixed-load' ELSE '' END || CASE WHEN "washer-program/hold-only" IS TRUE THEN ',washer-program/hold-only' ELSE '' END || CASE WHEN "washer-program/cool-first" IS TRUE THEN ',washer-program/cool-first' ELSE '' END || CASE WHEN "washer-program/cleans-and-disinfects" IS TRUE THEN ',washer-program/cleans-and-disinfects' ELSE '' END || CASE WHEN "washer-program/dries" IS TRUE THEN ',washer-program/dries' ELSE '' END || CASE WHEN "washer-program/heavy-soil" IS TRUE THEN ',washer-program/heavy-soil' ELSE '' END || CASE WHEN "washer-program/dried-soil" IS TRUE THEN ',washer-program/dried-soil' ELSE '' END || CASE WHEN "washer-program/stuck-material" IS TRUE THEN ',washer-program/stuck-material' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "washer-program/loose-items" IS NULL THEN ',washer-program/loose-items' ELSE '' END || CASE WHEN "washer-program/cassettes" IS NULL THEN ',washer-program/cassettes' ELSE '' END || CASE WHEN "washer-program/mixed-load" IS NULL THEN ',washer-program/mixed-load' ELSE '' END || CASE WHEN "washer-program/hold-only" IS NULL THEN ',washer-program/hold-only' ELSE '' END || CASE WHEN "washer-program/cool-first" IS NULL THEN ',washer-program/cool-first' ELSE '' END || CASE WHEN "washer-program/cleans-and-disinfects" IS NULL THEN ',washer-program/cleans-and-disinfects' ELSE '' END || CASE WHEN "washer-program/dries" IS NULL THEN ',washer-program/dries' ELSE '' END || CASE WHEN "washer-program/heavy-soil" IS NULL THEN ',washer-program/heavy-soil' ELSE '' END || CASE WHEN "washer-program/dried-soil" IS NULL THEN ',washer-program/dried-soil' ELSE '' END || CASE WHEN "washer-program/stuck-material" IS NULL THEN ',washer-program/stuck-material' ELSE '' END) AS "open"
FROM "rules of washer-program" JOIN "possible of washer-program" ON "possible of washer-program"."situation id" = "rules of washer-program"."situation id";

-- Does this method make an instrument sterile?
CREATE VIEW "decide counts-as-sterilizing" AS WITH "given" AS (
  SELECT "situation id", "item.proposed-method"
  FROM "facts"
),
"rules of counts-as-sterilizing" AS (
  SELECT "given"."situation id",
    "item.proposed-method" IN ('steam-cycle', 'dry-heat-cycle') AS "counts-as-sterilizing/machine-made-for-it",
    "item.proposed-method" IN ('liquid-soaking', 'washer-disinfection') AS "counts-as-sterilizing/soaking-or-hot-wash",
    "item.proposed-method" IN ('boiling-water', 'glass-beads', 'ultraviolet-light', 'microwave-oven', 'household-oven') AS "counts-as-sterilizing/boiling-beads-light-or-kitchen"
  FROM "given"
),
"possible of counts-as-sterilizing" AS (
  SELECT "situation id",
    ("counts-as-sterilizing/machine-made-for-it" IS NOT FALSE AND "counts-as-sterilizing/soaking-or-hot-wash" IS NOT TRUE AND "counts-as-sterilizing/boiling-beads-light-or-kitchen" IS NOT TRUE) AS "may be counts",
    ("counts-as-sterilizing/soaking-or-hot-wash" IS NOT FALSE AND "counts-as-sterilizing/boiling-beads-light-or-kitchen" IS NOT TRUE) AS "may be disinfects-only",
    ("counts-as-sterilizing/boiling-beads-light-or-kitchen" IS NOT FALSE OR ("counts-as-sterilizing/machine-made-for-it" IS NOT TRUE AND "counts-as-sterilizing/soaking-or-hot-wash" IS NOT TRUE AND "counts-as-sterilizing/boiling-beads-light-or-kitchen" IS NOT TRUE)) AS "may be never"
  FROM "rules of counts-as-sterilizing"
)
SELECT "rules of counts-as-sterilizing"."situation id",
  CASE WHEN "may be never" THEN 'never' WHEN "may be disinfects-only" THEN 'disinfects-only' WHEN "may be counts" THEN 'counts' ELSE 'never' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be counts" THEN ',counts' ELSE '' END || CASE WHEN "may be disinfects-only" THEN ',disinfects-only' ELSE '' END || CASE WHEN "may be never" THEN ',never' ELSE '' END) AS "possible",
  (CASE WHEN "may be counts" THEN 1 ELSE 0 END + CASE WHEN "may be disinfects-only" THEN 1 ELSE 0 END + CASE WHEN "may be never" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "counts-as-sterilizing/machine-made-for-it" IS TRUE THEN ',counts-as-sterilizing/machine-made-for-it' ELSE '' END || CASE WHEN "counts-as-sterilizing/soaking-or-hot-wash" IS TRUE THEN ',counts-as-sterilizing/soaking-or-hot-wash' ELSE '' END || CASE WHEN "counts-as-sterilizing/boiling-beads-light-or-kitchen" IS TRUE THEN ',counts-as-sterilizing/boiling-beads-light-or-kitchen' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "counts-as-sterilizing/machine-made-for-it" IS NULL THEN ',counts-as-sterilizing/machine-made-for-it' ELSE '' END || CASE WHEN "counts-as-sterilizing/soaking-or-hot-wash" IS NULL THEN ',counts-as-sterilizing/soaking-or-hot-wash' ELSE '' END || CASE WHEN "counts-as-sterilizing/boiling-beads-light-or-kitchen" IS NULL THEN ',counts-as-sterilizing/boiling-beads-light-or-kitchen' ELSE '' END) AS "open"
FROM "rules of counts-as-sterilizing" JOIN "possible of counts-as-sterilizing" ON "possible of counts-as-sterilizing"."situation id" = "rules of counts-as-sterilizing"."situation id";

-- Does this clean instrument go on, go back, or out of use?
CREATE VIEW "decide inspection" AS WITH "given" AS (
  SELECT "situation id", "item.visible-soil", "item.wet", "item.surface", "item.damaged", "item.mark-bad", "instrument.hinged", "item.joint", "instrument.sharp", "item.dull", "instrument.has-lumen", "item.lumen-clear"
  FROM "facts"
),
"rules of inspection" AS (
  SELECT "given"."situation id",
    ("item.visible-soil" = FALSE AND "item.wet" = FALSE AND "item.surface" IN ('sound-surface') AND "item.damaged" = FALSE AND "item.mark-bad" = FALSE AND (("instrument.hinged" = FALSE OR ("instrument.hinged" = TRUE AND "item.joint" IN ('joint-free'))) AND ("instrument.sharp" = FALSE OR ("instrument.sharp" = TRUE AND "item.dull" = FALSE)) AND ("instrument.has-lumen" = FALSE OR ("instrument.has-lumen" = TRUE AND "item.lumen-clear" = TRUE)))) AS "inspection/clean-dry-and-sound",
    "item.wet" = TRUE AS "inspection/wet",
    ("item.visible-soil" = TRUE OR ("instrument.has-lumen" = TRUE AND "item.lumen-clear" = FALSE)) AS "inspection/soil-or-blocked-tube",
    "item.surface" IN ('spotted-surface') AS "inspection/spots-or-film",
    ("instrument.hinged" = TRUE AND "item.joint" IN ('joint-stiff')) AS "inspection/joint-stiff",
    (("instrument.hinged" = TRUE AND "item.joint" IN ('joint-stays-stiff', 'joint-loose')) OR ("instrument.sharp" = TRUE AND "item.dull" = TRUE)) AS "inspection/worn",
    "item.surface" IN ('rusted-surface', 'flaking-surface') AS "inspection/rust-pits-or-flaking",
    "item.damaged" = TRUE AS "inspection/damaged",
    "item.mark-bad" = TRUE AS "inspection/mark-loose-or-unreadable"
  FROM "given"
),
"possible of inspection" AS (
  SELECT "situation id",
    ("inspection/clean-dry-and-sound" IS NOT FALSE AND "inspection/wet" IS NOT TRUE AND "inspection/soil-or-blocked-tube" IS NOT TRUE AND "inspection/spots-or-film" IS NOT TRUE AND "inspection/joint-stiff" IS NOT TRUE AND "inspection/worn" IS NOT TRUE AND "inspection/rust-pits-or-flaking" IS NOT TRUE AND "inspection/damaged" IS NOT TRUE AND "inspection/mark-loose-or-unreadable" IS NOT TRUE) AS "may be go-on",
    ("inspection/wet" IS NOT FALSE AND "inspection/soil-or-blocked-tube" IS NOT TRUE AND "inspection/spots-or-film" IS NOT TRUE AND "inspection/joint-stiff" IS NOT TRUE AND "inspection/worn" IS NOT TRUE AND "inspection/rust-pits-or-flaking" IS NOT TRUE AND "inspection/damaged" IS NOT TRUE AND "inspection/mark-loose-or-unreadable" IS NOT TRUE) AS "may be dry-first",
    (("inspection/soil-or-blocked-tube" IS NOT FALSE OR "inspection/spots-or-film" IS NOT FALSE OR "inspection/joint-stiff" IS NOT FALSE OR ("inspection/clean-dry-and-sound" IS NOT TRUE AND "inspection/wet" IS NOT TRUE AND "inspection/soil-or-blocked-tube" IS NOT TRUE AND "inspection/spots-or-film" IS NOT TRUE AND "inspection/joint-stiff" IS NOT TRUE AND "inspection/worn" IS NOT TRUE AND "inspection/rust-pits-or-flaking" IS NOT TRUE AND "inspection/damaged" IS NOT TRUE AND "inspection/mark-loose-or-unreadable" IS NOT TRUE)) AND "inspection/worn" IS NOT TRUE AND "inspection/rust-pits-or-flaking" IS NOT TRUE AND "inspection/damaged" IS NOT TRUE AND "inspection/mark-loose-or-unreadable" IS NOT TRUE) AS "may be clean-again",
    ("inspection/worn" IS NOT FALSE OR "inspection/rust-pits-or-flaking" IS NOT FALSE OR "inspection/damaged" IS NOT FALSE OR "inspection/mark-loose-or-unreadable" IS NOT FALSE) AS "may be take-out"
  FROM "rules of inspection"
)
SELECT "rules of inspection"."situation id",
  CASE WHEN "may be take-out" THEN 'take-out' WHEN "may be clean-again" THEN 'clean-again' WHEN "may be dry-first" THEN 'dry-first' WHEN "may be go-on" THEN 'go-on' ELSE 'clean-again' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be go-on" THEN ',go-on' ELSE '' END || CASE WHEN "may be dry-first" THEN ',dry-first' ELSE '' END || CASE WHEN "may be clean-again" THEN ',clean-again' ELSE '' END || CASE WHEN "may be take-out" THEN ',take-out' ELSE '' END) AS "possible",
  (CASE WHEN "may be go-on" THEN 1 ELSE 0 END + CASE WHEN "may be dry-first" THEN 1 ELSE 0 END + CASE WHEN "may be clean-again" THEN 1 ELSE 0 END + CASE WHEN "may be take-out" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "inspection/clean-dry-and-sound" IS TRUE THEN ',inspection/clean-dry-and-sound' ELSE '' END || CASE WHEN "inspection/wet" IS TRUE THEN ',inspection/wet' ELSE '' END || CASE WHEN "inspection/soil-or-blocked-tube" IS TRUE THEN ',inspection/soil-or-blocked-tube' ELSE '' END || CASE WHEN "inspection/spots-or-film" IS TRUE THEN ',inspection/spots-or-film' ELSE '' END || CASE WHEN "inspection/joint-stiff" IS TRUE THEN ',inspection/joint-stiff' ELSE '' END || CASE WHEN "inspection/worn" IS TRUE THEN ',inspection/worn' ELSE '' END || CASE WHEN "inspection/rust-pits-or-flaking" IS TRUE THEN ',inspection/rust-pits-or-flaking' ELSE '' END || CASE WHEN "inspection/damaged" IS TRUE THEN ',inspection/damaged' ELSE '' END || CASE WHEN "inspection/mark-loose-or-unreadable" IS TRUE THEN ',inspection/mark-loose-or-unreadable' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "inspection/clean-dry-and-sound" IS NULL THEN ',inspection/clean-dry-and-sound' ELSE '' END || CASE WHEN "inspection/wet" IS NULL THEN ',inspection/wet' ELSE '' END || CASE WHEN "inspection/soil-or-blocked-tube" IS NULL THEN ',inspection/soil-or-blocked-tube' ELSE '' END || CASE WHEN "inspection/spots-or-film" IS NULL THEN ',inspection/spots-or-film' ELSE '' END || CASE WHEN "inspection/joint-stiff" IS NULL THEN ',inspection/joint-stiff' ELSE '' END || CASE WHEN "inspection/worn" IS NULL THEN ',inspection/worn' ELSE '' END || CASE WHEN "inspection/rust-pits-or-flaking" IS NULL THEN ',inspection/rust-pits-or-flaking' ELSE '' END || CASE WHEN "inspection/damaged" IS NULL THEN ',inspection/damaged' ELSE '' END || CASE WHEN "inspection/mark-loose-or-unreadable" IS NULL THEN ',inspection/mark-loose-or-unreadable' ELSE '' END) AS "open"
FROM "rules of inspection" JOIN "possible of inspection" ON "possible of inspection"."situation id" = "rules of inspection"."situation id";

-- Which oil does this instrument get before it is packed?
CREATE VIEW "decide oiling" AS WITH "given" AS (
  SELECT "situation id", "instrument.oiling", "instrument.hinged", "instrument.kind"
  FROM "facts"
),
"rules of oiling" AS (
  SELECT "given"."situation id",
    "instrument.oiling" IN ('no-oil') AS "oiling/maker-wants-none",
    ("instrument.oiling" IN ('joint-oil') AND "instrument.hinged" = TRUE AND "instrument.kind" NOT IN ('handpiece')) AS "oiling/oil-the-joint",
    ("instrument.oiling" IN ('handpiece-oil') AND "instrument.kind" IN ('handpiece')) AS "oiling/oil-the-handpiece",
    (("instrument.oiling" IN ('joint-oil') AND "instrument.hinged" = FALSE) OR ("instrument.oiling" IN ('joint-oil') AND "instrument.kind" IN ('handpiece')) OR ("instrument.oiling" IN ('handpiece-oil') AND "instrument.kind" NOT IN ('handpiece'))) AS "oiling/register-contradicts-itself"
  FROM "given"
),
"possible of oiling" AS (
  SELECT "situation id",
    ("oiling/maker-wants-none" IS NOT FALSE AND "oiling/oil-the-joint" IS NOT TRUE AND "oiling/oil-the-handpiece" IS NOT TRUE AND "oiling/register-contradicts-itself" IS NOT TRUE) AS "may be none",
    ("oiling/oil-the-joint" IS NOT FALSE AND "oiling/oil-the-handpiece" IS NOT TRUE AND "oiling/register-contradicts-itself" IS NOT TRUE) AS "may be joint",
    ("oiling/oil-the-handpiece" IS NOT FALSE AND "oiling/register-contradicts-itself" IS NOT TRUE) AS "may be handpiece",
    ("oiling/register-contradicts-itself" IS NOT FALSE OR ("oiling/maker-wants-none" IS NOT TRUE AND "oiling/oil-the-joint" IS NOT TRUE AND "oiling/oil-the-handpiece" IS NOT TRUE AND "oiling/register-contradicts-itself" IS NOT TRUE)) AS "may be ask-maker"
  FROM "rules of oiling"
)
SELECT "rules of oiling"."situation id",
  CASE WHEN "may be ask-maker" THEN 'ask-maker' WHEN "may be handpiece" THEN 'handpiece' WHEN "may be joint" THEN 'joint' WHEN "may be none" THEN 'none' ELSE 'ask-maker' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be none" THEN ',none' ELSE '' END || CASE WHEN "may be joint" THEN ',joint' ELSE '' END || CASE WHEN "may be handpiece" THEN ',handpiece' ELSE '' END || CASE WHEN "may be ask-maker" THEN ',ask-maker' ELSE '' END) AS "possible",
  (CASE WHEN "may be none" THEN 1 ELSE 0 END + CASE WHEN "may be joint" THEN 1 ELSE 0 END + CASE WHEN "may be handpiece" THEN 1 ELSE 0 END + CASE WHEN "may be ask-maker" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "oiling/maker-wants-none" IS TRUE THEN ',oiling/maker-wants-none' ELSE '' END || CASE WHEN "oiling/oil-the-joint" IS TRUE THEN ',oiling/oil-the-joint' ELSE '' END || CASE WHEN "oiling/oil-the-handpiece" IS TRUE THEN ',oiling/oil-the-handpiece' ELSE '' END || CASE WHEN "oiling/register-contradicts-itself" IS TRUE THEN ',oiling/register-contradicts-itself' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "oiling/maker-wants-none" IS NULL THEN ',oiling/maker-wants-none' ELSE '' END || CASE WHEN "oiling/oil-the-joint" IS NULL THEN ',oiling/oil-the-joint' ELSE '' END || CASE WHEN "oiling/oil-the-handpiece" IS NULL THEN ',oiling/oil-the-handpiece' ELSE '' END || CASE WHEN "oiling/register-contradicts-itself" IS NULL THEN ',oiling/register-contradicts-itself' ELSE '' END) AS "open"
FROM "rules of oiling" JOIN "possible of oiling" ON "possible of oiling"."situation id" = "rules of oiling"."situation id";

-- What is this instrument packed in for the sterilizer?
CREATE VIEW "decide packing" AS WITH "given" AS (
  SELECT "situation id", "instrument.implantable", "instrument.kind", "instrument.heat-tolerant", "instrument.single-use", "use.class", "instrument.contact"
  FROM "facts"
),
"rules of device-class" AS (
  SELECT "given"."situation id",
    "instrument.contact" IN ('intact-skin') AS "device-class/skin-only",
    "instrument.contact" IN ('mucous-membrane') AS "device-class/mucous-membrane",
    "instrument.contact" IN ('tissue-or-bone') AS "device-class/tissue-or-bone",
    "instrument.kind" IN ('handpiece', 'bur', 'syringe-tip', 'suction-tip', 'impression-tray', 'x-ray-holder', 'clamp', 'light-guide') AS "device-class/used-in-the-mouth",
    "instrument.kind" IN ('root-canal-file', 'scaler-tip', 'scalpel-handle') AS "device-class/enters-tissue"
  FROM "given"
),
"possible of device-class" AS (
  SELECT "situation id",
    ("device-class/skin-only" IS NOT FALSE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be noncritical",
    (("device-class/mucous-membrane" IS NOT FALSE OR "device-class/used-in-the-mouth" IS NOT FALSE) AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be semicritical",
    ("device-class/tissue-or-bone" IS NOT FALSE OR "device-class/enters-tissue" IS NOT FALSE OR ("device-class/skin-only" IS NOT TRUE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE)) AS "may be critical"
  FROM "rules of device-class"
),
"stated use.class" AS (
  SELECT "given"."situation id",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'noncritical' ELSE "may be noncritical" END AS "may be noncritical",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'semicritical' ELSE "may be semicritical" END AS "may be semicritical",
    CASE WHEN (("given"."use.class" = 'noncritical' AND "may be noncritical") OR ("given"."use.class" = 'semicritical' AND "may be semicritical") OR ("given"."use.class" = 'critical' AND "may be critical")) THEN "given"."use.class" = 'critical' ELSE "may be critical" END AS "may be critical"
  FROM "given" JOIN "possible of device-class" ON "possible of device-class"."situation id" = "given"."situation id"
),
"rules of packing" AS (
  SELECT "given"."situation id",
    (CASE WHEN NOT ("use.class may be semicritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be noncritical" THEN FALSE END AND "instrument.implantable" = FALSE AND "instrument.kind" NOT IN ('cassette')) AS "packing/touches-skin-only",
    (CASE WHEN NOT "use.class may be noncritical" THEN TRUE WHEN NOT ("use.class may be semicritical" OR "use.class may be critical") THEN FALSE END OR "instrument.implantable" = TRUE) AS "packing/touches-mouth-or-tissue",
    "instrument.kind" IN ('cassette') AS "packing/cassette",
    "instrument.heat-tolerant" = FALSE AS "packing/does-not-stand-heat",
    "instrument.single-use" = TRUE AS "packing/single-use"
  FROM "given" JOIN (SELECT "situation id" AS "key use.class", "may be noncritical" AS "use.class may be noncritical", "may be semicritical" AS "use.class may be semicritical", "may be critical" AS "use.class may be critical" FROM "stated use.class") AS "answer use.class" ON "answer use.class"."key use.class" = "given"."situation id"
),
"possible of packing" AS (
  SELECT "situation id",
    ("packing/touches-skin-only" IS NOT FALSE AND "packing/touches-mouth-or-tissue" IS NOT TRUE AND "packing/cassette" IS NOT TRUE AND "packing/does-not-stand-heat" IS NOT TRUE AND "packing/single-use" IS NOT TRUE) AS "may be open",
    (("packing/touches-mouth-or-tissue" IS NOT FALSE OR ("packing/touches-skin-only" IS NOT TRUE AND "packing/touches-mouth-or-tissue" IS NOT TRUE AND "packing/cassette" IS NOT TRUE AND "packing/does-not-stand-heat" IS NOT TRUE AND "packing/single-use" IS NOT TRUE)) AND "packing/cassette" IS NOT TRUE AND "packing/does-not-stand-heat" IS NOT TRUE AND "packing/single-use" IS NOT TRUE) AS "may be pouch",
    ("packing/cassette" IS NOT FALSE AND "packing/does-not-stand-heat" IS NOT TRUE AND "packing/single-use" IS NOT TRUE) AS "may be wrap",
    ("packing/does-not-stand-heat" IS NOT FALSE OR "packing/single-use" IS NOT FALSE) AS "may be hold-back"
  FROM "rules of packing"
)
SELECT "rules of packing"."situation id",
  CASE WHEN "may be hold-back" THEN 'hold-back' WHEN "may be wrap" THEN 'wrap' WHEN "may be pouch" THEN 'pouch' WHEN "may be open" THEN 'open' ELSE 'pouch' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be open" THEN ',open' ELSE '' END || CASE WHEN "may be pouch" THEN ',pouch' ELSE '' END || CASE WHEN "may be wrap" THEN ',wrap' ELSE '' END || CASE WHEN "may be hold-back" THEN ',hold-back' ELSE '' END) AS "possible",
  (CASE WHEN "may be open" THEN 1 ELSE 0 END + CASE WHEN "may be pouch" THEN 1 ELSE 0 END + CASE WHEN "may be wrap" THEN 1 ELSE 0 END + CASE WHEN "may be hold-back" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "packing/touches-skin-only" IS TRUE THEN ',packing/touches-skin-only' ELSE '' END || CASE WHEN "packing/touches-mouth-or-tissue" IS TRUE THEN ',packing/touches-mouth-or-tissue' ELSE '' END || CASE WHEN "packing/cassette" IS TRUE THEN ',packing/cassette' ELSE '' END || CASE WHEN "packing/does-not-stand-heat" IS TRUE THEN ',packing/does-not-stand-heat' ELSE '' END || CASE WHEN "packing/single-use" IS TRUE THEN ',packing/single-use' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "packing/touches-skin-only" IS NULL THEN ',packing/touches-skin-only' ELSE '' END || CASE WHEN "packing/touches-mouth-or-tissue" IS NULL THEN ',packing/touches-mouth-or-tissue' ELSE '' END || CASE WHEN "packing/cassette" IS NULL THEN ',packing/cassette' ELSE '' END || CASE WHEN "packing/does-not-stand-heat" IS NULL THEN ',packing/does-not-stand-heat' ELSE '' END || CASE WHEN "packing/single-use" IS NULL THEN ',packing/single-use' ELSE '' END) AS "open"
FROM "rules of packing" JOIN "possible of packing" ON "possible of packing"."situation id" = "rules of packing"."situation id";

-- Which cycle sterilizes this load?
CREATE VIEW "decide sterilizer-cycle" AS WITH "given" AS (
  SELECT "situation id", "pack.shape", "pack.wrapping", "pack.stands-steam", "pack.stands-dry-heat", COALESCE("clinic.machines", 'heat-sealer,steam-sterilizer,ultrasonic-bath,washer') AS "clinic.machines"
  FROM "facts"
),
"rules of sterilizer-cycle" AS (
  SELECT "given"."situation id",
    ("pack.shape" IN ('solid') AND "pack.wrapping" IN ('unwrapped')) AS "sterilizer-cycle/solid-unwrapped",
    "pack.wrapping" IN ('wrapped') AS "sterilizer-cycle/packaging",
    "pack.shape" IN ('hollow-wide') AS "sterilizer-cycle/wide-hollow",
    "pack.shape" IN ('hollow-narrow') AS "sterilizer-cycle/narrow-hollow",
    "pack.shape" IN ('porous') AS "sterilizer-cycle/porous",
    ("pack.shape" IN ('solid') AND "pack.wrapping" IN ('unwrapped')) AS "sterilizer-cycle/hold-bare",
    ("pack.wrapping" IN ('wrapped') OR "pack.shape" IN ('hollow-wide', 'hollow-narrow', 'porous')) AS "sterilizer-cycle/hold-covered",
    "pack.wrapping" IN ('wrapped') AS "sterilizer-cycle/drying",
    "pack.stands-steam" = FALSE AS "sterilizer-cycle/no-steam",
    ("pack.stands-dry-heat" = FALSE AND POSITION(',dry-heat-sterilizer,' IN ',' || "clinic.machines" || ',') > 0) AS "sterilizer-cycle/no-dry-heat",
    ("pack.stands-dry-heat" = TRUE AND POSITION(',dry-heat-sterilizer,' IN ',' || "clinic.machines" || ',') > 0) AS "sterilizer-cycle/hold-dry-heat",
    ("pack.wrapping" IN ('wrapped') OR "pack.shape" IN ('hollow-wide', 'hollow-narrow', 'porous')) AS "sterilizer-cycle/vacuum-not-below-the-table",
    "pack.shape" IN ('porous') AS "sterilizer-cycle/hold-gravity-cloth"
  FROM "given"
),
"possible of sterilizer-cycle" AS (
  SELECT "situation id",
    (("sterilizer-cycle/solid-unwrapped" IS NOT FALSE OR "sterilizer-cycle/packaging" IS NOT FALSE OR "sterilizer-cycle/wide-hollow" IS NOT FALSE OR "sterilizer-cycle/narrow-hollow" IS NOT FALSE OR "sterilizer-cycle/porous" IS NOT FALSE) AND "sterilizer-cycle/packaging" IS NOT TRUE AND "sterilizer-cycle/wide-hollow" IS NOT TRUE AND "sterilizer-cycle/narrow-hollow" IS NOT TRUE AND "sterilizer-cycle/porous" IS NOT TRUE AND "sterilizer-cycle/hold-covered" IS NOT TRUE AND "sterilizer-cycle/drying" IS NOT TRUE AND "sterilizer-cycle/no-steam" IS NOT TRUE AND "sterilizer-cycle/hold-gravity-cloth" IS NOT TRUE) AS "may be sterilizer-1/bare-and-quick",
    (("sterilizer-cycle/solid-unwrapped" IS NOT FALSE OR "sterilizer-cycle/packaging" IS NOT FALSE OR "sterilizer-cycle/wide-hollow" IS NOT FALSE OR "sterilizer-cycle/narrow-hollow" IS NOT FALSE OR "sterilizer-cycle/porous" IS NOT FALSE) AND "sterilizer-cycle/solid-unwrapped" IS NOT TRUE AND "sterilizer-cycle/packaging" IS NOT TRUE AND "sterilizer-cycle/wide-hollow" IS NOT TRUE AND "sterilizer-cycle/narrow-hollow" IS NOT TRUE AND "sterilizer-cycle/porous" IS NOT TRUE AND "sterilizer-cycle/hold-bare" IS NOT TRUE AND "sterilizer-cycle/hold-covered" IS NOT TRUE AND "sterilizer-cycle/drying" IS NOT TRUE AND "sterilizer-cycle/no-steam" IS NOT TRUE AND "sterilizer-cycle/no-dry-heat" IS NOT TRUE AND "sterilizer-cycle/hold-dry-heat" IS NOT TRUE AND "sterilizer-cycle/vacuum-not-below-the-table" IS NOT TRUE) AS "may be sterilizer-1/tightness-check",
    (("sterilizer-cycle/solid-unwrapped" IS NOT FALSE OR "sterilizer-cycle/packaging" IS NOT FALSE OR "sterilizer-cycle/wide-hollow" IS NOT FALSE OR "sterilizer-cycle/narrow-hollow" IS NOT FALSE OR "sterilizer-cycle/porous" IS NOT FALSE) AND "sterilizer-cycle/solid-unwrapped" IS NOT TRUE AND "sterilizer-cycle/packaging" IS NOT TRUE AND "sterilizer-cycle/wide-hollow" IS NOT TRUE AND "sterilizer-cycle/narrow-hollow" IS NOT TRUE AND "sterilizer-cycle/porous" IS NOT TRUE AND "sterilizer-cycle/hold-covered" IS NOT TRUE AND "sterilizer-cycle/drying" IS NOT TRUE AND "sterilizer-cycle/no-steam" IS NOT TRUE) AS "may be sterilizer-1/morning-air-check",
    (("sterilizer-cycle/solid-unwrapped" IS NOT FALSE OR "sterilizer-cycle/packaging" IS NOT FALSE OR "sterilizer-cycle/wide-hollow" IS NOT FALSE OR "sterilizer-cycle/narrow-hollow" IS NOT FALSE OR "sterilizer-cycle/porous" IS NOT FALSE) AND "sterilizer-cycle/no-steam" IS NOT TRUE) AS "may be sterilizer-1/pouches-and-hollows",
    (("sterilizer-cycle/solid-unwrapped" IS NOT FALSE OR "sterilizer-cycle/packaging" IS NOT FALSE OR "sterilizer-cycle/wide-hollow" IS NOT FALSE OR "sterilizer-cycle/narrow-hollow" IS NOT FALSE OR "sterilizer-cycle/porous" IS NOT FALSE) AND "sterilizer-cycle/wide-hollow" IS NOT TRUE AND "sterilizer-cycle/narrow-hollow" IS NOT TRUE AND "sterilizer-cycle/porous" IS NOT TRUE AND "sterilizer-cycle/no-steam" IS NOT TRUE) AS "may be sterilizer-1/pouches-slow-steam",
    (NOT (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/hold-gravity-cloth" IS FALSE) AND NOT (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-bare" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/no-dry-heat" IS FALSE AND "sterilizer-cycle/hold-dry-heat" IS FALSE AND "sterilizer-cycle/vacuum-not-below-the-table" IS FALSE) AND NOT (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE) AND NOT (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/no-steam" IS FALSE) AND NOT (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE)) AS "may be none"
  FROM "rules of sterilizer-cycle"
)
SELECT "rules of sterilizer-cycle"."situation id",
  CASE WHEN (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/hold-gravity-cloth" IS FALSE) THEN 'sterilizer-1/bare-and-quick' WHEN (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-bare" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/no-dry-heat" IS FALSE AND "sterilizer-cycle/hold-dry-heat" IS FALSE AND "sterilizer-cycle/vacuum-not-below-the-table" IS FALSE) THEN 'sterilizer-1/tightness-check' WHEN (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE) THEN 'sterilizer-1/morning-air-check' WHEN (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/no-steam" IS FALSE) THEN 'sterilizer-1/pouches-and-hollows' WHEN (("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE) THEN 'sterilizer-1/pouches-slow-steam' ELSE 'none' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be sterilizer-1/bare-and-quick" THEN ',sterilizer-1/bare-and-quick' ELSE '' END || CASE WHEN "may be sterilizer-1/tightness-check" THEN ',sterilizer-1/tightness-check' ELSE '' END || CASE WHEN "may be sterilizer-1/morning-air-check" THEN ',sterilizer-1/morning-air-check' ELSE '' END || CASE WHEN "may be sterilizer-1/pouches-and-hollows" THEN ',sterilizer-1/pouches-and-hollows' ELSE '' END || CASE WHEN "may be sterilizer-1/pouches-slow-steam" THEN ',sterilizer-1/pouches-slow-steam' ELSE '' END || CASE WHEN "may be none" THEN ',none' ELSE '' END) AS "possible",
  (((("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/hold-gravity-cloth" IS FALSE) OR NOT "may be sterilizer-1/bare-and-quick") AND ((("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-bare" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE AND "sterilizer-cycle/no-dry-heat" IS FALSE AND "sterilizer-cycle/hold-dry-heat" IS FALSE AND "sterilizer-cycle/vacuum-not-below-the-table" IS FALSE) OR NOT "may be sterilizer-1/tightness-check") AND ((("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/solid-unwrapped" IS FALSE AND "sterilizer-cycle/packaging" IS FALSE AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/hold-covered" IS FALSE AND "sterilizer-cycle/drying" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE) OR NOT "may be sterilizer-1/morning-air-check") AND ((("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/no-steam" IS FALSE) OR NOT "may be sterilizer-1/pouches-and-hollows") AND ((("sterilizer-cycle/solid-unwrapped" IS TRUE OR "sterilizer-cycle/packaging" IS TRUE OR "sterilizer-cycle/wide-hollow" IS TRUE OR "sterilizer-cycle/narrow-hollow" IS TRUE OR "sterilizer-cycle/porous" IS TRUE) AND "sterilizer-cycle/wide-hollow" IS FALSE AND "sterilizer-cycle/narrow-hollow" IS FALSE AND "sterilizer-cycle/porous" IS FALSE AND "sterilizer-cycle/no-steam" IS FALSE) OR NOT "may be sterilizer-1/pouches-slow-steam")) AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizer-cycle/solid-unwrapped" IS TRUE THEN ',sterilizer-cycle/solid-unwrapped' ELSE '' END || CASE WHEN "sterilizer-cycle/packaging" IS TRUE THEN ',sterilizer-cycle/packaging' ELSE '' END || CASE WHEN "sterilizer-cycle/wide-hollow" IS TRUE THEN ',sterilizer-cycle/wide-hollow' ELSE '' END || CASE WHEN "sterilizer-cycle/narrow-hollow" IS TRUE THEN ',sterilizer-cycle/narrow-hollow' ELSE '' END || CASE WHEN "sterilizer-cycle/porous" IS TRUE THEN ',sterilizer-cycle/porous' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-bare" IS TRUE THEN ',sterilizer-cycle/hold-bare' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-covered" IS TRUE THEN ',sterilizer-cycle/hold-covered' ELSE '' END || CASE WHEN "sterilizer-cycle/drying" IS TRUE THEN ',sterilizer-cycle/drying' ELSE '' END || CASE WHEN "sterilizer-cycle/no-steam" IS TRUE THEN ',sterilizer-cycle/no-steam' ELSE '' END || CASE WHEN "sterilizer-cycle/no-dry-heat" IS TRUE THEN ',sterilizer-cycle/no-dry-heat' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-dry-heat" IS TRUE THEN ',sterilizer-cycle/hold-dry-heat' ELSE '' END || CASE WHEN "sterilizer-cycle/vacuum-not-below-the-table" IS TRUE THEN ',sterilizer-cycle/vacuum-not-below-the-table' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-gravity-cloth" IS TRUE THEN ',sterilizer-cycle/hold-gravity-cloth' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizer-cycle/solid-unwrapped" IS NULL THEN ',sterilizer-cycle/solid-unwrapped' ELSE '' END || CASE WHEN "sterilizer-cycle/packaging" IS NULL THEN ',sterilizer-cycle/packaging' ELSE '' END || CASE WHEN "sterilizer-cycle/wide-hollow" IS NULL THEN ',sterilizer-cycle/wide-hollow' ELSE '' END || CASE WHEN "sterilizer-cycle/narrow-hollow" IS NULL THEN ',sterilizer-cycle/narrow-hollow' ELSE '' END || CASE WHEN "sterilizer-cycle/porous" IS NULL THEN ',sterilizer-cycle/porous' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-bare" IS NULL THEN ',sterilizer-cycle/hold-bare' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-covered" IS NULL THEN ',sterilizer-cycle/hold-covered' ELSE '' END || CASE WHEN "sterilizer-cycle/drying" IS NULL THEN ',sterilizer-cycle/drying' ELSE '' END || CASE WHEN "sterilizer-cycle/no-steam" IS NULL THEN ',sterilizer-cycle/no-steam' ELSE '' END || CASE WHEN "sterilizer-cycle/no-dry-heat" IS NULL THEN ',sterilizer-cycle/no-dry-heat' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-dry-heat" IS NULL THEN ',sterilizer-cycle/hold-dry-heat' ELSE '' END || CASE WHEN "sterilizer-cycle/vacuum-not-below-the-table" IS NULL THEN ',sterilizer-cycle/vacuum-not-below-the-table' ELSE '' END || CASE WHEN "sterilizer-cycle/hold-gravity-cloth" IS NULL THEN ',sterilizer-cycle/hold-gravity-cloth' ELSE '' END) AS "open"
FROM "rules of sterilizer-cycle" JOIN "possible of sterilizer-cycle" ON "possible of sterilizer-cycle"."situation id" = "rules of sterilizer-cycle"."situation id";

-- May this loaded sterilizer be started?
CREATE VIEW "decide sterilizer-load" AS WITH "given" AS (
  SELECT "situation id", "sterilizer.cleared", "sterilizer.cycle-fits", "sterilizer.packs-checked", "sterilizer.crowded", "sterilizer.traps-water", "sterilizer.metal-above", "machine.water-tank", "sterilizer.feed-water"
  FROM "facts"
),
"rules of sterilizer-load" AS (
  SELECT "given"."situation id",
    ("sterilizer.cleared" = TRUE AND "sterilizer.cycle-fits" = TRUE AND "sterilizer.packs-checked" = TRUE AND "sterilizer.crowded" = FALSE AND "sterilizer.traps-water" = FALSE AND "sterilizer.metal-above" = FALSE AND ("machine.water-tank" = FALSE OR ("machine.water-tank" = TRUE AND "sterilizer.feed-water" = TRUE))) AS "sterilizer-load/all-in-order",
    "sterilizer.cleared" = FALSE AS "sterilizer-load/not-cleared",
    "sterilizer.cycle-fits" = FALSE AS "sterilizer-load/wrong-cycle",
    "sterilizer.packs-checked" = FALSE AS "sterilizer-load/pack-not-right",
    ("machine.water-tank" = TRUE AND "sterilizer.feed-water" = FALSE) AS "sterilizer-load/feed-water-low",
    "sterilizer.crowded" = TRUE AS "sterilizer-load/crowded",
    ("sterilizer.traps-water" = TRUE OR "sterilizer.metal-above" = TRUE) AS "sterilizer-load/water-stands-or-drips"
  FROM "given"
),
"possible of sterilizer-load" AS (
  SELECT "situation id",
    ("sterilizer-load/all-in-order" IS NOT FALSE AND "sterilizer-load/crowded" IS NOT TRUE AND "sterilizer-load/water-stands-or-drips" IS NOT TRUE AND "sterilizer-load/not-cleared" IS NOT TRUE AND "sterilizer-load/wrong-cycle" IS NOT TRUE AND "sterilizer-load/pack-not-right" IS NOT TRUE AND "sterilizer-load/feed-water-low" IS NOT TRUE) AS "may be start",
    (("sterilizer-load/crowded" IS NOT FALSE OR "sterilizer-load/water-stands-or-drips" IS NOT FALSE OR ("sterilizer-load/all-in-order" IS NOT TRUE AND "sterilizer-load/not-cleared" IS NOT TRUE AND "sterilizer-load/wrong-cycle" IS NOT TRUE AND "sterilizer-load/pack-not-right" IS NOT TRUE AND "sterilizer-load/feed-water-low" IS NOT TRUE AND "sterilizer-load/crowded" IS NOT TRUE AND "sterilizer-load/water-stands-or-drips" IS NOT TRUE)) AND "sterilizer-load/not-cleared" IS NOT TRUE AND "sterilizer-load/wrong-cycle" IS NOT TRUE AND "sterilizer-load/pack-not-right" IS NOT TRUE AND "sterilizer-load/feed-water-low" IS NOT TRUE) AS "may be rearrange",
    ("sterilizer-load/not-cleared" IS NOT FALSE OR "sterilizer-load/wrong-cycle" IS NOT FALSE OR "sterilizer-load/pack-not-right" IS NOT FALSE OR "sterilizer-load/feed-water-low" IS NOT FALSE) AS "may be do-not-start"
  FROM "rules of sterilizer-load"
)
SELECT "rules of sterilizer-load"."situation id",
  CASE WHEN "may be do-not-start" THEN 'do-not-start' WHEN "may be rearrange" THEN 'rearrange' WHEN "may be start" THEN 'start' ELSE 'rearrange' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be start" THEN ',start' ELSE '' END || CASE WHEN "may be rearrange" THEN ',rearrange' ELSE '' END || CASE WHEN "may be do-not-start" THEN ',do-not-start' ELSE '' END) AS "possible",
  (CASE WHEN "may be start" THEN 1 ELSE 0 END + CASE WHEN "may be rearrange" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-start" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizer-load/all-in-order" IS TRUE THEN ',sterilizer-load/all-in-order' ELSE '' END || CASE WHEN "sterilizer-load/not-cleared" IS TRUE THEN ',sterilizer-load/not-cleared' ELSE '' END || CASE WHEN "sterilizer-load/wrong-cycle" IS TRUE THEN ',sterilizer-load/wrong-cycle' ELSE '' END || CASE WHEN "sterilizer-load/pack-not-right" IS TRUE THEN ',sterilizer-load/pack-not-right' ELSE '' END || CASE WHEN "sterilizer-load/feed-water-low" IS TRUE THEN ',sterilizer-load/feed-water-low' ELSE '' END || CASE WHEN "sterilizer-load/crowded" IS TRUE THEN ',sterilizer-load/crowded' ELSE '' END || CASE WHEN "sterilizer-load/water-stands-or-drips" IS TRUE THEN ',sterilizer-load/water-stands-or-drips' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizer-load/all-in-order" IS NULL THEN ',sterilizer-load/all-in-order' ELSE '' END || CASE WHEN "sterilizer-load/not-cleared" IS NULL THEN ',sterilizer-load/not-cleared' ELSE '' END || CASE WHEN "sterilizer-load/wrong-cycle" IS NULL THEN ',sterilizer-load/wrong-cycle' ELSE '' END || CASE WHEN "sterilizer-load/pack-not-right" IS NULL THEN ',sterilizer-load/pack-not-right' ELSE '' END || CASE WHEN "sterilizer-load/feed-water-low" IS NULL THEN ',sterilizer-load/feed-water-low' ELSE '' END || CASE WHEN "sterilizer-load/crowded" IS NULL THEN ',sterilizer-load/crowded' ELSE '' END || CASE WHEN "sterilizer-load/water-stands-or-drips" IS NULL THEN ',sterilizer-load/water-stands-or-drips' ELSE '' END) AS "open"
FROM "rules of sterilizer-load" JOIN "possible of sterilizer-load" ON "possible of sterilizer-load"."situation id" = "rules of sterilizer-load"."situation id";

-- By what is this instrument sterilized?
CREATE VIEW "decide sterilizing-method" AS WITH "given" AS (
  SELECT "situation id", "instrument.heat-tolerant", "instrument.kind", COALESCE("clinic.machines", 'heat-sealer,steam-sterilizer,ultrasonic-bath,washer') AS "clinic.machines", "instrument.materials", "use.level", "instrument.implantable", "instrument.single-use", "use.class", "instrument.contact"
  FROM "facts"
),
"rules of device-class" AS (
  SELECT "given"."situation id",
    "instrument.contact" IN ('intact-skin') AS "device-class/skin-only",
    "instrument.contact" IN ('mucous-membrane') AS "device-class/mucous-membrane",
    "instrument.contact" IN ('tissue-or-bone') AS "device-class/tissue-or-bone",
    "instrument.kind" IN ('handpiece', 'bur', 'syringe-tip', 'suction-tip', 'impression-tray', 'x-ray-holder', 'clamp', 'light-guide') AS "device-class/used-in-the-mouth",
    "instrument.kind" IN ('root-canal-file', 'scaler-tip', 'scalpel-handle') AS "device-class/enters-tissue"
  FROM "given"
),
"possible of device-class" AS (
  SELECT "situation id",
    ("device-class/skin-only" IS NOT FALSE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be noncritical",
    (("device-class/mucous-membrane" IS NOT FALSE OR "device-class/used-in-the-mouth" IS NOT FALSE) AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE) AS "may be semicritical",
    ("device-class/tissue-or-bone" IS NOT FALSE OR "device-class/enters-tissue" IS NOT FALSE OR ("device-class/skin-only" IS NOT TRUE AND "device-class/mucous-membrane" IS NOT TRUE AND "device-class/tissue-or-bone" IS NOT TRUE AND "device-class/used-in-the-mouth" IS NOT TRUE AND "device-class/enters-tissue" IS NOT TRUE)) AS "may be critical"
  FROM "rules of device-class"
),
"rules of processing-level" AS (
  SELECT "given"."situation id",
    CASE WHEN NOT ("use.class may be semicritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be noncritical" THEN FALSE END AS "processing-level/noncritical",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be semicritical" THEN FALSE END AND "instrument.kind" NOT IN ('handpiece', 'cassette') AND "instrument.heat-tolerant" = TRUE) AS "processing-level/semicritical-that-stands-heat",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be critical") THEN TRUE WHEN NOT "use.class may be semicritical" THEN FALSE END AND "instrument.kind" NOT IN ('handpiece', 'cassette') AND "instrument.heat-tolerant" = FALSE) AS "processing-level/semicritical-that-does-not",
    (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be semicritical") THEN TRUE WHEN NOT "use.class may be critical" THEN FALSE END OR "instrument.implantable" = TRUE) AS "processing-level/critical",
    "instrument.kind" IN ('handpiece') AS "processing-level/handpiece",
    "instrument.kind" IN ('cassette') AS "processing-level/cassette",
    "instrument.single-use" = TRUE AS "processing-level/single-use",
    ("instrument.heat-tolerant" = FALSE AND "instrument.single-use" = FALSE AND (CASE WHEN NOT ("use.class may be noncritical" OR "use.class may be semicritical") THEN TRUE WHEN NOT "use.class may be critical" THEN FALSE END OR "instrument.kind" IN ('handpiece', 'cassette') OR "instrument.implantable" = TRUE)) AS "processing-level/needs-heat-and-does-not-stand-it",
    ("instrument.kind" IN ('syringe-tip', 'scaler-tip') AND "instrument.heat-tolerant" = FALSE AND "instrument.single-use" = FALSE) AS "processing-level/parts-on-the-lines"
  FROM "given" JOIN (SELECT "situation id" AS "key use.class", "may be noncritical" AS "use.class may be noncritical", "may be semicritical" AS "use.class may be semicritical", "may be critical" AS "use.class may be critical" FROM "possible of device-class") AS "answer use.class" ON "answer use.class"."key use.class" = "given"."situation id"
),
"possible of processing-level" AS (
  SELECT "situation id",
    ("processing-level/noncritical" IS NOT FALSE AND "processing-level/semicritical-that-does-not" IS NOT TRUE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be clean-and-wipe",
    ("processing-level/semicritical-that-does-not" IS NOT FALSE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be high-level-disinfect",
    (("processing-level/semicritical-that-stands-heat" IS NOT FALSE OR "processing-level/critical" IS NOT FALSE OR "processing-level/handpiece" IS NOT FALSE OR "processing-level/cassette" IS NOT FALSE OR ("processing-level/noncritical" IS NOT TRUE AND "processing-level/semicritical-that-stands-heat" IS NOT TRUE AND "processing-level/semicritical-that-does-not" IS NOT TRUE AND "processing-level/critical" IS NOT TRUE AND "processing-level/handpiece" IS NOT TRUE AND "processing-level/cassette" IS NOT TRUE AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE)) AND "processing-level/single-use" IS NOT TRUE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be heat-sterilize",
    ("processing-level/single-use" IS NOT FALSE AND "processing-level/needs-heat-and-does-not-stand-it" IS NOT TRUE AND "processing-level/parts-on-the-lines" IS NOT TRUE) AS "may be discard",
    ("processing-level/needs-heat-and-does-not-stand-it" IS NOT FALSE OR "processing-level/parts-on-the-lines" IS NOT FALSE) AS "may be do-not-use"
  FROM "rules of processing-level"
),
"stated use.level" AS (
  SELECT "given"."situation id",
    CASE WHEN (("given"."use.level" = 'clean-and-wipe' AND "may be clean-and-wipe") OR ("given"."use.level" = 'high-level-disinfect' AND "may be high-level-disinfect") OR ("given"."use.level" = 'heat-sterilize' AND "may be heat-sterilize") OR ("given"."use.level" = 'discard' AND "may be discard") OR ("given"."use.level" = 'do-not-use' AND "may be do-not-use")) THEN "given"."use.level" = 'clean-and-wipe' ELSE "may be clean-and-wipe" END AS "may be clean-and-wipe",
    CASE WHEN (("given"."use.level" = 'clean-and-wipe' AND "may be clean-and-wipe") OR ("given"."use.level" = 'high-level-disinfect' AND "may be high-level-disinfect") OR ("given"."use.level" = 'heat-sterilize' AND "may be heat-sterilize") OR ("given"."use.level" = 'discard' AND "may be discard") OR ("given"."use.level" = 'do-not-use' AND "may be do-not-use")) THEN "given"."use.level" = 'high-level-disinfect' ELSE "may be high-level-disinfect" END AS "may be high-level-disinfect",
    CASE WHEN (("given"."use.level" = 'clean-and-wipe' AND "may be clean-and-wipe") OR ("given"."use.level" = 'high-level-disinfect' AND "may be high-level-disinfect") OR ("given"."use.level" = 'heat-sterilize' AND "may be heat-sterilize") OR ("given"."use.level" = 'discard' AND "may be discard") OR ("given"."use.level" = 'do-not-use' AND "may be do-not-use")) THEN "given"."use.level" = 'heat-sterilize' ELSE "may be heat-sterilize" END AS "may be heat-sterilize",
    CASE WHEN (("given"."use.level" = 'clean-and-wipe' AND "may be clean-and-wipe") OR ("given"."use.level" = 'high-level-disinfect' AND "may be high-level-disinfect") OR ("given"."use.level" = 'heat-sterilize' AND "may be heat-sterilize") OR ("given"."use.level" = 'discard' AND "may be discard") OR ("given"."use.level" = 'do-not-use' AND "may be do-not-use")) THEN "given"."use.level" = 'discard' ELSE "may be discard" END AS "may be discard",
    CASE WHEN (("given"."use.level" = 'clean-and-wipe' AND "may be clean-and-wipe") OR ("given"."use.level" = 'high-level-disinfect' AND "may be high-level-disinfect") OR ("given"."use.level" = 'heat-sterilize' AND "may be heat-sterilize") OR ("given"."use.level" = 'discard' AND "may be discard") OR ("given"."use.level" = 'do-not-use' AND "may be do-not-use")) THEN "given"."use.level" = 'do-not-use' ELSE "may be do-not-use" END AS "may be do-not-use"
  FROM "given" JOIN "possible of processing-level" ON "possible of processing-level"."situation id" = "given"."situation id"
),
"rules of sterilizing-method" AS (
  SELECT "given"."situation id",
    CASE WHEN NOT ("use.level may be high-level-disinfect" OR "use.level may be heat-sterilize" OR "use.level may be discard" OR "use.level may be do-not-use") THEN TRUE WHEN NOT "use.level may be clean-and-wipe" THEN FALSE END AS "sterilizing-method/no-sterilizing-asked",
    (CASE WHEN NOT ("use.level may be clean-and-wipe" OR "use.level may be high-level-disinfect" OR "use.level may be discard" OR "use.level may be do-not-use") THEN TRUE WHEN NOT "use.level may be heat-sterilize" THEN FALSE END AND "instrument.heat-tolerant" = TRUE) AS "sterilizing-method/steam-first",
    (CASE WHEN NOT ("use.level may be clean-and-wipe" OR "use.level may be high-level-disinfect" OR "use.level may be discard" OR "use.level may be do-not-use") THEN TRUE WHEN NOT "use.level may be heat-sterilize" THEN FALSE END AND "instrument.heat-tolerant" = TRUE AND "instrument.kind" NOT IN ('handpiece') AND POSITION(',dry-heat-sterilizer,' IN ',' || "clinic.machines" || ',') > 0 AND (POSITION(',carbon-steel,' IN ',' || "instrument.materials" || ',') > 0 AND NOT (POSITION(',heat-sensitive-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',heat-resistant-plastic,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',silicone-or-rubber,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',textile,' IN ',' || "instrument.materials" || ',') > 0 OR POSITION(',optical-fibre,' IN ',' || "instrument.materials" || ',') > 0))) AS "sterilizing-method/rusts-in-steam",
    CASE WHEN NOT ("use.level may be clean-and-wipe" OR "use.level may be heat-sterilize" OR "use.level may be discard" OR "use.level may be do-not-use") THEN TRUE WHEN NOT "use.level may be high-level-disinfect" THEN FALSE END AS "sterilizing-method/no-heat-but-only-the-mouth",
    CASE WHEN NOT ("use.level may be clean-and-wipe" OR "use.level may be high-level-disinfect" OR "use.level may be heat-sterilize") THEN TRUE WHEN NOT ("use.level may be discard" OR "use.level may be do-not-use") THEN FALSE END AS "sterilizing-method/not-used-again"
  FROM "given" JOIN (SELECT "situation id" AS "key use.level", "may be clean-and-wipe" AS "use.level may be clean-and-wipe", "may be high-level-disinfect" AS "use.level may be high-level-disinfect", "may be heat-sterilize" AS "use.level may be heat-sterilize", "may be discard" AS "use.level may be discard", "may be do-not-use" AS "use.level may be do-not-use" FROM "stated use.level") AS "answer use.level" ON "answer use.level"."key use.level" = "given"."situation id"
),
"possible of sterilizing-method" AS (
  SELECT "situation id",
    ("sterilizing-method/no-sterilizing-asked" IS NOT FALSE AND "sterilizing-method/steam-first" IS NOT TRUE AND "sterilizing-method/rusts-in-steam" IS NOT TRUE AND "sterilizing-method/no-heat-but-only-the-mouth" IS NOT TRUE AND "sterilizing-method/not-used-again" IS NOT TRUE) AS "may be not-sterilized",
    ("sterilizing-method/steam-first" IS NOT FALSE AND "sterilizing-method/rusts-in-steam" IS NOT TRUE AND "sterilizing-method/no-heat-but-only-the-mouth" IS NOT TRUE AND "sterilizing-method/not-used-again" IS NOT TRUE) AS "may be steam",
    ("sterilizing-method/rusts-in-steam" IS NOT FALSE AND "sterilizing-method/no-heat-but-only-the-mouth" IS NOT TRUE AND "sterilizing-method/not-used-again" IS NOT TRUE) AS "may be dry-heat",
    ("sterilizing-method/no-heat-but-only-the-mouth" IS NOT FALSE AND "sterilizing-method/not-used-again" IS NOT TRUE) AS "may be liquid",
    ("sterilizing-method/not-used-again" IS NOT FALSE OR ("sterilizing-method/no-sterilizing-asked" IS NOT TRUE AND "sterilizing-method/steam-first" IS NOT TRUE AND "sterilizing-method/rusts-in-steam" IS NOT TRUE AND "sterilizing-method/no-heat-but-only-the-mouth" IS NOT TRUE AND "sterilizing-method/not-used-again" IS NOT TRUE)) AS "may be not-allowed"
  FROM "rules of sterilizing-method"
)
SELECT "rules of sterilizing-method"."situation id",
  CASE WHEN "may be not-allowed" THEN 'not-allowed' WHEN "may be liquid" THEN 'liquid' WHEN "may be dry-heat" THEN 'dry-heat' WHEN "may be steam" THEN 'steam' WHEN "may be not-sterilized" THEN 'not-sterilized' ELSE 'not-allowed' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be not-sterilized" THEN ',not-sterilized' ELSE '' END || CASE WHEN "may be steam" THEN ',steam' ELSE '' END || CASE WHEN "may be dry-heat" THEN ',dry-heat' ELSE '' END || CASE WHEN "may be liquid" THEN ',liquid' ELSE '' END || CASE WHEN "may be not-allowed" THEN ',not-allowed' ELSE '' END) AS "possible",
  (CASE WHEN "may be not-sterilized" THEN 1 ELSE 0 END + CASE WHEN "may be steam" THEN 1 ELSE 0 END + CASE WHEN "may be dry-heat" THEN 1 ELSE 0 END + CASE WHEN "may be liquid" THEN 1 ELSE 0 END + CASE WHEN "may be not-allowed" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizing-method/no-sterilizing-asked" IS TRUE THEN ',sterilizing-method/no-sterilizing-asked' ELSE '' END || CASE WHEN "sterilizing-method/steam-first" IS TRUE THEN ',sterilizing-method/steam-first' ELSE '' END || CASE WHEN "sterilizing-method/rusts-in-steam" IS TRUE THEN ',sterilizing-method/rusts-in-steam' ELSE '' END || CASE WHEN "sterilizing-method/no-heat-but-only-the-mouth" IS TRUE THEN ',sterilizing-method/no-heat-but-only-the-mouth' ELSE '' END || CASE WHEN "sterilizing-method/not-used-again" IS TRUE THEN ',sterilizing-method/not-used-again' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "sterilizing-method/no-sterilizing-asked" IS NULL THEN ',sterilizing-method/no-sterilizing-asked' ELSE '' END || CASE WHEN "sterilizing-method/steam-first" IS NULL THEN ',sterilizing-method/steam-first' ELSE '' END || CASE WHEN "sterilizing-method/rusts-in-steam" IS NULL THEN ',sterilizing-method/rusts-in-steam' ELSE '' END || CASE WHEN "sterilizing-method/no-heat-but-only-the-mouth" IS NULL THEN ',sterilizing-method/no-heat-but-only-the-mouth' ELSE '' END || CASE WHEN "sterilizing-method/not-used-again" IS NULL THEN ',sterilizing-method/not-used-again' ELSE '' END) AS "open"
FROM "rules of sterilizing-method" JOIN "possible of sterilizing-method" ON "possible of sterilizing-method"."situation id" = "rules of sterilizing-method"."situation id";

-- Someone who comes in is ill. What now?
CREATE VIEW "decide arriving-patient" AS WITH "given" AS (
  SELECT "situation id", "visit.signs", "visit.urgent"
  FROM "facts"
),
"rules of arriving-patient" AS (
  SELECT "given"."situation id",
    "visit.signs" IN ('no-visit-sign') AS "arriving-patient/well",
    "visit.signs" IN ('cold-visit-sign') AS "arriving-patient/cold",
    ("visit.signs" IN ('fever-visit-sign', 'stomach-visit-sign') AND ("visit.signs" IN ('fever-visit-sign', 'stomach-visit-sign') AND "visit.urgent" = TRUE)) AS "arriving-patient/ill-and-urgent",
    ("visit.signs" IN ('fever-visit-sign', 'stomach-visit-sign') AND ("visit.signs" IN ('fever-visit-sign', 'stomach-visit-sign') AND "visit.urgent" = FALSE)) AS "arriving-patient/ill-and-can-wait",
    "visit.signs" IN ('rash-visit-sign', 'long-cough-visit-sign') AS "arriving-patient/by-air"
  FROM "given"
),
"possible of arriving-patient" AS (
  SELECT "situation id",
    ("arriving-patient/well" IS NOT FALSE AND "arriving-patient/cold" IS NOT TRUE AND "arriving-patient/ill-and-urgent" IS NOT TRUE AND "arriving-patient/ill-and-can-wait" IS NOT TRUE AND "arriving-patient/by-air" IS NOT TRUE) AS "may be go-on",
    (("arriving-patient/cold" IS NOT FALSE OR "arriving-patient/ill-and-urgent" IS NOT FALSE) AND "arriving-patient/ill-and-can-wait" IS NOT TRUE AND "arriving-patient/by-air" IS NOT TRUE) AS "may be mask-and-apart",
    ("arriving-patient/ill-and-can-wait" IS NOT FALSE AND "arriving-patient/by-air" IS NOT TRUE) AS "may be postpone",
    ("arriving-patient/by-air" IS NOT FALSE OR ("arriving-patient/well" IS NOT TRUE AND "arriving-patient/cold" IS NOT TRUE AND "arriving-patient/ill-and-urgent" IS NOT TRUE AND "arriving-patient/ill-and-can-wait" IS NOT TRUE AND "arriving-patient/by-air" IS NOT TRUE)) AS "may be call-first"
  FROM "rules of arriving-patient"
)
SELECT "rules of arriving-patient"."situation id",
  CASE WHEN "may be call-first" THEN 'call-first' WHEN "may be postpone" THEN 'postpone' WHEN "may be mask-and-apart" THEN 'mask-and-apart' WHEN "may be go-on" THEN 'go-on' ELSE 'call-first' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be go-on" THEN ',go-on' ELSE '' END || CASE WHEN "may be mask-and-apart" THEN ',mask-and-apart' ELSE '' END || CASE WHEN "may be postpone" THEN ',postpone' ELSE '' END || CASE WHEN "may be call-first" THEN ',call-first' ELSE '' END) AS "possible",
  (CASE WHEN "may be go-on" THEN 1 ELSE 0 END + CASE WHEN "may be mask-and-apart" THEN 1 ELSE 0 END + CASE WHEN "may be postpone" THEN 1 ELSE 0 END + CASE WHEN "may be call-first" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "arriving-patient/well" IS TRUE THEN ',arriving-patient/well' ELSE '' END || CASE WHEN "arriving-patient/cold" IS TRUE THEN ',arriving-patient/cold' ELSE '' END || CASE WHEN "arriving-patient/ill-and-urgent" IS TRUE THEN ',arriving-patient/ill-and-urgent' ELSE '' END || CASE WHEN "arriving-patient/ill-and-can-wait" IS TRUE THEN ',arriving-patient/ill-and-can-wait' ELSE '' END || CASE WHEN "arriving-patient/by-air" IS TRUE THEN ',arriving-patient/by-air' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "arriving-patient/well" IS NULL THEN ',arriving-patient/well' ELSE '' END || CASE WHEN "arriving-patient/cold" IS NULL THEN ',arriving-patient/cold' ELSE '' END || CASE WHEN "arriving-patient/ill-and-urgent" IS NULL THEN ',arriving-patient/ill-and-urgent' ELSE '' END || CASE WHEN "arriving-patient/ill-and-can-wait" IS NULL THEN ',arriving-patient/ill-and-can-wait' ELSE '' END || CASE WHEN "arriving-patient/by-air" IS NULL THEN ',arriving-patient/by-air' ELSE '' END) AS "open"
FROM "rules of arriving-patient" JOIN "possible of arriving-patient" ON "possible of arriving-patient"."situation id" = "rules of arriving-patient"."situation id";

-- The patient has left. What does this surface need?
CREATE VIEW "decide surface-care" AS WITH "given" AS (
  SELECT "situation id", "surface.kind", "surface.blood", "surface.cover"
  FROM "facts"
),
"rules of surface-care" AS (
  SELECT "given"."situation id",
    ("surface.kind" IN ('surface-housekeeping') AND "surface.blood" = FALSE) AS "surface-care/housekeeping",
    (("surface.kind" IN ('surface-near-patient') AND "surface.cover" IN ('cover-whole')) AND "surface.blood" = FALSE) AS "surface-care/covered",
    (("surface.kind" IN ('surface-near-patient') AND "surface.cover" IN ('cover-failed', 'cover-none')) AND "surface.blood" = FALSE) AS "surface-care/uncovered",
    "surface.blood" = TRUE AS "surface-care/blood"
  FROM "given"
),
"possible of surface-care" AS (
  SELECT "situation id",
    ("surface-care/housekeeping" IS NOT FALSE AND "surface-care/covered" IS NOT TRUE AND "surface-care/uncovered" IS NOT TRUE AND "surface-care/blood" IS NOT TRUE) AS "may be clean",
    ("surface-care/covered" IS NOT FALSE AND "surface-care/uncovered" IS NOT TRUE AND "surface-care/blood" IS NOT TRUE) AS "may be change-cover",
    ("surface-care/uncovered" IS NOT FALSE AND "surface-care/blood" IS NOT TRUE) AS "may be disinfect",
    ("surface-care/blood" IS NOT FALSE OR ("surface-care/housekeeping" IS NOT TRUE AND "surface-care/covered" IS NOT TRUE AND "surface-care/uncovered" IS NOT TRUE AND "surface-care/blood" IS NOT TRUE)) AS "may be disinfect-blood"
  FROM "rules of surface-care"
)
SELECT "rules of surface-care"."situation id",
  CASE WHEN "may be disinfect-blood" THEN 'disinfect-blood' WHEN "may be disinfect" THEN 'disinfect' WHEN "may be change-cover" THEN 'change-cover' WHEN "may be clean" THEN 'clean' ELSE 'disinfect-blood' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be clean" THEN ',clean' ELSE '' END || CASE WHEN "may be change-cover" THEN ',change-cover' ELSE '' END || CASE WHEN "may be disinfect" THEN ',disinfect' ELSE '' END || CASE WHEN "may be disinfect-blood" THEN ',disinfect-blood' ELSE '' END) AS "possible",
  (CASE WHEN "may be clean" THEN 1 ELSE 0 END + CASE WHEN "may be change-cover" THEN 1 ELSE 0 END + CASE WHEN "may be disinfect" THEN 1 ELSE 0 END + CASE WHEN "may be disinfect-blood" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "surface-care/housekeeping" IS TRUE THEN ',surface-care/housekeeping' ELSE '' END || CASE WHEN "surface-care/covered" IS TRUE THEN ',surface-care/covered' ELSE '' END || CASE WHEN "surface-care/uncovered" IS TRUE THEN ',surface-care/uncovered' ELSE '' END || CASE WHEN "surface-care/blood" IS TRUE THEN ',surface-care/blood' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "surface-care/housekeeping" IS NULL THEN ',surface-care/housekeeping' ELSE '' END || CASE WHEN "surface-care/covered" IS NULL THEN ',surface-care/covered' ELSE '' END || CASE WHEN "surface-care/uncovered" IS NULL THEN ',surface-care/uncovered' ELSE '' END || CASE WHEN "surface-care/blood" IS NULL THEN ',surface-care/blood' ELSE '' END) AS "open"
FROM "rules of surface-care" JOIN "possible of surface-care" ON "possible of surface-care"."situation id" = "rules of surface-care"."situation id";

-- May this vial, cartridge or bag be used now?
CREATE VIEW "decide vial-use" AS WITH "given" AS (
  SELECT "situation id", "vial.opened", "vial.sound", "vial.kind", "vial.used-needle", "vial.dated", "vial.open-for", "vial.other-patient"
  FROM "facts"
),
"rules of vial-use" AS (
  SELECT "given"."situation id",
    ("vial.opened" = FALSE AND "vial.sound" = TRUE) AS "vial-use/new",
    ("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE AND "vial.sound" = TRUE AND (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.used-needle" = FALSE) AND (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.dated" = TRUE) AND (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE AND (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.dated" = TRUE)) AND "vial.open-for" <= 2.8e+1)) AS "vial-use/multidose-in-time",
    ("vial.opened" = TRUE AND (("vial.kind" IN ('single-dose-vial', 'anesthetic-cartridge', 'infusion-bag') AND "vial.opened" = TRUE) AND "vial.other-patient" = FALSE) AND "vial.sound" = TRUE) AS "vial-use/same-patient",
    "vial.sound" = FALSE AS "vial-use/unsound",
    (("vial.kind" IN ('single-dose-vial', 'anesthetic-cartridge', 'infusion-bag') AND "vial.opened" = TRUE) AND "vial.other-patient" = TRUE) AS "vial-use/another-patient",
    ((("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.used-needle" = TRUE) OR (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.dated" = FALSE) OR (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE AND (("vial.kind" IN ('multidose-vial') AND "vial.opened" = TRUE) AND "vial.dated" = TRUE)) AND "vial.open-for" > 2.8e+1)) AS "vial-use/spoiled"
  FROM "given"
),
"possible of vial-use" AS (
  SELECT "situation id",
    (("vial-use/new" IS NOT FALSE OR "vial-use/multidose-in-time" IS NOT FALSE) AND "vial-use/same-patient" IS NOT TRUE AND "vial-use/unsound" IS NOT TRUE AND "vial-use/another-patient" IS NOT TRUE AND "vial-use/spoiled" IS NOT TRUE) AS "may be use",
    ("vial-use/same-patient" IS NOT FALSE AND "vial-use/unsound" IS NOT TRUE AND "vial-use/another-patient" IS NOT TRUE AND "vial-use/spoiled" IS NOT TRUE) AS "may be this-patient",
    ("vial-use/unsound" IS NOT FALSE OR "vial-use/another-patient" IS NOT FALSE OR "vial-use/spoiled" IS NOT FALSE OR ("vial-use/new" IS NOT TRUE AND "vial-use/multidose-in-time" IS NOT TRUE AND "vial-use/same-patient" IS NOT TRUE AND "vial-use/unsound" IS NOT TRUE AND "vial-use/another-patient" IS NOT TRUE AND "vial-use/spoiled" IS NOT TRUE)) AS "may be throw-away"
  FROM "rules of vial-use"
)
SELECT "rules of vial-use"."situation id",
  CASE WHEN "may be throw-away" THEN 'throw-away' WHEN "may be this-patient" THEN 'this-patient' WHEN "may be use" THEN 'use' ELSE 'throw-away' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be use" THEN ',use' ELSE '' END || CASE WHEN "may be this-patient" THEN ',this-patient' ELSE '' END || CASE WHEN "may be throw-away" THEN ',throw-away' ELSE '' END) AS "possible",
  (CASE WHEN "may be use" THEN 1 ELSE 0 END + CASE WHEN "may be this-patient" THEN 1 ELSE 0 END + CASE WHEN "may be throw-away" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "vial-use/new" IS TRUE THEN ',vial-use/new' ELSE '' END || CASE WHEN "vial-use/multidose-in-time" IS TRUE THEN ',vial-use/multidose-in-time' ELSE '' END || CASE WHEN "vial-use/same-patient" IS TRUE THEN ',vial-use/same-patient' ELSE '' END || CASE WHEN "vial-use/unsound" IS TRUE THEN ',vial-use/unsound' ELSE '' END || CASE WHEN "vial-use/another-patient" IS TRUE THEN ',vial-use/another-patient' ELSE '' END || CASE WHEN "vial-use/spoiled" IS TRUE THEN ',vial-use/spoiled' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "vial-use/new" IS NULL THEN ',vial-use/new' ELSE '' END || CASE WHEN "vial-use/multidose-in-time" IS NULL THEN ',vial-use/multidose-in-time' ELSE '' END || CASE WHEN "vial-use/same-patient" IS NULL THEN ',vial-use/same-patient' ELSE '' END || CASE WHEN "vial-use/unsound" IS NULL THEN ',vial-use/unsound' ELSE '' END || CASE WHEN "vial-use/another-patient" IS NULL THEN ',vial-use/another-patient' ELSE '' END || CASE WHEN "vial-use/spoiled" IS NULL THEN ',vial-use/spoiled' ELSE '' END) AS "open"
FROM "rules of vial-use" JOIN "possible of vial-use" ON "possible of vial-use"."situation id" = "rules of vial-use"."situation id";

-- Into which container does this go?
CREATE VIEW "decide waste-route" AS WITH "given" AS (
  SELECT "situation id", "waste.kind"
  FROM "facts"
),
"rules of waste-route" AS (
  SELECT "given"."situation id",
    "waste.kind" IN ('waste-dry') AS "waste-route/dry",
    "waste.kind" IN ('waste-dripping', 'waste-tooth') AS "waste-route/dripping",
    "waste.kind" IN ('waste-sharp') AS "waste-route/sharp",
    "waste.kind" IN ('waste-amalgam', 'waste-tooth-amalgam') AS "waste-route/amalgam",
    "waste.kind" IN ('waste-medicine', 'waste-chemical', 'waste-unknown') AS "waste-route/medicine-or-chemical"
  FROM "given"
),
"possible of waste-route" AS (
  SELECT "situation id",
    ("waste-route/dry" IS NOT FALSE AND "waste-route/dripping" IS NOT TRUE AND "waste-route/sharp" IS NOT TRUE AND "waste-route/amalgam" IS NOT TRUE AND "waste-route/medicine-or-chemical" IS NOT TRUE) AS "may be general-waste",
    ("waste-route/dripping" IS NOT FALSE AND "waste-route/sharp" IS NOT TRUE AND "waste-route/amalgam" IS NOT TRUE AND "waste-route/medicine-or-chemical" IS NOT TRUE) AS "may be infectious-bag",
    ("waste-route/sharp" IS NOT FALSE AND "waste-route/amalgam" IS NOT TRUE AND "waste-route/medicine-or-chemical" IS NOT TRUE) AS "may be sharps-box",
    ("waste-route/amalgam" IS NOT FALSE AND "waste-route/medicine-or-chemical" IS NOT TRUE) AS "may be amalgam-box",
    ("waste-route/medicine-or-chemical" IS NOT FALSE OR ("waste-route/dry" IS NOT TRUE AND "waste-route/dripping" IS NOT TRUE AND "waste-route/sharp" IS NOT TRUE AND "waste-route/amalgam" IS NOT TRUE AND "waste-route/medicine-or-chemical" IS NOT TRUE)) AS "may be ask-first"
  FROM "rules of waste-route"
)
SELECT "rules of waste-route"."situation id",
  CASE WHEN "may be ask-first" THEN 'ask-first' WHEN "may be amalgam-box" THEN 'amalgam-box' WHEN "may be sharps-box" THEN 'sharps-box' WHEN "may be infectious-bag" THEN 'infectious-bag' WHEN "may be general-waste" THEN 'general-waste' ELSE 'ask-first' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be general-waste" THEN ',general-waste' ELSE '' END || CASE WHEN "may be infectious-bag" THEN ',infectious-bag' ELSE '' END || CASE WHEN "may be sharps-box" THEN ',sharps-box' ELSE '' END || CASE WHEN "may be amalgam-box" THEN ',amalgam-box' ELSE '' END || CASE WHEN "may be ask-first" THEN ',ask-first' ELSE '' END) AS "possible",
  (CASE WHEN "may be general-waste" THEN 1 ELSE 0 END + CASE WHEN "may be infectious-bag" THEN 1 ELSE 0 END + CASE WHEN "may be sharps-box" THEN 1 ELSE 0 END + CASE WHEN "may be amalgam-box" THEN 1 ELSE 0 END + CASE WHEN "may be ask-first" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "waste-route/dry" IS TRUE THEN ',waste-route/dry' ELSE '' END || CASE WHEN "waste-route/dripping" IS TRUE THEN ',waste-route/dripping' ELSE '' END || CASE WHEN "waste-route/sharp" IS TRUE THEN ',waste-route/sharp' ELSE '' END || CASE WHEN "waste-route/amalgam" IS TRUE THEN ',waste-route/amalgam' ELSE '' END || CASE WHEN "waste-route/medicine-or-chemical" IS TRUE THEN ',waste-route/medicine-or-chemical' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "waste-route/dry" IS NULL THEN ',waste-route/dry' ELSE '' END || CASE WHEN "waste-route/dripping" IS NULL THEN ',waste-route/dripping' ELSE '' END || CASE WHEN "waste-route/sharp" IS NULL THEN ',waste-route/sharp' ELSE '' END || CASE WHEN "waste-route/amalgam" IS NULL THEN ',waste-route/amalgam' ELSE '' END || CASE WHEN "waste-route/medicine-or-chemical" IS NULL THEN ',waste-route/medicine-or-chemical' ELSE '' END) AS "open"
FROM "rules of waste-route" JOIN "possible of waste-route" ON "possible of waste-route"."situation id" = "rules of waste-route"."situation id";

-- May this person work today, and how?
CREATE VIEW "decide work-restriction" AS WITH "given" AS (
  SELECT "situation id", "staff.signs", "staff.well-for"
  FROM "facts"
),
"rules of work-restriction" AS (
  SELECT "given"."situation id",
    "staff.signs" IN ('staff-well') AS "work-restriction/well",
    ("staff.signs" IN ('staff-stomach') AND ("staff.signs" IN ('staff-fever', 'staff-stomach') AND "staff.well-for" >= 4.8e+1)) AS "work-restriction/stomach-over",
    "staff.signs" IN ('staff-cold', 'staff-lip') AS "work-restriction/cold",
    ("staff.signs" IN ('staff-fever') AND ("staff.signs" IN ('staff-fever', 'staff-stomach') AND "staff.well-for" >= 2.4e+1)) AS "work-restriction/fever-over",
    "staff.signs" IN ('staff-eye', 'staff-hand') AS "work-restriction/eye-or-hand",
    (("staff.signs" IN ('staff-fever') AND ("staff.signs" IN ('staff-fever', 'staff-stomach') AND "staff.well-for" < 2.4e+1)) OR ("staff.signs" IN ('staff-stomach') AND ("staff.signs" IN ('staff-fever', 'staff-stomach') AND "staff.well-for" < 4.8e+1))) AS "work-restriction/still-ill",
    "staff.signs" IN ('staff-rash', 'staff-long-cough') AS "work-restriction/by-air"
  FROM "given"
),
"possible of work-restriction" AS (
  SELECT "situation id",
    (("work-restriction/well" IS NOT FALSE OR "work-restriction/stomach-over" IS NOT FALSE) AND "work-restriction/cold" IS NOT TRUE AND "work-restriction/fever-over" IS NOT TRUE AND "work-restriction/eye-or-hand" IS NOT TRUE AND "work-restriction/still-ill" IS NOT TRUE AND "work-restriction/by-air" IS NOT TRUE) AS "may be works",
    (("work-restriction/cold" IS NOT FALSE OR "work-restriction/fever-over" IS NOT FALSE) AND "work-restriction/eye-or-hand" IS NOT TRUE AND "work-restriction/still-ill" IS NOT TRUE AND "work-restriction/by-air" IS NOT TRUE) AS "may be works-masked",
    ("work-restriction/eye-or-hand" IS NOT FALSE AND "work-restriction/still-ill" IS NOT TRUE AND "work-restriction/by-air" IS NOT TRUE) AS "may be no-patients",
    ("work-restriction/still-ill" IS NOT FALSE OR "work-restriction/by-air" IS NOT FALSE OR ("work-restriction/well" IS NOT TRUE AND "work-restriction/stomach-over" IS NOT TRUE AND "work-restriction/cold" IS NOT TRUE AND "work-restriction/fever-over" IS NOT TRUE AND "work-restriction/eye-or-hand" IS NOT TRUE AND "work-restriction/still-ill" IS NOT TRUE AND "work-restriction/by-air" IS NOT TRUE)) AS "may be stays-home"
  FROM "rules of work-restriction"
)
SELECT "rules of work-restriction"."situation id",
  CASE WHEN "may be stays-home" THEN 'stays-home' WHEN "may be no-patients" THEN 'no-patients' WHEN "may be works-masked" THEN 'works-masked' WHEN "may be works" THEN 'works' ELSE 'stays-home' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be works" THEN ',works' ELSE '' END || CASE WHEN "may be works-masked" THEN ',works-masked' ELSE '' END || CASE WHEN "may be no-patients" THEN ',no-patients' ELSE '' END || CASE WHEN "may be stays-home" THEN ',stays-home' ELSE '' END) AS "possible",
  (CASE WHEN "may be works" THEN 1 ELSE 0 END + CASE WHEN "may be works-masked" THEN 1 ELSE 0 END + CASE WHEN "may be no-patients" THEN 1 ELSE 0 END + CASE WHEN "may be stays-home" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "work-restriction/well" IS TRUE THEN ',work-restriction/well' ELSE '' END || CASE WHEN "work-restriction/stomach-over" IS TRUE THEN ',work-restriction/stomach-over' ELSE '' END || CASE WHEN "work-restriction/cold" IS TRUE THEN ',work-restriction/cold' ELSE '' END || CASE WHEN "work-restriction/fever-over" IS TRUE THEN ',work-restriction/fever-over' ELSE '' END || CASE WHEN "work-restriction/eye-or-hand" IS TRUE THEN ',work-restriction/eye-or-hand' ELSE '' END || CASE WHEN "work-restriction/still-ill" IS TRUE THEN ',work-restriction/still-ill' ELSE '' END || CASE WHEN "work-restriction/by-air" IS TRUE THEN ',work-restriction/by-air' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "work-restriction/well" IS NULL THEN ',work-restriction/well' ELSE '' END || CASE WHEN "work-restriction/stomach-over" IS NULL THEN ',work-restriction/stomach-over' ELSE '' END || CASE WHEN "work-restriction/cold" IS NULL THEN ',work-restriction/cold' ELSE '' END || CASE WHEN "work-restriction/fever-over" IS NULL THEN ',work-restriction/fever-over' ELSE '' END || CASE WHEN "work-restriction/eye-or-hand" IS NULL THEN ',work-restriction/eye-or-hand' ELSE '' END || CASE WHEN "work-restriction/still-ill" IS NULL THEN ',work-restriction/still-ill' ELSE '' END || CASE WHEN "work-restriction/by-air" IS NULL THEN ',work-restriction/by-air' ELSE '' END) AS "open"
FROM "rules of work-restriction" JOIN "possible of work-restriction" ON "possible of work-restriction"."situation id" = "rules of work-restriction"."situation id";

-- May this steam sterilizer be used today?
CREATE VIEW "decide air-removal-test-result" AS WITH "given" AS (
  SELECT "situation id", "machine.dynamic-air-removal", "airtest.done", "airtest.valid", "airtest.even", "machine.leak-test", "airtest.leak"
  FROM "facts"
),
"rules of air-removal-test-result" AS (
  SELECT "given"."situation id",
    "machine.dynamic-air-removal" = FALSE AS "air-removal-test-result/gravity-machine",
    (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND "airtest.valid" = TRUE) AND (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND "airtest.even" = TRUE) AND ("machine.leak-test" = FALSE OR ("machine.leak-test" = TRUE AND "airtest.leak" IN ('leak-passed')))) AS "air-removal-test-result/sheet-even-all-over",
    (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = FALSE) OR (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND "airtest.valid" = FALSE) OR ("machine.leak-test" = TRUE AND "airtest.leak" IN ('leak-overdue'))) AS "air-removal-test-result/test-missing-or-spoiled",
    (((("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND "airtest.valid" = TRUE) AND (("machine.dynamic-air-removal" = TRUE AND "airtest.done" = TRUE) AND "airtest.even" = FALSE)) OR ("machine.leak-test" = TRUE AND "airtest.leak" IN ('leak-failed'))) AS "air-removal-test-result/air-left-or-leaking"
  FROM "given"
),
"possible of air-removal-test-result" AS (
  SELECT "situation id",
    (("air-removal-test-result/gravity-machine" IS NOT FALSE OR "air-removal-test-result/sheet-even-all-over" IS NOT FALSE) AND "air-removal-test-result/test-missing-or-spoiled" IS NOT TRUE AND "air-removal-test-result/air-left-or-leaking" IS NOT TRUE) AS "may be use",
    (("air-removal-test-result/test-missing-or-spoiled" IS NOT FALSE OR ("air-removal-test-result/gravity-machine" IS NOT TRUE AND "air-removal-test-result/sheet-even-all-over" IS NOT TRUE AND "air-removal-test-result/test-missing-or-spoiled" IS NOT TRUE AND "air-removal-test-result/air-left-or-leaking" IS NOT TRUE)) AND "air-removal-test-result/air-left-or-leaking" IS NOT TRUE) AS "may be test-first",
    "air-removal-test-result/air-left-or-leaking" IS NOT FALSE AS "may be keep-out"
  FROM "rules of air-removal-test-result"
)
SELECT "rules of air-removal-test-result"."situation id",
  CASE WHEN "may be keep-out" THEN 'keep-out' WHEN "may be test-first" THEN 'test-first' WHEN "may be use" THEN 'use' ELSE 'test-first' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be use" THEN ',use' ELSE '' END || CASE WHEN "may be test-first" THEN ',test-first' ELSE '' END || CASE WHEN "may be keep-out" THEN ',keep-out' ELSE '' END) AS "possible",
  (CASE WHEN "may be use" THEN 1 ELSE 0 END + CASE WHEN "may be test-first" THEN 1 ELSE 0 END + CASE WHEN "may be keep-out" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "air-removal-test-result/gravity-machine" IS TRUE THEN ',air-removal-test-result/gravity-machine' ELSE '' END || CASE WHEN "air-removal-test-result/sheet-even-all-over" IS TRUE THEN ',air-removal-test-result/sheet-even-all-over' ELSE '' END || CASE WHEN "air-removal-test-result/test-missing-or-spoiled" IS TRUE THEN ',air-removal-test-result/test-missing-or-spoiled' ELSE '' END || CASE WHEN "air-removal-test-result/air-left-or-leaking" IS TRUE THEN ',air-removal-test-result/air-left-or-leaking' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "air-removal-test-result/gravity-machine" IS NULL THEN ',air-removal-test-result/gravity-machine' ELSE '' END || CASE WHEN "air-removal-test-result/sheet-even-all-over" IS NULL THEN ',air-removal-test-result/sheet-even-all-over' ELSE '' END || CASE WHEN "air-removal-test-result/test-missing-or-spoiled" IS NULL THEN ',air-removal-test-result/test-missing-or-spoiled' ELSE '' END || CASE WHEN "air-removal-test-result/air-left-or-leaking" IS NULL THEN ',air-removal-test-result/air-left-or-leaking' ELSE '' END) AS "open"
FROM "rules of air-removal-test-result" JOIN "possible of air-removal-test-result" ON "possible of air-removal-test-result"."situation id" = "rules of air-removal-test-result"."situation id";

-- May this load leave the sterilizing area and be used?
CREATE VIEW "decide load-release" AS WITH "given" AS (
  SELECT "situation id", "cycle.completed", "cycle.recorded", "cycle.readings-met", "indicator.inside", "cycle.wet-packs", "cycle.torn-pack", "indicator.outside", "cycle.spore-result", "cycle.first-after-repair", COALESCE("clinic.places-implants", FALSE) AS "clinic.places-implants", "cycle.has-implant"
  FROM "facts"
),
"rules of load-release" AS (
  SELECT "given"."situation id",
    ("cycle.completed" = TRUE AND "cycle.recorded" = TRUE AND "cycle.readings-met" = TRUE AND "indicator.inside" IN ('inside-changed', 'inside-hidden') AND "cycle.wet-packs" IN ('no-wet-pack') AND "cycle.torn-pack" = FALSE AND (("indicator.outside" IN ('outside-changed') OR ("indicator.outside" IN ('outside-missing') AND "indicator.inside" IN ('inside-changed'))) AND ("cycle.spore-result" IN ('load-spores-negative') OR ("cycle.spore-result" IN ('load-spores-none', 'load-spores-waiting') AND "cycle.first-after-repair" = FALSE AND ("clinic.places-implants" = FALSE OR "cycle.has-implant" = FALSE))))) AS "load-release/all-in-order",
    ("cycle.completed" = FALSE OR "cycle.readings-met" = FALSE) AS "load-release/readings-fall-short",
    "cycle.recorded" = FALSE AS "load-release/no-cycle-record",
    ("indicator.outside" IN ('outside-not-changed') OR "indicator.inside" IN ('inside-not-changed')) AS "load-release/indicator-not-changed",
    ("indicator.outside" IN ('outside-missing') AND "indicator.inside" IN ('inside-hidden', 'inside-missing')) AS "load-release/no-indicator-to-see",
    ("cycle.wet-packs" IN ('one-wet-pack') OR "cycle.torn-pack" = TRUE OR ("indicator.inside" IN ('inside-missing') AND "indicator.outside" IN ('outside-changed'))) AS "load-release/one-pack-not-right",
    "cycle.wet-packs" IN ('several-wet-packs') AS "load-release/several-packs-wet",
    ("clinic.places-implants" = TRUE AND "cycle.has-implant" = TRUE AND "cycle.spore-result" IN ('load-spores-waiting')) AS "load-release/implant-waits-for-spore-test",
    ("clinic.places-implants" = TRUE AND "cycle.has-implant" = TRUE AND "cycle.spore-result" IN ('load-spores-none')) AS "load-release/implant-without-spore-test",
    ("cycle.first-after-repair" = TRUE AND "cycle.spore-result" IN ('load-spores-none', 'load-spores-waiting')) AS "load-release/first-load-after-repair",
    "cycle.spore-result" IN ('load-spores-positive') AS "load-release/spore-test-of-this-load-positive"
  FROM "given"
),
"possible of load-release" AS (
  SELECT "situation id",
    ("load-release/all-in-order" IS NOT FALSE AND "load-release/one-pack-not-right" IS NOT TRUE AND "load-release/implant-waits-for-spore-test" IS NOT TRUE AND "load-release/first-load-after-repair" IS NOT TRUE AND "load-release/readings-fall-short" IS NOT TRUE AND "load-release/no-cycle-record" IS NOT TRUE AND "load-release/indicator-not-changed" IS NOT TRUE AND "load-release/no-indicator-to-see" IS NOT TRUE AND "load-release/several-packs-wet" IS NOT TRUE AND "load-release/implant-without-spore-test" IS NOT TRUE AND "load-release/spore-test-of-this-load-positive" IS NOT TRUE) AS "may be release",
    ("load-release/one-pack-not-right" IS NOT FALSE AND "load-release/implant-waits-for-spore-test" IS NOT TRUE AND "load-release/first-load-after-repair" IS NOT TRUE AND "load-release/readings-fall-short" IS NOT TRUE AND "load-release/no-cycle-record" IS NOT TRUE AND "load-release/indicator-not-changed" IS NOT TRUE AND "load-release/no-indicator-to-see" IS NOT TRUE AND "load-release/several-packs-wet" IS NOT TRUE AND "load-release/implant-without-spore-test" IS NOT TRUE AND "load-release/spore-test-of-this-load-positive" IS NOT TRUE) AS "may be release-the-rest",
    (("load-release/implant-waits-for-spore-test" IS NOT FALSE OR "load-release/first-load-after-repair" IS NOT FALSE OR ("load-release/all-in-order" IS NOT TRUE AND "load-release/readings-fall-short" IS NOT TRUE AND "load-release/no-cycle-record" IS NOT TRUE AND "load-release/indicator-not-changed" IS NOT TRUE AND "load-release/no-indicator-to-see" IS NOT TRUE AND "load-release/one-pack-not-right" IS NOT TRUE AND "load-release/several-packs-wet" IS NOT TRUE AND "load-release/implant-waits-for-spore-test" IS NOT TRUE AND "load-release/implant-without-spore-test" IS NOT TRUE AND "load-release/first-load-after-repair" IS NOT TRUE AND "load-release/spore-test-of-this-load-positive" IS NOT TRUE)) AND "load-release/readings-fall-short" IS NOT TRUE AND "load-release/no-cycle-record" IS NOT TRUE AND "load-release/indicator-not-changed" IS NOT TRUE AND "load-release/no-indicator-to-see" IS NOT TRUE AND "load-release/several-packs-wet" IS NOT TRUE AND "load-release/implant-without-spore-test" IS NOT TRUE AND "load-release/spore-test-of-this-load-positive" IS NOT TRUE) AS "may be hold",
    ("load-release/readings-fall-short" IS NOT FALSE OR "load-release/no-cycle-record" IS NOT FALSE OR "load-release/indicator-not-changed" IS NOT FALSE OR "load-release/no-indicator-to-see" IS NOT FALSE OR "load-release/several-packs-wet" IS NOT FALSE OR "load-release/implant-without-spore-test" IS NOT FALSE OR "load-release/spore-test-of-this-load-positive" IS NOT FALSE) AS "may be reject"
  FROM "rules of load-release"
)
SELECT "rules of load-release"."situation id",
  CASE WHEN "may be reject" THEN 'reject' WHEN "may be hold" THEN 'hold' WHEN "may be release-the-rest" THEN 'release-the-rest' WHEN "may be release" THEN 'release' ELSE 'hold' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be release" THEN ',release' ELSE '' END || CASE WHEN "may be release-the-rest" THEN ',release-the-rest' ELSE '' END || CASE WHEN "may be hold" THEN ',hold' ELSE '' END || CASE WHEN "may be reject" THEN ',reject' ELSE '' END) AS "possible",
  (CASE WHEN "may be release" THEN 1 ELSE 0 END + CASE WHEN "may be release-the-rest" THEN 1 ELSE 0 END + CASE WHEN "may be hold" THEN 1 ELSE 0 END + CASE WHEN "may be reject" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "load-release/all-in-order" IS TRUE THEN ',load-release/all-in-order' ELSE '' END || CASE WHEN "load-release/readings-fall-short" IS TRUE THEN ',load-release/readings-fall-short' ELSE '' END || CASE WHEN "load-release/no-cycle-record" IS TRUE THEN ',load-release/no-cycle-record' ELSE '' END || CASE WHEN "load-release/indicator-not-changed" IS TRUE THEN ',load-release/indicator-not-changed' ELSE '' END || CASE WHEN "load-release/no-indicator-to-see" IS TRUE THEN ',load-release/no-indicator-to-see' ELSE '' END || CASE WHEN "load-release/one-pack-not-right" IS TRUE THEN ',load-release/one-pack-not-right' ELSE '' END || CASE WHEN "load-release/several-packs-wet" IS TRUE THEN ',load-release/several-packs-wet' ELSE '' END || CASE WHEN "load-release/implant-waits-for-spore-test" IS TRUE THEN ',load-release/implant-waits-for-spore-test' ELSE '' END || CASE WHEN "load-release/implant-without-spore-test" IS TRUE THEN ',load-release/implant-without-spore-test' ELSE '' END || CASE WHEN "load-release/first-load-after-repair" IS TRUE THEN ',load-release/first-load-after-repair' ELSE '' END || CASE WHEN "load-release/spore-test-of-this-load-positive" IS TRUE THEN ',load-release/spore-test-of-this-load-positive' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "load-release/all-in-order" IS NULL THEN ',load-release/all-in-order' ELSE '' END || CASE WHEN "load-release/readings-fall-short" IS NULL THEN ',load-release/readings-fall-short' ELSE '' END || CASE WHEN "load-release/no-cycle-record" IS NULL THEN ',load-release/no-cycle-record' ELSE '' END || CASE WHEN "load-release/indicator-not-changed" IS NULL THEN ',load-release/indicator-not-changed' ELSE '' END || CASE WHEN "load-release/no-indicator-to-see" IS NULL THEN ',load-release/no-indicator-to-see' ELSE '' END || CASE WHEN "load-release/one-pack-not-right" IS NULL THEN ',load-release/one-pack-not-right' ELSE '' END || CASE WHEN "load-release/several-packs-wet" IS NULL THEN ',load-release/several-packs-wet' ELSE '' END || CASE WHEN "load-release/implant-waits-for-spore-test" IS NULL THEN ',load-release/implant-waits-for-spore-test' ELSE '' END || CASE WHEN "load-release/implant-without-spore-test" IS NULL THEN ',load-release/implant-without-spore-test' ELSE '' END || CASE WHEN "load-release/first-load-after-repair" IS NULL THEN ',load-release/first-load-after-repair' ELSE '' END || CASE WHEN "load-release/spore-test-of-this-load-positive" IS NULL THEN ',load-release/spore-test-of-this-load-positive' ELSE '' END) AS "open"
FROM "rules of load-release" JOIN "possible of load-release" ON "possible of load-release"."situation id" = "rules of load-release"."situation id";

-- May this pack be opened and used?
CREATE VIEW "decide pack-use" AS WITH "given" AS (
  SELECT "situation id", "pack.wrapping", "stored.intact", "stored.dry", "stored.dropped", "stored.labeled", "stored.released", "indicator.inside", "indicator.outside", COALESCE("clinic.dates-packs", FALSE) AS "clinic.dates-packs", "stored.age", "stored.in-treatment-room", "stored.straight-from-sterilizer", "instrument.contact", "instrument.implantable"
  FROM "facts"
),
"rules of pack-use" AS (
  SELECT "given"."situation id",
    ("pack.wrapping" IN ('wrapped') AND ("pack.wrapping" IN ('wrapped') AND "stored.intact" = TRUE) AND "stored.dry" = TRUE AND "stored.dropped" = FALSE AND ("pack.wrapping" IN ('wrapped') AND "stored.labeled" = TRUE) AND "stored.released" = TRUE AND "indicator.inside" IN ('inside-changed', 'inside-hidden') AND (("indicator.outside" IN ('outside-changed') OR ("indicator.outside" IN ('outside-missing') AND "indicator.inside" IN ('inside-changed'))) AND (("clinic.dates-packs" = TRUE AND "stored.age" <= 3.6525e+2) OR ("clinic.dates-packs" = FALSE AND "stored.age" <= 1.82625e+2)))) AS "pack-use/pack-in-order",
    ("pack.wrapping" IN ('unwrapped') AND "stored.dry" = TRUE AND "stored.dropped" = FALSE AND "stored.released" = TRUE AND "indicator.inside" NOT IN ('inside-not-changed') AND "indicator.outside" NOT IN ('outside-not-changed') AND ((("pack.wrapping" IN ('unwrapped') AND "stored.in-treatment-room" = TRUE) AND "stored.age" <= 1e+0) OR (("pack.wrapping" IN ('unwrapped') AND "stored.in-treatment-room" = FALSE) AND "stored.age" <= 7e+0))) AS "pack-use/unwrapped-in-order",
    (("pack.wrapping" IN ('wrapped') AND "stored.intact" = FALSE) OR "stored.dry" = FALSE OR "stored.dropped" = TRUE) AS "pack-use/open-wet-or-dropped",
    (("pack.wrapping" IN ('wrapped') AND "stored.labeled" = FALSE) OR "stored.released" = FALSE) AS "pack-use/not-traced-to-a-released-load",
    ("indicator.outside" IN ('outside-not-changed') OR "indicator.inside" IN ('inside-not-changed')) AS "pack-use/indicator-color-wrong",
    ("pack.wrapping" IN ('wrapped') AND ("indicator.inside" IN ('inside-missing') OR ("indicator.outside" IN ('outside-missing') AND "indicator.inside" IN ('inside-hidden')))) AS "pack-use/indicator-missing",
    ("clinic.dates-packs" = TRUE AND "pack.wrapping" IN ('wrapped') AND "stored.age" > 3.6525e+2) AS "pack-use/past-its-date",
    ("clinic.dates-packs" = FALSE AND "pack.wrapping" IN ('wrapped') AND "stored.age" > 1.82625e+2) AS "pack-use/long-unused",
    ("pack.wrapping" IN ('unwrapped') AND ((("pack.wrapping" IN ('unwrapped') AND "stored.in-treatment-room" = TRUE) AND "stored.age" > 1e+0) OR "stored.age" > 7e+0)) AS "pack-use/unwrapped-too-long",
    ("pack.wrapping" IN ('unwrapped') AND ("pack.wrapping" IN ('unwrapped') AND "stored.straight-from-sterilizer" = FALSE) AND ("instrument.contact" IN ('tissue-or-bone') OR "instrument.implantable" = TRUE)) AS "pack-use/critical-is-not-stored-unwrapped"
  FROM "given"
),
"possible of pack-use" AS (
  SELECT "situation id",
    (("pack-use/pack-in-order" IS NOT FALSE OR "pack-use/unwrapped-in-order" IS NOT FALSE) AND "pack-use/long-unused" IS NOT TRUE AND "pack-use/open-wet-or-dropped" IS NOT TRUE AND "pack-use/not-traced-to-a-released-load" IS NOT TRUE AND "pack-use/indicator-color-wrong" IS NOT TRUE AND "pack-use/indicator-missing" IS NOT TRUE AND "pack-use/past-its-date" IS NOT TRUE AND "pack-use/unwrapped-too-long" IS NOT TRUE AND "pack-use/critical-is-not-stored-unwrapped" IS NOT TRUE) AS "may be use",
    (("pack-use/long-unused" IS NOT FALSE OR ("pack-use/pack-in-order" IS NOT TRUE AND "pack-use/unwrapped-in-order" IS NOT TRUE AND "pack-use/open-wet-or-dropped" IS NOT TRUE AND "pack-use/not-traced-to-a-released-load" IS NOT TRUE AND "pack-use/indicator-color-wrong" IS NOT TRUE AND "pack-use/indicator-missing" IS NOT TRUE AND "pack-use/past-its-date" IS NOT TRUE AND "pack-use/long-unused" IS NOT TRUE AND "pack-use/unwrapped-too-long" IS NOT TRUE AND "pack-use/critical-is-not-stored-unwrapped" IS NOT TRUE)) AND "pack-use/open-wet-or-dropped" IS NOT TRUE AND "pack-use/not-traced-to-a-released-load" IS NOT TRUE AND "pack-use/indicator-color-wrong" IS NOT TRUE AND "pack-use/indicator-missing" IS NOT TRUE AND "pack-use/past-its-date" IS NOT TRUE AND "pack-use/unwrapped-too-long" IS NOT TRUE AND "pack-use/critical-is-not-stored-unwrapped" IS NOT TRUE) AS "may be ask-first",
    ("pack-use/open-wet-or-dropped" IS NOT FALSE OR "pack-use/not-traced-to-a-released-load" IS NOT FALSE OR "pack-use/indicator-color-wrong" IS NOT FALSE OR "pack-use/indicator-missing" IS NOT FALSE OR "pack-use/past-its-date" IS NOT FALSE OR "pack-use/unwrapped-too-long" IS NOT FALSE OR "pack-use/critical-is-not-stored-unwrapped" IS NOT FALSE) AS "may be do-not-use"
  FROM "rules of pack-use"
)
SELECT "rules of pack-use"."situation id",
  CASE WHEN "may be do-not-use" THEN 'do-not-use' WHEN "may be ask-first" THEN 'ask-first' WHEN "may be use" THEN 'use' ELSE 'ask-first' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be use" THEN ',use' ELSE '' END || CASE WHEN "may be ask-first" THEN ',ask-first' ELSE '' END || CASE WHEN "may be do-not-use" THEN ',do-not-use' ELSE '' END) AS "possible",
  (CASE WHEN "may be use" THEN 1 ELSE 0 END + CASE WHEN "may be ask-first" THEN 1 ELSE 0 END + CASE WHEN "may be do-not-use" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "pack-use/pack-in-order" IS TRUE THEN ',pack-use/pack-in-order' ELSE '' END || CASE WHEN "pack-use/unwrapped-in-order" IS TRUE THEN ',pack-use/unwrapped-in-order' ELSE '' END || CASE WHEN "pack-use/open-wet-or-dropped" IS TRUE THEN ',pack-use/open-wet-or-dropped' ELSE '' END || CASE WHEN "pack-use/not-traced-to-a-released-load" IS TRUE THEN ',pack-use/not-traced-to-a-released-load' ELSE '' END || CASE WHEN "pack-use/indicator-color-wrong" IS TRUE THEN ',pack-use/indicator-color-wrong' ELSE '' END || CASE WHEN "pack-use/indicator-missing" IS TRUE THEN ',pack-use/indicator-missing' ELSE '' END || CASE WHEN "pack-use/past-its-date" IS TRUE THEN ',pack-use/past-its-date' ELSE '' END || CASE WHEN "pack-use/long-unused" IS TRUE THEN ',pack-use/long-unused' ELSE '' END || CASE WHEN "pack-use/unwrapped-too-long" IS TRUE THEN ',pack-use/unwrapped-too-long' ELSE '' END || CASE WHEN "pack-use/critical-is-not-stored-unwrapped" IS TRUE THEN ',pack-use/critical-is-not-stored-unwrapped' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "pack-use/pack-in-order" IS NULL THEN ',pack-use/pack-in-order' ELSE '' END || CASE WHEN "pack-use/unwrapped-in-order" IS NULL THEN ',pack-use/unwrapped-in-order' ELSE '' END || CASE WHEN "pack-use/open-wet-or-dropped" IS NULL THEN ',pack-use/open-wet-or-dropped' ELSE '' END || CASE WHEN "pack-use/not-traced-to-a-released-load" IS NULL THEN ',pack-use/not-traced-to-a-released-load' ELSE '' END || CASE WHEN "pack-use/indicator-color-wrong" IS NULL THEN ',pack-use/indicator-color-wrong' ELSE '' END || CASE WHEN "pack-use/indicator-missing" IS NULL THEN ',pack-use/indicator-missing' ELSE '' END || CASE WHEN "pack-use/past-its-date" IS NULL THEN ',pack-use/past-its-date' ELSE '' END || CASE WHEN "pack-use/long-unused" IS NULL THEN ',pack-use/long-unused' ELSE '' END || CASE WHEN "pack-use/unwrapped-too-long" IS NULL THEN ',pack-use/unwrapped-too-long' ELSE '' END || CASE WHEN "pack-use/critical-is-not-stored-unwrapped" IS NULL THEN ',pack-use/critical-is-not-stored-unwrapped' ELSE '' END) AS "open"
FROM "rules of pack-use" JOIN "possible of pack-use" ON "possible of pack-use"."situation id" = "rules of pack-use"."situation id";

-- What happens after this spore test?
CREATE VIEW "decide spore-test-result" AS WITH "given" AS (
  SELECT "situation id", "spore.reading", "spore.control", "spore.same-lot", "spore.cycle-good", "cycle.medium", "spore.organism", COALESCE("clinic.machines", 'heat-sealer,steam-sterilizer,ultrasonic-bath,washer') AS "clinic.machines", "spore.round", "spore.waited"
  FROM "facts"
),
"rules of spore-test-result" AS (
  SELECT "given"."situation id",
    ("spore.reading" IN ('spores-no-growth') AND "spore.control" IN ('control-grew') AND "spore.same-lot" = TRUE AND "spore.cycle-good" = TRUE AND (("cycle.medium" IN ('steam') AND "spore.organism" IN ('geobacillus')) OR (POSITION(',dry-heat-sterilizer,' IN ',' || "clinic.machines" || ',') > 0 AND "cycle.medium" IN ('dry-heat') AND "spore.organism" IN ('atrophaeus')))) AS "spore-test-result/negative-with-a-good-control",
    ("spore.round" IN ('routine-test') AND ("spore.reading" IN ('spores-waiting') OR ("spore.reading" IN ('spores-no-growth') AND "spore.control" IN ('control-unread'))) AND "spore.waited" <= 1.4e+1) AS "spore-test-result/result-on-its-way",
    ("spore.reading" IN ('spores-lost') OR ("spore.reading" IN ('spores-waiting') AND "spore.waited" > 1.4e+1) OR ("spore.reading" IN ('spores-no-growth') AND "spore.control" IN ('control-unread') AND "spore.waited" > 1.4e+1)) AS "spore-test-result/no-result-to-come",
    ("spore.reading" IN ('spores-no-growth') AND ("spore.control" IN ('control-failed') OR "spore.same-lot" = FALSE)) AS "spore-test-result/no-working-control",
    ("spore.reading" IN ('spores-no-growth') AND (("cycle.medium" IN ('steam') AND "spore.organism" IN ('atrophaeus')) OR (POSITION(',dry-heat-sterilizer,' IN ',' || "clinic.machines" || ',') > 0 AND "cycle.medium" IN ('dry-heat') AND "spore.organism" IN ('geobacillus')))) AS "spore-test-result/wrong-spore",
    ("spore.reading" IN ('spores-no-growth') AND "spore.cycle-good" = FALSE) AS "spore-test-result/negative-in-a-bad-cycle",
    ("spore.reading" IN ('spores-growth') AND "spore.round" IN ('routine-test')) AS "spore-test-result/first-positive",
    ("spore.reading" IN ('spores-growth') AND ("spore.round" IN ('repeat-after-positive') OR "spore.cycle-good" = FALSE)) AS "spore-test-result/failure-confirmed",
    ("spore.round" IN ('repeat-after-positive') AND ("spore.reading" IN ('spores-waiting', 'spores-lost') OR "spore.control" IN ('control-failed', 'control-unread') OR "spore.same-lot" = FALSE OR "spore.cycle-good" = FALSE)) AS "spore-test-result/repeat-still-open"
  FROM "given"
),
"possible of spore-test-result" AS (
  SELECT "situation id",
    (("spore-test-result/negative-with-a-good-control" IS NOT FALSE OR "spore-test-result/result-on-its-way" IS NOT FALSE) AND "spore-test-result/no-result-to-come" IS NOT TRUE AND "spore-test-result/no-working-control" IS NOT TRUE AND "spore-test-result/wrong-spore" IS NOT TRUE AND "spore-test-result/negative-in-a-bad-cycle" IS NOT TRUE AND "spore-test-result/first-positive" IS NOT TRUE AND "spore-test-result/repeat-still-open" IS NOT TRUE AND "spore-test-result/failure-confirmed" IS NOT TRUE) AS "may be carry-on",
    (("spore-test-result/no-result-to-come" IS NOT FALSE OR "spore-test-result/no-working-control" IS NOT FALSE OR "spore-test-result/wrong-spore" IS NOT FALSE OR "spore-test-result/negative-in-a-bad-cycle" IS NOT FALSE) AND "spore-test-result/first-positive" IS NOT TRUE AND "spore-test-result/repeat-still-open" IS NOT TRUE AND "spore-test-result/failure-confirmed" IS NOT TRUE) AS "may be repeat-test",
    (("spore-test-result/first-positive" IS NOT FALSE OR "spore-test-result/repeat-still-open" IS NOT FALSE OR ("spore-test-result/negative-with-a-good-control" IS NOT TRUE AND "spore-test-result/result-on-its-way" IS NOT TRUE AND "spore-test-result/no-result-to-come" IS NOT TRUE AND "spore-test-result/no-working-control" IS NOT TRUE AND "spore-test-result/wrong-spore" IS NOT TRUE AND "spore-test-result/negative-in-a-bad-cycle" IS NOT TRUE AND "spore-test-result/first-positive" IS NOT TRUE AND "spore-test-result/failure-confirmed" IS NOT TRUE AND "spore-test-result/repeat-still-open" IS NOT TRUE)) AND "spore-test-result/failure-confirmed" IS NOT TRUE) AS "may be take-out-of-service",
    "spore-test-result/failure-confirmed" IS NOT FALSE AS "may be service-and-recall"
  FROM "rules of spore-test-result"
)
SELECT "rules of spore-test-result"."situation id",
  CASE WHEN "may be service-and-recall" THEN 'service-and-recall' WHEN "may be take-out-of-service" THEN 'take-out-of-service' WHEN "may be repeat-test" THEN 'repeat-test' WHEN "may be carry-on" THEN 'carry-on' ELSE 'take-out-of-service' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be carry-on" THEN ',carry-on' ELSE '' END || CASE WHEN "may be repeat-test" THEN ',repeat-test' ELSE '' END || CASE WHEN "may be take-out-of-service" THEN ',take-out-of-service' ELSE '' END || CASE WHEN "may be service-and-recall" THEN ',service-and-recall' ELSE '' END) AS "possible",
  (CASE WHEN "may be carry-on" THEN 1 ELSE 0 END + CASE WHEN "may be repeat-test" THEN 1 ELSE 0 END + CASE WHEN "may be take-out-of-service" THEN 1 ELSE 0 END + CASE WHEN "may be service-and-recall" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "spore-test-result/negative-with-a-good-control" IS TRUE THEN ',spore-test-result/negative-with-a-good-control' ELSE '' END || CASE WHEN "spore-test-result/result-on-its-way" IS TRUE THEN ',spore-test-result/result-on-its-way' ELSE '' END || CASE WHEN "spore-test-result/no-result-to-come" IS TRUE THEN ',spore-test-result/no-result-to-come' ELSE '' END || CASE WHEN "spore-test-result/no-working-control" IS TRUE THEN ',spore-test-result/no-working-control' ELSE '' END || CASE WHEN "spore-test-result/wrong-spore" IS TRUE THEN ',spore-test-result/wrong-spore' ELSE '' END || CASE WHEN "spore-test-result/negative-in-a-bad-cycle" IS TRUE THEN ',spore-test-result/negative-in-a-bad-cycle' ELSE '' END || CASE WHEN "spore-test-result/first-positive" IS TRUE THEN ',spore-test-result/first-positive' ELSE '' END || CASE WHEN "spore-test-result/failure-confirmed" IS TRUE THEN ',spore-test-result/failure-confirmed' ELSE '' END || CASE WHEN "spore-test-result/repeat-still-open" IS TRUE THEN ',spore-test-result/repeat-still-open' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "spore-test-result/negative-with-a-good-control" IS NULL THEN ',spore-test-result/negative-with-a-good-control' ELSE '' END || CASE WHEN "spore-test-result/result-on-its-way" IS NULL THEN ',spore-test-result/result-on-its-way' ELSE '' END || CASE WHEN "spore-test-result/no-result-to-come" IS NULL THEN ',spore-test-result/no-result-to-come' ELSE '' END || CASE WHEN "spore-test-result/no-working-control" IS NULL THEN ',spore-test-result/no-working-control' ELSE '' END || CASE WHEN "spore-test-result/wrong-spore" IS NULL THEN ',spore-test-result/wrong-spore' ELSE '' END || CASE WHEN "spore-test-result/negative-in-a-bad-cycle" IS NULL THEN ',spore-test-result/negative-in-a-bad-cycle' ELSE '' END || CASE WHEN "spore-test-result/first-positive" IS NULL THEN ',spore-test-result/first-positive' ELSE '' END || CASE WHEN "spore-test-result/failure-confirmed" IS NULL THEN ',spore-test-result/failure-confirmed' ELSE '' END || CASE WHEN "spore-test-result/repeat-still-open" IS NULL THEN ',spore-test-result/repeat-still-open' ELSE '' END) AS "open"
FROM "rules of spore-test-result" JOIN "possible of spore-test-result" ON "possible of spore-test-result"."situation id" = "rules of spore-test-result"."situation id";

-- May this person reprocess instruments today?
CREATE VIEW "decide may-reprocess" AS WITH "given" AS (
  SELECT "situation id", "staff.safety-trained", "staff.signed-off", "staff.observed-runs", "staff.since-refresher", "staff.away", "staff.change-not-shown", "staff.vaccine-offered", "staff.working-days", "staff.skin", "staff.ill"
  FROM "facts"
),
"rules of may-reprocess" AS (
  SELECT "given"."situation id",
    ("staff.safety-trained" = TRUE AND ("staff.safety-trained" = TRUE AND "staff.signed-off" = TRUE)) AS "may-reprocess/signed-off",
    ("staff.safety-trained" = TRUE AND (("staff.safety-trained" = TRUE AND "staff.signed-off" = FALSE) OR ("staff.safety-trained" = TRUE AND "staff.observed-runs" < 3e+0))) AS "may-reprocess/still-learning",
    ("staff.safety-trained" = TRUE AND (("staff.safety-trained" = TRUE AND "staff.since-refresher" > 1.2e+1) OR ("staff.safety-trained" = TRUE AND "staff.away" > 6e+0) OR ("staff.safety-trained" = TRUE AND "staff.change-not-shown" = TRUE))) AS "may-reprocess/out-of-practice",
    "staff.safety-trained" = FALSE AS "may-reprocess/no-safety-training",
    ("staff.vaccine-offered" = FALSE AND ("staff.vaccine-offered" = FALSE AND "staff.working-days" > 1e+1)) AS "may-reprocess/vaccine-offer-overdue",
    ("staff.skin" IN ('skin-open') OR "staff.ill" = TRUE) AS "may-reprocess/not-fit"
  FROM "given"
),
"possible of may-reprocess" AS (
  SELECT "situation id",
    ("may-reprocess/signed-off" IS NOT FALSE AND "may-reprocess/still-learning" IS NOT TRUE AND "may-reprocess/out-of-practice" IS NOT TRUE AND "may-reprocess/no-safety-training" IS NOT TRUE AND "may-reprocess/vaccine-offer-overdue" IS NOT TRUE AND "may-reprocess/not-fit" IS NOT TRUE) AS "may be alone",
    (("may-reprocess/still-learning" IS NOT FALSE OR "may-reprocess/out-of-practice" IS NOT FALSE) AND "may-reprocess/no-safety-training" IS NOT TRUE AND "may-reprocess/vaccine-offer-overdue" IS NOT TRUE AND "may-reprocess/not-fit" IS NOT TRUE) AS "may be beside-someone-trained",
    ("may-reprocess/no-safety-training" IS NOT FALSE OR "may-reprocess/vaccine-offer-overdue" IS NOT FALSE OR "may-reprocess/not-fit" IS NOT FALSE OR ("may-reprocess/signed-off" IS NOT TRUE AND "may-reprocess/still-learning" IS NOT TRUE AND "may-reprocess/out-of-practice" IS NOT TRUE AND "may-reprocess/no-safety-training" IS NOT TRUE AND "may-reprocess/vaccine-offer-overdue" IS NOT TRUE AND "may-reprocess/not-fit" IS NOT TRUE)) AS "may be not-today"
  FROM "rules of may-reprocess"
)
SELECT "rules of may-reprocess"."situation id",
  CASE WHEN "may be not-today" THEN 'not-today' WHEN "may be beside-someone-trained" THEN 'beside-someone-trained' WHEN "may be alone" THEN 'alone' ELSE 'not-today' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be alone" THEN ',alone' ELSE '' END || CASE WHEN "may be beside-someone-trained" THEN ',beside-someone-trained' ELSE '' END || CASE WHEN "may be not-today" THEN ',not-today' ELSE '' END) AS "possible",
  (CASE WHEN "may be alone" THEN 1 ELSE 0 END + CASE WHEN "may be beside-someone-trained" THEN 1 ELSE 0 END + CASE WHEN "may be not-today" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "may-reprocess/signed-off" IS TRUE THEN ',may-reprocess/signed-off' ELSE '' END || CASE WHEN "may-reprocess/still-learning" IS TRUE THEN ',may-reprocess/still-learning' ELSE '' END || CASE WHEN "may-reprocess/out-of-practice" IS TRUE THEN ',may-reprocess/out-of-practice' ELSE '' END || CASE WHEN "may-reprocess/no-safety-training" IS TRUE THEN ',may-reprocess/no-safety-training' ELSE '' END || CASE WHEN "may-reprocess/vaccine-offer-overdue" IS TRUE THEN ',may-reprocess/vaccine-offer-overdue' ELSE '' END || CASE WHEN "may-reprocess/not-fit" IS TRUE THEN ',may-reprocess/not-fit' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "may-reprocess/signed-off" IS NULL THEN ',may-reprocess/signed-off' ELSE '' END || CASE WHEN "may-reprocess/still-learning" IS NULL THEN ',may-reprocess/still-learning' ELSE '' END || CASE WHEN "may-reprocess/out-of-practice" IS NULL THEN ',may-reprocess/out-of-practice' ELSE '' END || CASE WHEN "may-reprocess/no-safety-training" IS NULL THEN ',may-reprocess/no-safety-training' ELSE '' END || CASE WHEN "may-reprocess/vaccine-offer-overdue" IS NULL THEN ',may-reprocess/vaccine-offer-overdue' ELSE '' END || CASE WHEN "may-reprocess/not-fit" IS NULL THEN ',may-reprocess/not-fit' ELSE '' END) AS "open"
FROM "rules of may-reprocess" JOIN "possible of may-reprocess" ON "possible of may-reprocess"."situation id" = "rules of may-reprocess"."situation id";

-- What do I put on before I start?
CREATE VIEW "decide protective-equipment" AS WITH "given" AS (
  SELECT "situation id", "work.task", "work.hot"
  FROM "facts"
),
"rules of protective-equipment" AS (
  SELECT "given"."situation id",
    ("work.task" IN ('storing-packs') OR ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer') AND ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'unloading-washer', 'opening-machine-by-hand') AND "work.hot" = FALSE))) AS "protective-equipment/packs",
    ("work.task" IN ('packing-clean-items') OR ("work.task" IN ('unloading-washer') AND ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'unloading-washer', 'opening-machine-by-hand') AND "work.hot" = FALSE))) AS "protective-equipment/clean-items",
    "work.task" IN ('oiling-handpieces') AS "protective-equipment/oil-mist",
    ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer') AND ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'unloading-washer', 'opening-machine-by-hand') AND "work.hot" = TRUE)) AS "protective-equipment/hot-sterilizer",
    "work.task" IN ('carrying-used-items', 'sorting-used-items', 'cleaning-by-hand', 'emptying-ultrasonic-bath', 'emptying-strainers', 'closing-sharps-container') AS "protective-equipment/used-instruments",
    "work.task" IN ('refilling-chemicals', 'cleaning-up-spill') AS "protective-equipment/chemicals-and-spills",
    ("work.task" IN ('opening-machine-by-hand') AND ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'unloading-washer', 'opening-machine-by-hand') AND "work.hot" = FALSE)) AS "protective-equipment/stopped-machine-cool",
    ("work.task" IN ('unloading-washer', 'opening-machine-by-hand') AND ("work.task" IN ('loading-sterilizer', 'unloading-sterilizer', 'unloading-washer', 'opening-machine-by-hand') AND "work.hot" = TRUE)) AS "protective-equipment/hot-water-or-steam"
  FROM "given"
),
"possible of protective-equipment" AS (
  SELECT "situation id",
    ("protective-equipment/packs" IS NOT FALSE AND "protective-equipment/clean-items" IS NOT TRUE AND "protective-equipment/oil-mist" IS NOT TRUE AND "protective-equipment/hot-sterilizer" IS NOT TRUE AND "protective-equipment/used-instruments" IS NOT TRUE AND "protective-equipment/chemicals-and-spills" IS NOT TRUE AND "protective-equipment/stopped-machine-cool" IS NOT TRUE AND "protective-equipment/hot-water-or-steam" IS NOT TRUE) AS "may be clean-hands-only",
    ("protective-equipment/clean-items" IS NOT FALSE AND "protective-equipment/oil-mist" IS NOT TRUE AND "protective-equipment/hot-sterilizer" IS NOT TRUE AND "protective-equipment/used-instruments" IS NOT TRUE AND "protective-equipment/chemicals-and-spills" IS NOT TRUE AND "protective-equipment/stopped-machine-cool" IS NOT TRUE AND "protective-equipment/hot-water-or-steam" IS NOT TRUE) AS "may be clean-utility-gloves",
    ("protective-equipment/oil-mist" IS NOT FALSE AND "protective-equipment/hot-sterilizer" IS NOT TRUE AND "protective-equipment/used-instruments" IS NOT TRUE AND "protective-equipment/chemicals-and-spills" IS NOT TRUE AND "protective-equipment/stopped-machine-cool" IS NOT TRUE AND "protective-equipment/hot-water-or-steam" IS NOT TRUE) AS "may be oiling-set",
    ("protective-equipment/hot-sterilizer" IS NOT FALSE AND "protective-equipment/used-instruments" IS NOT TRUE AND "protective-equipment/chemicals-and-spills" IS NOT TRUE AND "protective-equipment/stopped-machine-cool" IS NOT TRUE AND "protective-equipment/hot-water-or-steam" IS NOT TRUE) AS "may be heat-gloves-on",
    (("protective-equipment/used-instruments" IS NOT FALSE OR "protective-equipment/chemicals-and-spills" IS NOT FALSE OR "protective-equipment/stopped-machine-cool" IS NOT FALSE) AND "protective-equipment/hot-water-or-steam" IS NOT TRUE) AS "may be full-set",
    ("protective-equipment/hot-water-or-steam" IS NOT FALSE OR ("protective-equipment/packs" IS NOT TRUE AND "protective-equipment/clean-items" IS NOT TRUE AND "protective-equipment/oil-mist" IS NOT TRUE AND "protective-equipment/hot-sterilizer" IS NOT TRUE AND "protective-equipment/used-instruments" IS NOT TRUE AND "protective-equipment/chemicals-and-spills" IS NOT TRUE AND "protective-equipment/stopped-machine-cool" IS NOT TRUE AND "protective-equipment/hot-water-or-steam" IS NOT TRUE)) AS "may be not-yet"
  FROM "rules of protective-equipment"
)
SELECT "rules of protective-equipment"."situation id",
  CASE WHEN "may be not-yet" THEN 'not-yet' WHEN "may be full-set" THEN 'full-set' WHEN "may be heat-gloves-on" THEN 'heat-gloves-on' WHEN "may be oiling-set" THEN 'oiling-set' WHEN "may be clean-utility-gloves" THEN 'clean-utility-gloves' WHEN "may be clean-hands-only" THEN 'clean-hands-only' ELSE 'not-yet' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be clean-hands-only" THEN ',clean-hands-only' ELSE '' END || CASE WHEN "may be clean-utility-gloves" THEN ',clean-utility-gloves' ELSE '' END || CASE WHEN "may be oiling-set" THEN ',oiling-set' ELSE '' END || CASE WHEN "may be heat-gloves-on" THEN ',heat-gloves-on' ELSE '' END || CASE WHEN "may be full-set" THEN ',full-set' ELSE '' END || CASE WHEN "may be not-yet" THEN ',not-yet' ELSE '' END) AS "possible",
  (CASE WHEN "may be clean-hands-only" THEN 1 ELSE 0 END + CASE WHEN "may be clean-utility-gloves" THEN 1 ELSE 0 END + CASE WHEN "may be oiling-set" THEN 1 ELSE 0 END + CASE WHEN "may be heat-gloves-on" THEN 1 ELSE 0 END + CASE WHEN "may be full-set" THEN 1 ELSE 0 END + CASE WHEN "may be not-yet" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "protective-equipment/packs" IS TRUE THEN ',protective-equipment/packs' ELSE '' END || CASE WHEN "protective-equipment/clean-items" IS TRUE THEN ',protective-equipment/clean-items' ELSE '' END || CASE WHEN "protective-equipment/oil-mist" IS TRUE THEN ',protective-equipment/oil-mist' ELSE '' END || CASE WHEN "protective-equipment/hot-sterilizer" IS TRUE THEN ',protective-equipment/hot-sterilizer' ELSE '' END || CASE WHEN "protective-equipment/used-instruments" IS TRUE THEN ',protective-equipment/used-instruments' ELSE '' END || CASE WHEN "protective-equipment/chemicals-and-spills" IS TRUE THEN ',protective-equipment/chemicals-and-spills' ELSE '' END || CASE WHEN "protective-equipment/stopped-machine-cool" IS TRUE THEN ',protective-equipment/stopped-machine-cool' ELSE '' END || CASE WHEN "protective-equipment/hot-water-or-steam" IS TRUE THEN ',protective-equipment/hot-water-or-steam' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "protective-equipment/packs" IS NULL THEN ',protective-equipment/packs' ELSE '' END || CASE WHEN "protective-equipment/clean-items" IS NULL THEN ',protective-equipment/clean-items' ELSE '' END || CASE WHEN "protective-equipment/oil-mist" IS NULL THEN ',protective-equipment/oil-mist' ELSE '' END || CASE WHEN "protective-equipment/hot-sterilizer" IS NULL THEN ',protective-equipment/hot-sterilizer' ELSE '' END || CASE WHEN "protective-equipment/used-instruments" IS NULL THEN ',protective-equipment/used-instruments' ELSE '' END || CASE WHEN "protective-equipment/chemicals-and-spills" IS NULL THEN ',protective-equipment/chemicals-and-spills' ELSE '' END || CASE WHEN "protective-equipment/stopped-machine-cool" IS NULL THEN ',protective-equipment/stopped-machine-cool' ELSE '' END || CASE WHEN "protective-equipment/hot-water-or-steam" IS NULL THEN ',protective-equipment/hot-water-or-steam' ELSE '' END) AS "open"
FROM "rules of protective-equipment" JOIN "possible of protective-equipment" ON "possible of protective-equipment"."situation id" = "rules of protective-equipment"."situation id";

-- Something has spilled. Do I clean it up, and how?
CREATE VIEW "decide spill-response" AS WITH "given" AS (
  SELECT "situation id", "spill.what", "spill.across", "spill.sharps", "spill.amount", "spill.sheet", "spill.fumes", "spill.reached-someone"
  FROM "facts"
),
"rules of spill-response" AS (
  SELECT "given"."situation id",
    "spill.what" IN ('spilled-water') AS "spill-response/clean-water",
    ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND "spill.across" <= 1e+1) AND ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND "spill.sharps" = FALSE)) AS "spill-response/small-blood",
    ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND (("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND "spill.across" > 1e+1) OR ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND "spill.sharps" = TRUE))) AS "spill-response/large-blood-or-sharps",
    ("spill.what" IN ('spilled-chemical') AND ("spill.what" IN ('spilled-chemical') AND "spill.amount" <= 1e+0) AND ("spill.what" IN ('spilled-chemical') AND "spill.sheet" = TRUE) AND ("spill.what" IN ('spilled-chemical', 'spilled-unknown') AND "spill.fumes" = FALSE)) AS "spill-response/small-known-chemical",
    ("spill.what" IN ('spilled-unknown') OR ("spill.what" IN ('spilled-chemical') AND ("spill.what" IN ('spilled-chemical') AND "spill.amount" > 1e+0)) OR ("spill.what" IN ('spilled-chemical') AND ("spill.what" IN ('spilled-chemical') AND "spill.sheet" = FALSE))) AS "spill-response/not-ours",
    ("spill.what" IN ('spilled-blood', 'spilled-dirty-water') AND ("spill.what" IN ('spilled-blood', 'spilled-dirty-water', 'spilled-chemical', 'spilled-unknown') AND "spill.reached-someone" = TRUE)) AS "spill-response/blood-on-someone",
    ("spill.what" IN ('spilled-chemical', 'spilled-unknown') AND ("spill.what" IN ('spilled-blood', 'spilled-dirty-water', 'spilled-chemical', 'spilled-unknown') AND "spill.reached-someone" = TRUE)) AS "spill-response/chemical-on-someone",
    ("spill.what" IN ('spilled-chemical', 'spilled-unknown') AND ("spill.what" IN ('spilled-chemical', 'spilled-unknown') AND "spill.fumes" = TRUE)) AS "spill-response/fumes"
  FROM "given"
),
"possible of spill-response" AS (
  SELECT "situation id",
    (("spill-response/clean-water" IS NOT FALSE OR "spill-response/small-blood" IS NOT FALSE) AND "spill-response/large-blood-or-sharps" IS NOT TRUE AND "spill-response/small-known-chemical" IS NOT TRUE AND "spill-response/not-ours" IS NOT TRUE AND "spill-response/blood-on-someone" IS NOT TRUE AND "spill-response/chemical-on-someone" IS NOT TRUE AND "spill-response/fumes" IS NOT TRUE) AS "may be wipe-up",
    (("spill-response/large-blood-or-sharps" IS NOT FALSE OR "spill-response/small-known-chemical" IS NOT FALSE) AND "spill-response/not-ours" IS NOT TRUE AND "spill-response/blood-on-someone" IS NOT TRUE AND "spill-response/chemical-on-someone" IS NOT TRUE AND "spill-response/fumes" IS NOT TRUE) AS "may be spill-procedure",
    (("spill-response/not-ours" IS NOT FALSE OR "spill-response/blood-on-someone" IS NOT FALSE OR "spill-response/chemical-on-someone" IS NOT FALSE OR ("spill-response/clean-water" IS NOT TRUE AND "spill-response/small-blood" IS NOT TRUE AND "spill-response/large-blood-or-sharps" IS NOT TRUE AND "spill-response/small-known-chemical" IS NOT TRUE AND "spill-response/not-ours" IS NOT TRUE AND "spill-response/blood-on-someone" IS NOT TRUE AND "spill-response/chemical-on-someone" IS NOT TRUE AND "spill-response/fumes" IS NOT TRUE)) AND "spill-response/fumes" IS NOT TRUE) AS "may be get-the-lead",
    "spill-response/fumes" IS NOT FALSE AS "may be leave-the-room"
  FROM "rules of spill-response"
)
SELECT "rules of spill-response"."situation id",
  CASE WHEN "may be leave-the-room" THEN 'leave-the-room' WHEN "may be get-the-lead" THEN 'get-the-lead' WHEN "may be spill-procedure" THEN 'spill-procedure' WHEN "may be wipe-up" THEN 'wipe-up' ELSE 'get-the-lead' END AS "outcome",
  TRIM(LEADING ',' FROM CASE WHEN "may be wipe-up" THEN ',wipe-up' ELSE '' END || CASE WHEN "may be spill-procedure" THEN ',spill-procedure' ELSE '' END || CASE WHEN "may be get-the-lead" THEN ',get-the-lead' ELSE '' END || CASE WHEN "may be leave-the-room" THEN ',leave-the-room' ELSE '' END) AS "possible",
  (CASE WHEN "may be wipe-up" THEN 1 ELSE 0 END + CASE WHEN "may be spill-procedure" THEN 1 ELSE 0 END + CASE WHEN "may be get-the-lead" THEN 1 ELSE 0 END + CASE WHEN "may be leave-the-room" THEN 1 ELSE 0 END) = 1 AS "settled",
  TRIM(LEADING ',' FROM CASE WHEN "spill-response/clean-water" IS TRUE THEN ',spill-response/clean-water' ELSE '' END || CASE WHEN "spill-response/small-blood" IS TRUE THEN ',spill-response/small-blood' ELSE '' END || CASE WHEN "spill-response/large-blood-or-sharps" IS TRUE THEN ',spill-response/large-blood-or-sharps' ELSE '' END || CASE WHEN "spill-response/small-known-chemical" IS TRUE THEN ',spill-response/small-known-chemical' ELSE '' END || CASE WHEN "spill-response/not-ours" IS TRUE THEN ',spill-response/not-ours' ELSE '' END || CASE WHEN "spill-response/blood-on-someone" IS TRUE THEN ',spill-response/blood-on-someone' ELSE '' END || CASE WHEN "spill-response/chemical-on-someone" IS TRUE THEN ',spill-response/chemical-on-someone' ELSE '' END || CASE WHEN "spill-response/fumes" IS TRUE THEN ',spill-response/fumes' ELSE '' END) AS "certain",
  TRIM(LEADING ',' FROM CASE WHEN "spill-response/clean-water" IS NULL THEN ',spill-response/clean-water' ELSE '' END || CASE WHEN "spill-response/small-blood" IS NULL THEN ',spill-response/small-blood' ELSE '' END || CASE WHEN "spill-response/large-blood-or-sharps" IS NULL THEN ',spill-response/large-blood-or-sharps' ELSE '' END || CASE WHEN "spill-response/small-known-chemical" IS NULL THEN ',spill-response/small-known-chemical' ELSE '' END || CASE WHEN "spill-response/not-ours" IS NULL THEN ',spill-response/not-ours' ELSE '' END || CASE WHEN "spill-response/blood-on-someone" IS NULL THEN ',spill-response/blood-on-someone' ELSE '' END || CASE WHEN "spill-response/chemical-on-someone" IS NULL THEN ',spill-response/chemical-on-someone' ELSE '' END || CASE WHEN "spill-response/fumes" IS NULL THEN ',spill-response/fumes' ELSE '' END) AS "open"
FROM "rules of spill-response" JOIN "possible of spill-response" ON "possible of spill-response"."situation id" = "rules of spill-response"."situation id";
