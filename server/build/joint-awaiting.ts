/** What the final tightening of a joint waits for: a job, met once it is started; a hold point, once it is released. */
import type { NamedDefinition } from "./definitions.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

export interface Awaiting {
  readonly kind: "job" | "hold";
  readonly definition: NamedDefinition;
  readonly sourced: SourcedRecord<"after">;
  /** The fact that met it; undefined while it is waited for. */
  readonly met: DatedFact | undefined;
}

/** Everything that a joint waits for, or has waited for. */
export function awaitingOf(
  { definitions, names, jobs, holds }: Pick<Standing, "definitions" | "names" | "jobs" | "holds">,
  joint: TreeNode,
): readonly Awaiting[] {
  return definitions.all(joint, "after").flatMap((sourced) =>
    sourced.record.references.flatMap((reference): Awaiting[] => {
      const job = names.named("job", reference.text);
      if (job !== undefined) {
        const state = jobs.get(job);
        return [{ kind: "job", definition: job, sourced, met: state?.started ?? state?.done }];
      }
      const hold = names.named("hold", reference.text);
      if (hold === undefined) return [];
      const state = holds.get(hold);
      const met = state?.lapsed === undefined ? state?.released : undefined;
      return [{ kind: "hold", definition: hold, sourced, met }];
    }),
  );
}

/** The first thing that a joint still waits for. */
export function awaitedBy(
  standing: Pick<Standing, "definitions" | "names" | "jobs" | "holds">,
  joint: TreeNode,
): Awaiting | undefined {
  return awaitingOf(standing, joint).find(({ met }) => met === undefined);
}
