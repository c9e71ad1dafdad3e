/**
 * What is open for a hold point: everything that it covers and asks for and that is not as it must be, at one moment of
 * the diary. Waivers and severities play no part in it.
 */
import type { IsoDate } from "../quantities/dates.ts";
import { laterDate } from "../quantities/dates.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { calculatedLimits } from "./calculated-limits.ts";
import { circuitFaults, isCircuitError } from "./circuits.ts";
import { condemnation } from "./condemnation.ts";
import { coverOf } from "./cover.ts";
import { isCritical } from "./criticality.ts";
import type { NamedDefinition } from "./definitions.ts";
import { fitsOf } from "./fits.ts";
import { isShut, jobsAskedBy, predecessorsOf } from "./hold-order.ts";
import { judgeReading, newestReadings, recordOf, unmeasuredLimits } from "./judgement.ts";
import { asksFor } from "./leaning.ts";
import { isInUse, isOver, livesOf } from "./lives.ts";
import type { HoldNeed } from "./lowering/definition-record.ts";
import type { OpenItem, OutsideData } from "./open-item.ts";
import { openItem } from "./open-item.ts";
import { unseenSince } from "./second-look.ts";
import { securing } from "./securing.ts";
import { settingsOf } from "./setting-check.ts";
import { snagsOpenFor } from "./snag-check.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { PartState, Reading } from "./states.ts";
import { systemLack, wrongFluid } from "./system-check.ts";
import { holdTestLack, namedTestLack, testLack } from "./tests.ts";
import type { TreeNode } from "./tree/node.ts";

/** Everything that is open for a hold point: things in the order of definition, then snags, jobs, tests, hold points, lines. */
export function openItems(standing: Standing, hold: NamedDefinition): readonly OpenItem[] {
  return [...new Inspection(standing, hold).all()];
}

/** What is open for a hold point of these things alone; none of a thing that it does not cover. */
export function openItemsOf(
  standing: Standing,
  hold: NamedDefinition,
  nodes: Iterable<TreeNode>,
): readonly OpenItem[] {
  const inspection = new Inspection(standing, hold);
  const { nodes: covered } = coverOf(standing, hold);
  return [...nodes].filter((node) => covered.has(node)).flatMap((node) => [...inspection.of(node)]);
}

/** What is open for a hold point apart from the things that it covers: snags, jobs, its own tests, what comes before, lines. */
export function openBesides(standing: Standing, hold: NamedDefinition): readonly OpenItem[] {
  return [...new Inspection(standing, hold).besides()];
}

/** The snags that are open for a hold point, and what is open of its own inspection list. */
export function openSnagsAndTests(standing: Standing, hold: NamedDefinition): readonly OpenItem[] {
  const inspection = new Inspection(standing, hold);
  return [...inspection.snags(), ...inspection.ownTests()];
}

class Inspection {
  private readonly standing: Standing;
  private readonly hold: NamedDefinition;
  /** The day by which lives have to last. */
  private readonly by: IsoDate;

  constructor(standing: Standing, hold: NamedDefinition) {
    this.standing = standing;
    this.hold = hold;
    this.by = laterDate(recordOf(hold, "planned")?.date ?? standing.date, standing.date);
  }

  *all(): Generator<OpenItem> {
    for (const node of coverOf(this.standing, this.hold).nodes) yield* this.of(node);
    yield* this.besides();
  }

  *besides(): Generator<OpenItem> {
    yield* this.snags();
    yield* this.jobs();
    yield* this.ownTests();
    yield* this.before();
    yield* this.lines();
  }

  *of(node: TreeNode): Generator<OpenItem> {
    const { parts, joints, systems } = this.standing;
    const part = parts.get(node);
    if (part !== undefined) {
      if (isNoConcern(part)) return;
      const places = [...this.place(part)];
      yield* places;
      // What is not there is neither measured nor tested.
      if (places.some(({ code }) => code === "part-off")) return;
    }
    if (joints.has(node) && this.asks("joints")) yield* this.joint(node);
    if (systems.has(node) && this.asks("systems")) yield* this.system(node);
    if (node.kind === "circuit" && this.asks("circuits")) yield* this.circuit(node);
    yield* this.limits(node, part);
    if (this.asks("settings")) yield* this.settings(node);
    if (part !== undefined && this.asks("lives")) yield* this.lives(part);
    if (this.asks("tests") && !(node.kind === "circuit" && this.asks("circuits"))) yield* this.tests(node);
  }

  private asks(need: HoldNeed): boolean {
    return asksFor(this.hold, need);
  }

