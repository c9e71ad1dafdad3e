/** Lives that are over or end too soon, services that are due, ages that nobody knows. */
import type { Finding } from "./finding.ts";
import { serviceOf } from "./intervals.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import { leaningPlace } from "./leaning.ts";
import type { Life } from "./lives.ts";
import { isInUse, isOver, livesOf } from "./lives.ts";
import { pastUnknown } from "./past.ts";
import { holdMissed, plannedHolds } from "./planned-holds.ts";
import type { Review } from "./review.ts";
import type { PartState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

const ofParts = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfLives(review: Review): readonly Finding[] {
  return ofParts.complaints(review, review.gathered.tree.ofKind("part"), [], (own, node) => {
    const part = own.parts.get(node);
    if (part === undefined) return;
    const lifed = part.item.expires !== undefined || own.definitions.one(node, "life") !== undefined;
    const serviced = own.definitions.one(node, "service") !== undefined;
    if ((!lifed && !serviced) || !isInUse(own, part)) return;
    if (lifed) for (const life of livesOf(own, part)) complainOfLife(own, part, life);
    if (serviced) complainOfService(own, part);
  });
}

function complainOfLife(review: Review, { node, item }: PartState, life: Life): void {
  const what = node.path;
  const since = item.since === undefined ? [] : [{ place: item.since.place, role: "fitted" }];
  const extras = { seeAlso: since.filter(({ place }) => place !== life.place) };
  if (life.is === "unknown") {
    const { counted, duration } = life;
    review.complainOf(node, "no-made-date", life.place, { what, counted, life: duration }, extras);
  } else if (isOver(life, review.date)) {
    const data =
      life.is === "dated"
        ? ({ is: "date", what, ends: life.ends, today: review.date } as const)
        : ({ is: "running", what, used: life.used, amount: life.amount } as const);
    review.complainOf(node, "life-expired", life.place, data, extras);
  } else if (life.is === "dated") {
    const missed = holdMissed(review, plannedHolds(review), node, life.ends);
    if (missed === undefined) return;
    const { definition } = missed;
    const data = {
      what,
      ends: life.ends,
      hold: definition.name,
      title: definition.title,
      planned: missed.planned,
    };
    review.complainOf(node, "life-ends-soon", life.place, data, {
      seeAlso: [...extras.seeAlso, { place: definition.header, role: "hold point" }],
    });
  }
}

/** The service that is due by its interval, or by what the last one said; of unknown date once something leans on it. */
function complainOfService(review: Review, part: PartState): void {
  const interval = serviceOf(review, part);
  if (interval === undefined) return;
  const { node } = part;
  const { every, record, from, done, due } = interval;
  const data = { what: node.path, every, serviced: done?.date, due };
  if (from === undefined) {
    const leaning = pastUnknown(review) ? review.leaningOn(node, undefined, "lives") : undefined;
    if (leaning !== undefined)
      review.complainOf(node, "service-due", record, data, { seeAlso: [leaningPlace(leaning)] });
  } else if (due !== undefined && due < review.date) {
    const seeAlso = done === undefined ? [] : [{ place: record, role: "service" }];
    review.complainOf(node, "service-due", done?.place ?? record, data, { seeAlso });
  }
}
