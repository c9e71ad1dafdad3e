/** Copies that still point at the parts of what they were copied from. */
import type { ReferenceNode } from "../../grammar/syntax.ts";
import type { Finding } from "./finding.ts";
import { KeptOfAll } from "./kept-of-each.ts";
import type { Review } from "./review.ts";
import { placeAt } from "./source.ts";
import type { SourcedRecord, TreeKind, TreeNode } from "./tree/node.ts";
import { isWithin } from "./tree/node.ts";

const ofAll = new KeptOfAll<readonly Finding[]>();

export function complaintsOfCopies(review: Review): readonly Finding[] {
  const { tree } = review.gathered;
  return ofAll.complaints(review, [], (own) => {
    for (const node of tree.nodes()) if (node.copyOf !== undefined) complainOfCopy(own, node);
  });
}

/** The records that tie a thing to others of its own corner. */
const TYING = ["joins", "set_by", "fit", "pair"] as const;

function complainOfCopy(review: Review, copy: TreeNode): void {
  const { header } = copy;
  for (const word of TYING) {
    for (const sourced of review.definitions.all(copy, word)) {
      const targets = pointingBack(review, copy, sourced);
      if (targets.length === 0 || header === undefined) continue;
      const place = placeAt(sourced.site, sourced.record.at);
      review.complainOf(
        copy,
        "like-points-back",
        header,
        { copy: copy.path, original: copy.copyOf ?? "", word, targets },
        { seeAlso: [{ place, role: "copied" }] },
      );
    }
  }
}

/**
 * The things that a copied record means as the original did, although they lie in the original's branch and not in the
 * copy's. A reference that the copying turned is right: a pair of left with right becomes one of right with left.
 */
function pointingBack(review: Review, copy: TreeNode, { record, turns }: TyingRecord): readonly string[] {
  const [home, own] = [parentPath(copy.copyOf ?? ""), parentPath(copy.path)];
  if (turns.length === 0 || home === undefined || home === own) return [];
  return referencesOf(record)
    .flatMap(({ reference, member }) => {
      const before = targetsOf(review, reference, member, []);
      return targetsOf(review, reference, member, turns).filter((node) => before.includes(node));
    })
    .map(({ path }) => path)
    .filter((path) => isWithin(path, home) && (own === undefined || !isWithin(path, own)));
}

type TyingRecord = SourcedRecord<(typeof TYING)[number]>;

function referencesOf(
  record: TyingRecord["record"],
): readonly { readonly reference: ReferenceNode; readonly member: boolean }[] {
  switch (record.word) {
    case "joins":
      return record.references.map((reference) => ({ reference, member: false }));
    case "set_by":
      return [{ reference: record.reference, member: true }];
    default:
      return [{ reference: record.other, member: true }];
  }
}

const PARTS: readonly TreeKind[] = ["part"];

function targetsOf(
  { names, definitions }: Review,
  reference: ReferenceNode,
  member: boolean,
  turns: SourcedRecord["turns"],
): readonly TreeNode[] {
  if (!member) return names.targets(reference, PARTS, turns).map(({ node }) => node);
  const { node } = names.member(definitions, reference, turns);
  return node === undefined ? [] : [node];
}

/** The branch that a path lies in; undefined at the top of the tree. */
function parentPath(path: string): string | undefined {
  const dot = path.lastIndexOf(".");
  return dot < 0 ? undefined : path.slice(0, dot);
}
