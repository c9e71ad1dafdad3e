/**
 * Verdicts on each of many things, kept from one build to the next. Of a build that goes on from another one only those
 * are looked at that a change may touch (`Memory`); each of these is kept if it would be the same (`Lookups`).
 */
import type { Finding } from "./finding.ts";
import { complaintsIn } from "./kept.ts";
import { Lookups } from "./lookups.ts";
import { isSame } from "./remembered.ts";
import { Review } from "./review.ts";
import type { TreeNode } from "./tree/node.ts";

/** Verdicts on each of many things. */
export class KeptOfEach<Thing extends object, Result> {
  /**
   * The results of all things in their order: the same list as long as all are the same.
   *
   * @param things each once
   * @param inputs what they are made from besides what is looked up in the review that `judge` is given
   */
  of(
    review: Review,
    things: readonly Thing[],
    inputs: readonly unknown[],
    judge: (review: Review, thing: Thing) => readonly Result[],
  ): readonly Result[] {
    const { memory, source } = review;
    if (memory === undefined || !memory.keeps(source)) return things.flatMap((thing) => judge(review, thing));
    const roll = memory.rollOf<Thing, Result>(this);
    if (!isSame(roll.inputs, inputs)) roll.dismissAll();
    else if (roll.doubtful.size > 0)
      roll.dismiss([...roll.doubtful].filter(({ lookups }) => !lookups.holdIn(source)));
    if (roll.things !== things && !isSame(roll.things, things)) roll.goOnWith(things);
    roll.inputs = inputs;
    for (const thing of roll.without) {
      const lookups = new Lookups(source);
      const results = judge(new Review(lookups.noteIn(source), true), thing);
      lookups.close();
      roll.enter({ thing, lookups, results });
    }
    return roll.together;
  }

  /** What is to be complained of each thing. */
  complaints(
    this: KeptOfEach<Thing, Finding>,
    review: Review,
    things: readonly Thing[],
    inputs: readonly unknown[],
    complain: (review: Review, thing: Thing) => void,
  ): readonly Finding[] {
    return this.of(review, things, inputs, (own, thing) => complaintsIn(own, () => complain(own, thing)));
  }
}

/** One verdict on a build as a whole. */
export class KeptOfAll<Result> {
  private readonly onVehicle = new KeptOfEach<TreeNode, Result>();

  /** The result; the same object as long as it would be the same. */
  of(review: Review, inputs: readonly unknown[], judge: (review: Review) => Result): Result {
    const { root } = review.gathered.tree;
    return this.onVehicle.of(review, [root], inputs, (own) => [judge(own)])[0] as Result;
  }

  /** What is to be complained of. */
  complaints(
    this: KeptOfAll<readonly Finding[]>,
    review: Review,
    inputs: readonly unknown[],
    complain: (review: Review) => void,
  ): readonly Finding[] {
    return this.of(review, inputs, (own) => complaintsIn(own, complain));
  }
}
