/**
 * Where the work of a day can hurt, or weaken what must not fail. A caution is shown once in a day block for each kind,
 * at the first fact that brings it.
 */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import type { CareMemory } from "../care-memory.ts";
import type { Caution, Trigger } from "../cautions.ts";
import { CAUTIONS, COATING, PLATING, STRAIGHTENING, WELDING } from "../cautions.ts";
import { connectionsOf } from "../connections.ts";
import { isCritical } from "../criticality.ts";
import type { FactWord, Method } from "../lowering/fact.ts";
import type { DatedFact } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Replay } from "./replay.ts";

/** What a fact calls for care about, when all others have heard of it. */
export function takeCare(replay: Replay, fact: DatedFact): void {
  new Care(replay).read(fact);
}

const BY_FACT: ReadonlyMap<FactWord, readonly Caution[]> = groupByFact();

function groupByFact(): Map<FactWord, Caution[]> {
  const grouped = new Map<FactWord, Caution[]>();
  for (const caution of CAUTIONS) {
    for (const word of new Set(caution.triggers.flatMap(({ facts }) => facts)))
      grouped.set(word, [...(grouped.get(word) ?? []), caution]);
  }
  return grouped;
}

/** Facts of which something else is said, or remembered for later ones. */
const REMEMBERED: ReadonlySet<FactWord> = new Set(["sent", "inspected", "ran", "cleaned", "fitted"]);

/** Materials that do not magnetise, so that magnetic particles find nothing in them. */
const NOT_MAGNETIC: ReadonlySet<string> = new Set([
  "aluminium",
  "magnesium",
  "titanium",
  "brass",
  "bronze",
  "copper",
  "copper_nickel",
  "composite",
  "rubber",
  "plastic",
  "glass",
  "timber",
  "leather",
]);

class Care {
  private readonly replay: Replay;
  private readonly before: CareMemory;

  constructor(replay: Replay) {
    this.replay = replay;
    this.before = replay.care;
  }

  read(fact: DatedFact): void {
    const cautions = this.cautionsFor(fact);
    if (cautions.length === 0 && !REMEMBERED.has(fact.fact.word)) return;
    const subjects = this.subjectsOf(fact);
    for (const caution of cautions) this.show(caution, fact, subjects);
    if (fact.fact.word === "sent") this.complainOfWork(fact as DatedFact<"sent">, subjects);
    if (fact.fact.word === "inspected") this.complainOfMethod(fact as DatedFact<"inspected">, subjects);
    this.remember(fact, subjects);
  }

  /** The cautions that a fact may bring, without those that its day has shown. */
  private cautionsFor({ fact, place }: DatedFact): readonly Caution[] {
    const cautions = BY_FACT.get(fact.word);
    if (cautions === undefined) return [];
    const shown = this.before.shownIn(place.site);
    return cautions.filter(({ kind }) => !shown.has(kind));
  }

  private show({ kind, triggers }: Caution, fact: DatedFact, subjects: readonly TreeNode[]): void {
    const shown = this.before.shownIn(fact.place.site);
    if (shown.has(kind)) return;
    const trigger = triggers.find(
      (one) => one.facts.includes(fact.fact.word) && this.holds(one, fact) && this.met(one, subjects),
    );
    if (trigger === undefined) return;
    shown.add(kind);
    const subject = subjects.find((node) => this.isMeant(trigger, node));
    const what = subject?.path ?? "";
    this.replay.complain("safety-caution", fact.place, { kind, what }, { subject });
  }

  private met(trigger: Trigger, subjects: readonly TreeNode[]): boolean {
    const aboutNothing = trigger.job !== undefined || trigger.running !== undefined;
    return aboutNothing || subjects.some((node) => this.isMeant(trigger, node));
  }

  /** What a trigger asks of the fact itself. */
  private holds(
    { methods, decisions, conditions, work, job, running }: Trigger,
    { fact }: DatedFact,
  ): boolean {
    const method = "method" in fact ? fact.method : undefined;
    if (methods !== undefined && (method === undefined || !methods.includes(method))) return false;
    if (decisions !== undefined && !(fact.word === "decided" && decisions.includes(fact.decision)))
      return false;
    if (conditions !== undefined) {
      const found = fact.word === "found" ? fact.conditions : [];
      if (!found.some(({ condition }) => conditions.includes(condition))) return false;
    }
    if (work !== undefined && !(fact.word === "sent" && work.test(fact.work ?? ""))) return false;
    if (job !== undefined && !this.jobsOf(fact).some((title) => job.test(title))) return false;
    if (running === undefined) return true;
    const onTheSpot = fact.word === "ran" && fact.distance === undefined;
    return onTheSpot && !(running === "first" && this.before.hasRun);
  }

  /** What a trigger asks of the thing. */
  private isMeant({ named, about, fluid, materials, solvent, critical }: Trigger, node: TreeNode): boolean {
    const words = wordsOf(node);
    if (named !== undefined && !named.test(words.named)) return false;
    if (about !== undefined && !about.test(words.about)) return false;
    if (fluid !== undefined && !this.fluidsOf(node).some((text) => fluid.test(text))) return false;
    if (materials !== undefined && !materials.includes(this.materialOf(node) ?? "")) return false;
    if (solvent === true && !this.before.solvent.get(node)) return false;
    return critical !== true || isCritical(this.replay, node);
  }