  private *place(part: PartState): Generator<OpenItem> {
    if (!this.asks("parts")) return;
    const { node, place, placed, missing } = part;
    const line = placed?.place ?? this.headerOf(node);
    const since = placed?.date;
    if (place === "off" || place === "away" || place === "gone") {
      const where = missing ? "missing" : place;
      yield openItem("part-off", node, { where, since }, line);
      return;
    }
    if (place === "trial") yield openItem("part-on-trial", node, { since }, line);
    const condemned = condemnation(this.standing, part);
    if (condemned !== undefined) {
      const { why, fact } = condemned;
      yield openItem("part-condemned", node, { why, since: fact.date }, fact.place);
    }
    const unseen = unseenSince(this.standing, part);
    if (unseen !== undefined) yield openItem("part-not-seen", node, { since: unseen.date }, unseen.place);
  }

  private *joint(node: TreeNode): Generator<OpenItem> {
    const { secured, lacks, place } = securing(this.standing, node);
    if (!secured) yield openItem("joint-unsecured", node, { lacks }, place ?? this.headerOf(node));
  }

  private *system(node: TreeNode): Generator<OpenItem> {
    const state = this.standing.systems.get(node);
    if (state === undefined) return;
    const { opened, filled, refusedProof } = state;
    const lack = systemLack(this.standing, state);
    const line = opened?.place ?? this.headerOf(node);
    const since = opened?.date;
    if (lack === "fluid") yield openItem("system-open", node, { since }, line);
    if (lack === "bleeding") yield openItem("system-not-bled", node, { since }, line);
    if (lack === "proof") {
      const refused = refusedProof !== undefined;
      yield openItem("system-not-proved", node, { since, refused }, refusedProof?.place ?? line);
    }
    const wrong = wrongFluid(this.standing, state, filled);
    if (wrong !== undefined && filled !== undefined)
      yield openItem("system-wrong-fluid", node, wrong, filled.place);
  }

  private *circuit(node: TreeNode): Generator<OpenItem> {
    for (const fault of circuitFaults(this.standing, node)) {
      if (isCircuitError(fault) && fault.is !== "voltage drop") {
        const sourced = this.standing.definitions.one(node, fault.words[0]);
        const line = sourced && placeAt(sourced.site, sourced.record.at);
        yield openItem("circuit-at-fault", node, { fault: fault.is }, line ?? this.headerOf(node));
      }
    }
    const why = testLack(this.standing, node);
    if (why !== undefined) yield openItem("circuit-untested", node, { why }, this.headerOf(node));
  }

  /** Readings outside refuse a part; on what can hurt, a limit must be proved, and so measured. */
  private *limits(node: TreeNode, part: PartState | undefined): Generator<OpenItem> {
    const asked = this.asks("limits");
    if (!asked && !(part !== undefined && this.asks("parts"))) return;
    const readings = part?.item.readings ?? this.standing.readings.get(node) ?? [];
    const critical = asked && isCritical(this.standing, node);
    for (const reading of newestReadings({ readings })) {
      for (const { verdict } of judgeReading(this.standing, reading)) {
        const outside = verdict.verdict === "outside";
        if (!outside && !(critical && verdict.verdict === "uncertain")) continue;
        const data = dataOf(reading.name, verdict);
        yield openItem(outside ? "limit-refused" : "limit-unproven", node, data, reading.fact.place);
      }
    }
    yield* this.calculated(node, critical);
    yield* this.fits(node);
    if (critical) yield* this.unmeasured(node, readings);
  }

  /** Limits that a calculation answers. */
  private *calculated(node: TreeNode, critical: boolean): Generator<OpenItem> {
    if (this.standing.definitions.one(node, "limit") === undefined) return;
    for (const { limit, calculation, verdict } of calculatedLimits(this.standing, node)) {
      const { name } = limit.record;
      if (verdict === undefined && critical)
        yield openItem("limit-unmeasured", node, { name }, calculation.place);
      if (verdict?.verdict === "outside")
        yield openItem("limit-refused", node, dataOf(name, verdict), calculation.place);
    }
  }

  private *fits(node: TreeNode): Generator<OpenItem> {
    if (this.standing.definitions.one(node, "fit") === undefined) return;
    for (const { record, inner, outer, outerNode, outerName, verdict } of fitsOf(this.standing, node)) {
      if (verdict.verdict !== "outside") continue;
      const { sense, name } = record.record;
      const data = dataOf(`${sense} of ${name} in ${outerNode.path}.${outerName}`, verdict);
      const newest = (outer.fact?.order ?? -1) > (inner.fact?.order ?? -1) ? outer : inner;
      yield openItem("limit-refused", node, data, newest.place);
    }
  }

