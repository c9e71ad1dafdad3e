/** A verdict is kept for as long as all that it looked up would be found again, and no longer. */
import { deepStrictEqual } from "node:assert/strict";
import { beforeEach, describe, expect, test } from "vitest";
import type { Finding } from "../../server/build/finding.ts";
import { complainOnce, Kept } from "../../server/build/kept.ts";
import type { Leaning } from "../../server/build/leaning.ts";
import type { LostLine } from "../../server/build/lost-lines.ts";
import { Review } from "../../server/build/review.ts";
import type { Standing } from "../../server/build/standing.ts";
import { TABLES } from "../../server/build/standing.ts";
import { AspectSet } from "../../server/build/tree/aspect.ts";
import type { TreeNode } from "../../server/build/tree/node.ts";
import type { Counting } from "../../server/build/tree/written.ts";

const KEY = {};
const disc = { path: "disc" } as TreeNode;
const hub = { path: "hub" } as TreeNode;
const [one, other] = [{ is: "one" }, { is: "other" }];

/** What is the same object in every build, unless a test says otherwise. */
const LASTING = { names: {}, definitions: {}, date: "2026-05-02", lost: [] as readonly LostLine[], days: [] };

type Changed = Partial<Record<(typeof TABLES)[number], ReadonlyMap<unknown, unknown>>> &
  Partial<typeof LASTING> & {
    readonly about?: readonly LostLine[];
    readonly leans?: Leaning;
    readonly keeps?: boolean;
  };

/** A diary that has been read; every table but those given is empty. */
function review({ about = [], leans, keeps = true, days = LASTING.days, ...changed }: Changed = {}): Review {
  const { names, definitions, date, lost } = LASTING;
  const tables = Object.fromEntries(TABLES.map((name) => [name, new Map()]));
  const gathered = { vehicle: {}, tree: {}, named: new Map(), days, findings: [] };
  const standing = { ...tables, names, definitions, date, lost, gathered, ...changed } as unknown as Standing;
  const leanings = { on: () => leans, areAs: () => false };
  return new Review({ standing, lostAbout: () => about, leanings }, keeps);
}

let made = 0;
let kept = new Kept<object, unknown>();

beforeEach(() => {
  made = 0;
  kept = new Kept();
});

/** Makes or finds a result again in each of some builds, and tells how often it was made. */
function timesMade(look: (standing: Standing) => unknown, ...builds: readonly Standing[]): number {
  for (const build of builds) {
    const result = kept.of(build, KEY, [], (standing) => {
      made++;
      return look(standing);
    });
    // What is found again is what would be made.
    deepStrictEqual(result, look(build));
  }
  return made;
}

describe.each(TABLES)("of the table of %s", (name) => {
  const get = (standing: Standing) => (standing[name] as ReadonlyMap<unknown, unknown>).get(disc);
  const all = (standing: Standing) => [...(standing[name] as ReadonlyMap<unknown, unknown>).values()];
  const has = (standing: Standing) => (standing[name] as ReadonlyMap<unknown, unknown>).has(disc);
  const withDisc = (state: unknown) => review({ [name]: new Map([[disc, state]]) });

  test("one state that is the same is found again", () => {
    expect(timesMade(get, withDisc(one), withDisc(one))).toBe(1);
    expect(timesMade(get, review({ [name]: new Map([...[[disc, one] as const], [hub, other]]) }))).toBe(1);
  });

  test("another state makes it anew", () => {
    expect(timesMade(get, withDisc(one), withDisc(other), withDisc(other))).toBe(2);
  });

  test("a state that was not there makes it anew, also where only its presence was asked for", () => {
    expect(timesMade(has, review(), withDisc(one))).toBe(2);
  });

  test("the whole table is the same only as the same object", () => {
    const table = new Map([[disc, one]]);
    expect(timesMade(all, review({ [name]: table }), review({ [name]: table }))).toBe(1);
    expect(timesMade(all, review({ [name]: new Map(table) }))).toBe(2);
  });
});

test.each([
  ["size", ({ parts }: Standing) => parts.size],
  ["keys", ({ parts }: Standing) => [...parts.keys()]],
  ["entries", ({ parts }: Standing) => [...parts.entries()]],
  ["iteration", ({ parts }: Standing) => [...parts]],
  [
    "forEach",
    ({ parts }: Standing) => {
      const seen: unknown[] = [];
      // biome-ignore lint/complexity/noForEach: it is what is tried.
      parts.forEach((part) => {
        seen.push(part);
      });
      return seen;
    },
  ],
])("the %s of a table hangs on all of it", (_, look) => {
  expect(timesMade(look, review(), review({ parts: new Map([[disc, one]]) }))).toBe(2);
});

test("days and lines that could not be read count where they were looked at", () => {
  const days = ({ gathered }: Standing) => gathered.days;
  expect(timesMade(days, review(), review(), review({ days: [] }))).toBe(2);
  kept = new Kept();
  const lost = (standing: Standing) => standing.lost;
  expect(timesMade(lost, review(), review(), review({ lost: [] }))).toBe(4);
  kept = new Kept();
  expect(timesMade(() => 1, review(), review({ days: [], lost: [] }))).toBe(5);
});

