/**
 * The work that can hurt, as data: which facts bring which caution. Prose and notes are never read for it, so a caution
 * comes from what a record says: words of what was sent out, methods, materials, fluids, and the names of parts.
 */
import type { Condition, Decision, FactWord, Method } from "./lowering/fact.ts";

export type CautionKind =
  | "lifted vehicle"
  | "spring under load"
  | "gas damper"
  | "fuel"
  | "fuel tank and heat"
  | "brake fluid"
  | "brake pedal"
  | "pistons and air"
  | "blasting media"
  | "old coatings"
  | "friction dust"
  | "battery"
  | "pressure test"
  | "hot coolant"
  | "chlorinated cleaner"
  | "burnt seals"
  | "paint mist"
  | "coated faces"
  | "magnesium"
  | "composite and heat"
  | "sodium valves"
  | "exhaust gas"
  | "first start"
  | "heated bearing"
  | "structural repair"
  | "plated fasteners"
  | "licensed work"
  | "dated equipment";

/** What brings a caution: a fact of one of these words on something of which everything stated here is true. */
export interface Trigger {
  readonly facts: readonly FactWord[];
  /** The last name of its path, in words. */
  readonly named?: RegExp;
  /** Its whole path and title, in words. */
  readonly about?: RegExp;
  /** The fluid of the system, or of a system that the part holds. */
  readonly fluid?: RegExp;
  readonly materials?: readonly string[];
  readonly methods?: readonly Method[];
  readonly decisions?: readonly Decision[];
  readonly conditions?: readonly Condition[];
  /** What it was sent out for. */
  readonly work?: RegExp;
  /** The title or name of the job. */
  readonly job?: RegExp;
  /** It was cleaned with solvent before. */
  readonly solvent?: true;
  /** Its failure can hurt. */
  readonly critical?: true;
  /** Running without a distance; the same for the first time in the log. */
  readonly running?: "on the spot" | "first";
}

export interface Caution {
  readonly kind: CautionKind;
  readonly triggers: readonly Trigger[];
}

export const WELDING = /\b(?:re-?)?(?:weld\w*|braz\w*|tig|mig)\b/i;
export const STRAIGHTENING = /\b(?:re-?)?(?:straighten\w*|bend\w*|bent)\b/i;
export const PLATING =
  /\b(?:electro|re-?)?plat(?:e|ed|ing)\b|\b(?:chrom(?:e|ed|ing)|cadmium|galvani[sz]\w*|zinc)\b/i;
const HEAT = new RegExp(
  `${WELDING.source}|\\b(?:solder\\w*|heat\\w*|powder|bak(?:e|ed|ing)|stov(?:e|ed|ing))\\b`,
  "i",
);
const MACHINING = /\b(?:machin\w*|turn\w*|drill\w*|mill\w*|grind\w*|bor(?:e|ed|ing)|rebor\w*|skim\w*)\b/i;
export const COATING = /\b(?:paint\w*|powder|coat\w*|enamel\w*|lacquer\w*|primer)\b/i;
const FUEL = /\b(?:petrol|gasoline|unleaded|octane|diesel|methanol|paraffin|fuel)\b/i;
const BRAKE_FLUID = /\bDOT ?\d/i;
const COOLANT = /\b(?:glycol|coolant|antifreeze|water)\b/i;
const LICENSED_FLUID = /\b(?:R ?-?(?:12|22|134a|1234yf)|refrigerant|LPG|propane|butane)\b/i;