  private *unmeasured(node: TreeNode, readings: readonly Reading[]): Generator<OpenItem> {
    for (const { record, site } of unmeasuredLimits(this.standing, node, { readings })) {
      yield openItem("limit-unmeasured", node, { name: record.name }, placeAt(site, record.at));
    }
  }

  private *settings(node: TreeNode): Generator<OpenItem> {
    for (const { wanted, asSet, verdict } of settingsOf(this.standing, node)) {
      const [newest] = asSet;
      const { name } = wanted.record;
      if (newest === undefined)
        yield openItem("setting-not-set", node, { name }, placeAt(wanted.site, wanted.record.at));
      else if (verdict?.verdict === "outside")
        yield openItem("setting-out", node, dataOf(name, verdict), newest.fact.place);
    }
  }

  private *lives(part: PartState): Generator<OpenItem> {
    if (!isInUse(this.standing, part)) return;
    const critical = isCritical(this.standing, part.node);
    for (const life of livesOf(this.standing, part)) {
      if (isOver(life, this.by)) {
        if (life.is === "dated")
          yield openItem("life-over", part.node, { is: "date", ends: life.ends, by: this.by }, life.place);
        if (life.is === "running")
          yield openItem(
            "life-over",
            part.node,
            { is: "running", used: life.used, amount: life.amount },
            life.place,
          );
      } else if (critical && life.is === "unknown")
        yield openItem("age-unknown", part.node, { counted: life.counted }, life.place);
      else if (critical && life.is === "running" && !life.known)
        yield openItem("age-unknown", part.node, { counted: "running" }, life.place);
    }
  }

  private *tests(node: TreeNode): Generator<OpenItem> {
    for (const { record, site } of this.standing.definitions.all(node, "test")) {
      const { name, how } = record;
      const why = namedTestLack(this.standing, node, name);
      if (why !== undefined)
        yield openItem("test-not-passed", node, { name, how, why }, placeAt(site, record.at));
    }
  }

  *snags(): Generator<OpenItem> {
    if (!this.asks("snags")) return;
    for (const { name, on, fact } of snagsOpenFor(this.standing, this.hold)) {
      const data = { name, note: fact.fact.note };
      yield openItem("snag-open", on ?? name, data, fact.place);
    }
  }

  private *jobs(): Generator<OpenItem> {
    if (!this.asks("jobs")) return;
    for (const { definition, started, done } of jobsAskedBy(this.standing, this.hold)) {
      if (done === undefined)
        yield openItem(
          "job-not-done",
          definition.name,
          { started: started !== undefined },
          definition.header,
        );
    }
  }

  /** The inspection list of the hold point itself. */
  *ownTests(): Generator<OpenItem> {
    if (!this.asks("tests")) return;
    for (const { record, site } of this.hold.records) {
      if (record.word !== "test") continue;
      const { name, how } = record;
      const why = holdTestLack(this.standing, this.hold, name);
      if (why !== undefined)
        yield openItem("test-not-passed", this.hold.name, { name, how, why }, placeAt(site, record.at));
    }
  }

  /** Hold points and jobs that come before this one. */
  private *before(): Generator<OpenItem> {
    const jobsAsked = this.asks("jobs") ? jobsAskedBy(this.standing, this.hold) : [];
    for (const definition of predecessorsOf(this.standing, this.hold)) {
      const job = this.standing.jobs.get(definition);
      if (job !== undefined && job.done === undefined && !jobsAsked.includes(job)) {
        const data = { started: job.started !== undefined };
        yield openItem("job-not-done", definition.name, data, definition.header);
      }
      const hold = this.standing.holds.get(definition);
      if (hold !== undefined && isShut(hold)) {
        const data = { lapsed: hold.lapsed !== undefined };
        yield openItem("hold-shut", definition.name, data, definition.header);
      }
    }
  }

  /** Lines that could not be read and may concern it: all of them where it covers the whole vehicle. */
  private *lines(): Generator<OpenItem> {
    const { whole, nodes: covered } = coverOf(this.standing, this.hold);
    for (const { place, text, nodes, hold } of this.standing.lost) {
      const concerns =
        whole || hold === this.hold || nodes === undefined || [...nodes].some((node) => covered.has(node));
      if (concerns) yield openItem("line-unread", "", { text }, place);
    }
  }

  private headerOf(node: TreeNode): Place {
    return node.header ?? this.hold.header;
  }
}

function dataOf(name: string, { reading, limit, side, uncertainty }: Verdict): OutsideData {
  return { name, reading, limit, side, uncertainty };
}

/** Goods on the shelf are not on the vehicle; what was scrapped and not asked for again is not missed. */
function isNoConcern({ place, decision }: PartState): boolean {
  return place === "shelf" || (place === "gone" && decision?.decision === "scrap");
}