  /** Work sent out that weakens what must not fail: one complaint for the lot. */
  private complainOfWork(fact: DatedFact<"sent">, subjects: readonly TreeNode[]): void {
    const work = fact.fact.work ?? "";
    const plated = PLATING.test(work) ? subjects.filter((node) => this.isHardened(node)) : [];
    const [first] = plated;
    if (first !== undefined) {
      const forbidden = plated.some((node) => isCritical(this.replay, node) && this.isHardest(node));
      const data = { what: plated.map(({ path }) => path), work, forbidden };
      this.replay.complainOf(first, "embrittlement", fact.place, data);
    }
    if (![WELDING, STRAIGHTENING, PLATING].some((pattern) => pattern.test(work))) return;
    const critical = subjects.filter((node) => isCritical(this.replay, node) && !plated.includes(node));
    const [weakened] = critical;
    if (weakened === undefined) return;
    const what = critical.map(({ path }) => path);
    this.replay.complainOf(weakened, "safety-weld", fact.place, { what, work });
  }

  /** A spring, or a fastener that says it is of class 10.9 or 12.9. */
  private isHardened(node: TreeNode): boolean {
    return /\bsprings?$/.test(wordsOf(node).named) || /\b1[02]\.9\b/.test(node.title ?? "");
  }

  private isHardest(node: TreeNode): boolean {
    return /\bsprings?$/.test(wordsOf(node).named) || /\b12\.9\b/.test(node.title ?? "");
  }

  private complainOfMethod(fact: DatedFact<"inspected">, subjects: readonly TreeNode[]): void {
    const { method } = fact.fact;
    if (method === "magnetic_particle") this.complainOfMaterial(fact, method, subjects);
    if (method !== "penetrant") return;
    for (const face of ["blasted", "painted"] as const) {
      const closed = subjects.filter((node) => this.before.faces.get(node) === face);
      const [first] = closed;
      if (first === undefined) continue;
      const data = { is: "face", what: closed.map(({ path }) => path), method, face } as const;
      this.replay.complainOf(first, "inspection-method", fact.place, data);
    }
  }

  private complainOfMaterial(
    fact: DatedFact<"inspected">,
    method: Method,
    subjects: readonly TreeNode[],
  ): void {
    const wrong = subjects.filter((node) => NOT_MAGNETIC.has(this.materialOf(node) ?? ""));
    const [first] = wrong;
    if (first === undefined) return;
    const material = this.materialOf(first) ?? "";
    const data = { is: "material", what: wrong.map(({ path }) => path), method, material } as const;
    this.replay.complainOf(first, "inspection-method", fact.place, data);
  }

  private remember({ fact }: DatedFact, subjects: readonly TreeNode[]): void {
    if (fact.word === "ran") this.before.hasRun = true;
    if (fact.word === "cleaned") {
      for (const node of subjects) {
        this.before.faces.set(node, fact.method === "blasting" ? "blasted" : "cleaned");
        if (fact.method === "solvent") this.before.solvent.set(node, true);
      }
    }
    if (fact.word === "sent" && COATING.test(fact.work ?? ""))
      for (const node of subjects) this.before.faces.set(node, "painted");
    if (fact.word === "fitted") for (const node of subjects) this.before.solvent.set(node, false);
  }

  /** The parts and systems that a fact is about; of what came off as a unit the unit alone. */
  private subjectsOf({ fact }: DatedFact): readonly TreeNode[] {
    const references = referencesOf(fact);
    if (references.length === 0) return [];
    const kinds = ["part", "system"] as const;
    const targets = references.flatMap((reference) => this.replay.names.targets(reference, kinds));
    const unit = fact.word === "removed" && fact.asUnit;
    return targets.filter(({ through }) => !unit || through === undefined).map(({ node }) => node);
  }

  private jobsOf(fact: DatedFact["fact"]): readonly string[] {
    const references = fact.word === "worked" ? [fact.on] : fact.word === "started" ? fact.what : [];
    return references.flatMap((reference) => {
      const job = this.replay.named("job", reference);
      return job === undefined ? [] : [`${job.name.replaceAll(/[._]/g, " ")} ${job.title ?? ""}`];
    });
  }

  private fluidsOf(node: TreeNode): readonly string[] {
    const systems = node.kind === "system" ? [node] : connectionsOf(this.replay).systemsOf(node);
    return systems.flatMap((system) => this.replay.definitions.one(system, "fluid")?.record.text ?? []);
  }

  private materialOf(node: TreeNode): string | undefined {
    return this.replay.definitions.one(node, "material")?.record.choice;
  }
}

interface Words {
  readonly named: string;
  readonly about: string;
}

const remembered = new WeakMap<TreeNode, Words>();

/** The last name of a thing, and its whole path with its title, in words. */
function wordsOf(node: TreeNode): Words {
  const known = remembered.get(node);
  if (known !== undefined) return known;
  const inWords = node.path.toLowerCase().replaceAll("_", " ");
  const named = inWords.slice(inWords.lastIndexOf(".") + 1);
  const words = { named, about: `${inWords.replaceAll(".", " ")} ${node.title?.toLowerCase() ?? ""}` };
  remembered.set(node, words);
  return words;
}

/** Facts about jobs, hold points and gauges name no parts. */
const ELSEWHERE: ReadonlySet<FactWord> = new Set(["started", "done", "released", "calibrated", "tested"]);

function referencesOf(fact: DatedFact["fact"]): readonly ReferenceNode[] {
  if (ELSEWHERE.has(fact.word)) return [];
  if (fact.word === "decided") return fact.items.map(({ reference }) => reference);
  return "what" in fact ? fact.what : [];
}