export const CAUTIONS: readonly Caution[] = [
  { kind: "lifted vehicle", triggers: [{ facts: ["removed"], named: /^(?:road |front |rear )?wheels?$/ }] },
  {
    kind: "spring under load",
    triggers: [{ facts: ["removed", "fitted", "stripped"], named: /\bsprings?$/ }],
  },
  {
    kind: "gas damper",
    triggers: [
      { facts: ["stripped", "repaired"], named: /\b(?:dampers?|struts?|shock absorbers?)$/ },
      { facts: ["sent"], named: /\b(?:dampers?|struts?|shock absorbers?)$/, work: HEAT },
    ],
  },
  {
    kind: "fuel",
    triggers: [
      { facts: ["opened", "drained", "filled"], fluid: FUEL },
      { facts: ["removed", "stripped"], fluid: FUEL },
      { facts: ["removed", "stripped"], named: /\b(?:tank|pump|hoses?|pipes?|lines?|filter)$/, about: FUEL },
    ],
  },
  {
    kind: "fuel tank and heat",
    triggers: [
      { facts: ["sent"], named: /\btank$/, about: FUEL, work: HEAT },
      { facts: ["repaired"], named: /\btank$/, about: FUEL },
    ],
  },
  {
    kind: "brake fluid",
    triggers: [{ facts: ["opened", "drained", "filled", "bled", "removed"], fluid: BRAKE_FLUID }],
  },
  {
    kind: "brake pedal",
    triggers: [
      { facts: ["fitted"], named: /^(?:brake )?(?:pads?|shoes|calipers?|wheel cylinders?)$/ },
      { facts: ["fitted"], named: /\bpistons?$/, about: /\b(?:calipers?|brakes?)\b/ },
    ],
  },
  {
    kind: "pistons and air",
    triggers: [
      { facts: ["removed"], named: /\bpistons?$/, about: /\b(?:calipers?|brakes?|wheel cylinders?)\b/ },
      { facts: ["stripped"], named: /\b(?:calipers?|wheel cylinders?|masters?|master cylinders?)$/ },
    ],
  },
  {
    kind: "blasting media",
    triggers: [
      { facts: ["cleaned"], methods: ["blasting"], fluid: /./ },
      {
        facts: ["cleaned"],
        methods: ["blasting"],
        named: /\b(?:calipers?|cylinders?|masters?|block|head|crank|crankshaft|cases?|crankcases?)$/,
      },
    ],
  },
  { kind: "old coatings", triggers: [{ facts: ["cleaned"], methods: ["blasting"] }] },
  {
    kind: "friction dust",
    triggers: [
      {
        facts: ["removed", "stripped", "cleaned"],
        named: /\b(?:shoes|pads?|linings?|drums?|clutch|clutch plates?|gaskets?|wraps?|lagging)$/,
      },
    ],
  },
  { kind: "battery", triggers: [{ facts: ["removed", "fitted", "serviced"], named: /\bbattery$/ }] },
  {
    kind: "pressure test",
    triggers: [
      { facts: ["proved"], fluid: /./ },
      { facts: ["inspected"], methods: ["pressure"] },
    ],
  },
  { kind: "hot coolant", triggers: [{ facts: ["opened", "drained"], fluid: COOLANT }] },
  { kind: "chlorinated cleaner", triggers: [{ facts: ["sent", "repaired"], work: WELDING, solvent: true }] },
  {
    kind: "burnt seals",
    triggers: [{ facts: ["found"], named: /\b(?:seals?|o rings?)$/, conditions: ["glazed", "damaged"] }],
  },
  { kind: "paint mist", triggers: [{ facts: ["started", "worked"], job: COATING }] },
  { kind: "coated faces", triggers: [{ facts: ["sent"], work: COATING }] },
  {
    kind: "magnesium",
    triggers: [
      {
        facts: ["sent"],
        materials: ["magnesium"],
        work: new RegExp(`${HEAT.source}|${MACHINING.source}`, "i"),
      },
      { facts: ["repaired", "made"], materials: ["magnesium"] },
    ],
  },
  { kind: "composite and heat", triggers: [{ facts: ["sent"], materials: ["composite"], work: HEAT }] },
  {
    kind: "sodium valves",
    triggers: [
      {
        facts: ["decided"],
        named: /\bvalves?$/,
        about: /\b(?:exhaust|sodium)\b/,
        decisions: ["scrap", "modify"],
      },
      { facts: ["sent"], named: /\bvalves?$/, about: /\b(?:exhaust|sodium)\b/, work: MACHINING },
    ],
  },
  { kind: "exhaust gas", triggers: [{ facts: ["ran"], running: "on the spot" }] },
  { kind: "first start", triggers: [{ facts: ["ran"], running: "first" }] },
  { kind: "heated bearing", triggers: [{ facts: ["fitted"], named: /\bbearings?$/ }] },
  {
    kind: "structural repair",
    triggers: [
      { facts: ["repaired"], critical: true },
      {
        facts: ["sent", "repaired"],
        about: /\b(?:steering|hubs?|wishbones?|harness|uprights?)\b/,
        work: new RegExp(`${WELDING.source}|${STRAIGHTENING.source}|${PLATING.source}`, "i"),
      },
    ],
  },
  {
    kind: "plated fasteners",
    triggers: [
      { facts: ["sent"], named: /\b(?:bolts?|studs?|screws?|nuts?|fasteners?|fixings?)$/, work: PLATING },
    ],
  },
  {
    kind: "licensed work",
    triggers: [
      { facts: ["opened", "drained", "filled", "removed"], fluid: LICENSED_FLUID },
      {
        facts: ["removed", "stripped", "serviced"],
        named: /\b(?:extinguishers?|airbags?|pretensioners?|pyrotechnics?|traction battery)$/,
      },
    ],
  },
  {
    kind: "dated equipment",
    triggers: [{ facts: ["fitted"], named: /\b(?:extinguishers?|harness|belts?)$/, critical: true }],
  },
];
