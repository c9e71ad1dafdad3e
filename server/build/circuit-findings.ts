/** What is wrong with circuits, at the record that brought it: in the block, or in the latest `changed:`. */
import type { CircuitFault } from "./circuits.ts";
import { circuitFaults } from "./circuits.ts";
import { FUSE_SHARE } from "./figures.ts";
import type { Finding } from "./finding.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import { leaningPlace } from "./leaning.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import type { Review } from "./review.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import { testLack } from "./tests.ts";
import type { TreeNode } from "./tree/node.ts";

const ofFaults = new KeptOfEach<TreeNode, Finding>();
const ofTests = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfCircuits(review: Review): readonly (readonly Finding[])[] {
  const circuits = review.gathered.tree.ofKind("circuit");
  return [
    ofFaults.complaints(review, circuits, [], (own, circuit) => {
      for (const fault of circuitFaults(own, circuit)) complainOfFault(own, circuit, fault);
    }),
    ofTests.complaints(review, circuits, [], complainOfTest),
  ];
}

function complainOfFault(review: Review, circuit: TreeNode, fault: CircuitFault): void {
  const [place, ...others] = placesOf(review, circuit, fault.words);
  if (place === undefined) return;
  const extras = { seeAlso: others };
  const of = { circuit: circuit.path };
  switch (fault.is) {
    case "fuse over wire": {
      const { fuse, wire, carries } = fault;
      review.complainOf(circuit, "fuse-over-wire", place.place, { ...of, fuse, wire, carries }, extras);
      return;
    }
    case "fuse under load": {
      const { fuse, load, share } = fault;
      const data = { ...of, fuse, load, share, most: FUSE_SHARE };
      review.complainOf(circuit, "fuse-under-load", place.place, data, extras);
      return;
    }
    case "voltage drop": {
      const { drop, share, limit, load, back } = fault;
      const data = { ...of, drop, share, limit, load, back };
      review.complainOf(circuit, "voltage-drop", place.place, data, extras);
    }
  }
}

/** The records that a fault follows from, the latest `changed:` first, else in their order. */
function placesOf(
  { definitions, gathered }: Review,
  circuit: TreeNode,
  words: readonly RecordWord[],
): { readonly role: string; readonly place: Place }[] {
  const days = new Map(
    gathered.days.map((day, order) => [day.site, `${day.date} ${String(order).padStart(9)}`]),
  );
  return words
    .flatMap((word) => definitions.all(circuit, word))
    .map(({ record, site }) => ({
      role: record.word,
      place: placeAt(site, record.at),
      changed: days.get(site) ?? "",
    }))
    .sort((a, b) => (a.changed < b.changed ? 1 : a.changed > b.changed ? -1 : 0))
    .map(({ role, place }) => ({ role, place }));
}

/** A circuit on which something leans, and which nobody has tested since it was disturbed. */
function complainOfTest(review: Review, circuit: TreeNode): void {
  const lack = testLack(review, circuit);
  const leaning = lack && review.leaningOn(circuit, review.disturbed.get(circuit), "circuits");
  const place = circuit.header;
  if (lack === undefined || leaning === undefined || place === undefined) return;
  review.complainOf(
    circuit,
    "circuit-untested",
    place,
    { circuit: circuit.path, why: lack },
    { seeAlso: [leaningPlace(leaning)] },
  );
}
