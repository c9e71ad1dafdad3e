/** One difference between two revisions of a build, in the terms of the build. */
import type { NamedKind } from "../../build/block-definition.ts";
import type { Place } from "../../build/source.ts";
import type { TreeKind } from "../../build/tree/node.ts";

/** Every kind of change, with its words. A kind may be added within a number of the schema, none taken away. */
export const CHANGE_KINDS = {
  added: "added",
  removed: "taken out",
  renamed: "renamed",
  "limit-loosened": "limit loosened",
  "limit-tightened": "limit tightened",
  "limit-added": "limit added",
  "limit-removed": "limit taken out",
  "torque-changed": "torque changed",
  "definition-changed": "defined otherwise",
  "reading-added": "reading added",
  "reading-altered": "reading altered after the fact",
  "reading-removed": "reading taken out",
  "fact-added": "added to a recorded day",
  "fact-altered": "altered after the fact",
  "fact-removed": "taken out after the fact",
  "day-added": "day added",
  "day-inserted": "day inserted before the last recorded one",
  "day-removed": "day taken out",
  "day-moved": "day given another date",
  "prose-altered": "words altered after the fact",
  "state-changed": "state",
  "order-added": "now to order",
  "order-removed": "no longer to order",
  "order-changed": "to order otherwise",
  "order-total": "order total",
  "forecast-moved": "forecast moved",
  "hold-moved": "expected on another day",
  "complaint-added": "new complaint",
  "complaint-gone": "complaint answered",
} as const;

export type ChangeKind = keyof typeof CHANGE_KINDS;

/** What kind of thing a change is about; `build` is the whole. */
export type ChangedThing = TreeKind | NamedKind | "day" | "snag" | "test" | "order" | "build";

export interface Change {
  readonly kind: ChangeKind;
  /** The path or name of the thing; of a day its date. */
  readonly ref: string;
  readonly what: ChangedThing;
  readonly title: string | undefined;
  readonly before: string | undefined;
  readonly after: string | undefined;
  /** The day of the diary that it is about. */
  readonly day: string | undefined;
  /** It is of a kind that a reader should see first: something recorded is otherwise now, or less is asked. */
  readonly standsOut: boolean;
  /** Where it stands: in the later revision, unless it is no longer there. */
  readonly at: { readonly side: "before" | "after"; readonly place: Place } | undefined;
}

/** A change with what most of them do not have left out. */
export type Changed = Pick<Change, "kind" | "ref" | "what"> & Partial<Change>;

export function change(changed: Changed): Change {
  return {
    title: undefined,
    before: undefined,
    after: undefined,
    day: undefined,
    standsOut: ALWAYS.has(changed.kind),
    at: undefined,
    ...changed,
  };
}

const ALWAYS: ReadonlySet<ChangeKind> = new Set<ChangeKind>([
  "limit-loosened",
  "limit-removed",
  "torque-changed",
  "reading-altered",
  "reading-removed",
  "fact-altered",
  "fact-removed",
  "day-inserted",
  "day-removed",
  "day-moved",
]);

export function inAfter(place: Place | undefined): Change["at"] {
  return place && { side: "after", place };
}

export function inBefore(place: Place | undefined): Change["at"] {
  return place && { side: "before", place };
}