test("lines about a thing count one by one", () => {
  const [line, another] = [{}, {}] as [LostLine, LostLine];
  const look = (standing: Standing) => (standing as Review).source.lostAbout(disc);
  expect(timesMade(look, review({ about: [line] }), review({ about: [line] }))).toBe(1);
  expect(timesMade(look, review({ about: [another] }))).toBe(2);
  expect(timesMade(look, review({ about: [another, line] }))).toBe(3);
});

/** Definitions that say this of each thing, and nothing of sets of words but whether they are the same. */
function definitionsOf(said: ReadonlyMap<TreeNode, object>, since: object): Standing["definitions"] {
  const counting = (node: TreeNode) => said.get(node) ?? NOTHING_SAID;
  return {
    counting,
    ofThing: counting,
    unread: (node: TreeNode) => (counting(node) as Counting).unread,
    all: (node: TreeNode) => [counting(node)],
    one: counting,
    asWritten: counting,
    since: () => since,
    moment: {},
  } as unknown as Standing["definitions"];
}

const NOTHING_SAID = { unread: [] };
const WORDS = new AspectSet("material");

test.each([
  ["every record", ({ definitions }: Standing) => definitions.all(disc, "size")],
  ["one record", ({ definitions }: Standing) => definitions.one(disc, "size")],
  ["a record as written", ({ definitions }: Standing) => definitions.asWritten(disc, "size")],
  ["what could not be read", ({ definitions }: Standing) => definitions.unread(disc)],
  ["all that counts", ({ definitions }: Standing) => definitions.counting(disc)],
  ["what of a thing is the same", ({ definitions }: Standing) => definitions.ofThing(disc, WORDS)],
])("%s of a thing hangs on what is said of it, and on nothing that is said of others", (_, look) => {
  const since = {};
  const [first, second] = [{ unread: ["size"] }, { unread: ["limit"] }];
  const saying = (ofDisc: object, ofHub: object) =>
    review({
      definitions: definitionsOf(
        new Map([
          [disc, ofDisc],
          [hub, ofHub],
        ]),
        since,
      ),
    });
  expect(
    timesMade(
      look,
      saying(first, first),
      saying(first, second),
      review({ definitions: definitionsOf(new Map([[disc, first]]), {}) }),
    ),
  ).toBe(1);
  expect(timesMade(look, saying(second, second))).toBe(2);
});

test("what is the same since some words were last said otherwise hangs on those words", () => {
  const since = ({ definitions }: Standing) => definitions.since(WORDS);
  const [then, now] = [{}, {}];
  const at = (token: object, said: ReadonlyMap<TreeNode, object> = new Map()) =>
    review({ definitions: definitionsOf(said, token) });
  expect(timesMade(since, at(then), at(then, new Map([[disc, one]])))).toBe(1);
  expect(timesMade(since, at(now))).toBe(2);
});

test("other definitions are no matter to who asked nothing of them", () => {
  const of = (said: object) => review({ definitions: definitionsOf(new Map([[disc, said]]), {}) });
  expect(timesMade(() => 1, of(one), of(other))).toBe(1);
});

test.each(["names", "date"] as const)("other %s make everything anew", (what) => {
  const changed = what === "date" ? { date: "2026-05-03" } : { [what]: {} };
  expect(timesMade(() => 1, review(), review(), review(changed))).toBe(2);
});

test("other inputs make it anew", () => {
  const ofInputs = (inputs: readonly unknown[]) => kept.of(review(), KEY, inputs, () => ++made);
  expect([ofInputs([one]), ofInputs([one]), ofInputs([other]), ofInputs([])]).toEqual([1, 1, 2, 3]);
});

test("what is kept within another counts for that one too", () => {
  const inner = new Kept<object, unknown>();
  const look = (standing: Standing) => inner.of(standing, KEY, [], (own) => own.parts.get(disc));
  const withDisc = (state: unknown) => review({ parts: new Map([[disc, state]]) as Standing["parts"] });
  // The inner one is there already when the outer one is made.
  look(withDisc(one));
  expect(timesMade(look, withDisc(one), withDisc(one), withDisc(other))).toBe(2);
});

test("nothing is kept while a diary is being read, or where no other build goes on from this one", () => {
  const { standing } = review().source;
  expect(timesMade(() => 1, standing, standing)).toBe(2);
  expect(timesMade(() => 1, review({ keeps: false }), review({ keeps: false }))).toBe(4);
});

test("complaints are made once, and said each time", () => {
  const keptFindings = new Kept<object, readonly Finding[]>();
  const said = [review(), review()].map((own) => {
    own.findings.push({ code: "day-order" } as Finding);
    complainOnce(keptFindings, own, KEY, [], ({ findings }) => {
      made++;
      findings.push({ code: "no-vehicle" } as Finding);
    });
    return own.findings.map(({ code }) => code);
  });
  expect(said).toEqual([
    ["day-order", "no-vehicle"],
    ["day-order", "no-vehicle"],
  ]);
  expect(made).toBe(1);
});
