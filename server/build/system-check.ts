/** What a fluid system still lacks of what it asks for: fluid, bleeding, proof. */
import { compare } from "../quantities/quantity.ts";
import { connectionsOf } from "./connections.ts";
import type { ProofComplaint } from "./finding-data/systems.ts";
import { isOtherFluid } from "./fluids.ts";
import type { DefinitionRecord } from "./lowering/definition-record.ts";
import { pastUnknown } from "./past.ts";
import { securing } from "./securing.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, SystemState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

export type SystemLack = "fluid" | "bleeding" | "proof";

/**
 * The first thing that a system lacks; undefined where it is as it asks. One that nobody has opened is trusted where the
 * vehicle's past is known. Bleeding fills as well: `bled:` counts without a `filled:`.
 */
export function systemLack(standing: Standing, state: SystemState): SystemLack | undefined {
  const { node, opened, filled, bled, proved, drained } = state;
  const untouched = opened === undefined;
  if (untouched && !pastUnknown(standing)) return undefined;
  const unbled = asksBleeding(standing, node) && bled === undefined;
  if (!untouched && filled === undefined && bled === undefined && (drained !== undefined || !unbled))
    return "fluid";
  if (unbled) return "bleeding";
  return asksProof(standing, node) !== undefined && proved === undefined ? "proof" : undefined;
}

export function asksBleeding({ definitions }: Pick<Standing, "definitions">, system: TreeNode): boolean {
  return definitions.one(system, "bleed")?.record.yes === true;
}

export function asksProof(
  { definitions }: Pick<Standing, "definitions">,
  system: TreeNode,
): DefinitionRecord<"pressure_test"> | undefined {
  return definitions.one(system, "pressure_test")?.record;
}

/** What it was filled with last, where that is another fluid than it takes. */
export function wrongFluid(
  { definitions }: Pick<Standing, "definitions">,
  { node }: Pick<SystemState, "node">,
  filled: DatedFact<"filled"> | undefined,
): { readonly asked: string; readonly filled: string } | undefined {
  const asked = definitions.one(node, "fluid")?.record.text;
  const got = filled?.fact.fluid;
  return asked !== undefined && got !== undefined && isOtherFluid(asked, got)
    ? { asked, filled: got }
    : undefined;
}

/** What speaks against a proof at this moment; a pressure or time that it does not state is taken as the one asked. */
export function proofDoubt(
  standing: Standing,
  state: SystemState,
  { pressure, time }: DatedFact<"proved">["fact"],
): ProofComplaint | undefined {
  const asked = asksProof(standing, state.node);
  if (state.stage === "open") return { why: "open" };
  if (asked !== undefined && pressure !== undefined && compare(pressure, asked.pressure) === -1)
    return { why: "pressure", proved: pressure, asked: asked.pressure };
  if (asked?.time !== undefined && time !== undefined && compare(time, asked.time) === -1)
    return { why: "time", proved: time, asked: asked.time };
  for (const joint of connectionsOf(standing).jointsOn(state.node)) {
    const { secured, lacks } = securing(standing, joint);
    if (!secured) return { why: "joint", joint: joint.path, lacks };
  }
  return undefined;
}
