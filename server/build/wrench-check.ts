/** Whether a torque wrench is fine enough for the torque that it is said to have given. */
import type { Limits } from "../quantities/limits.ts";
import { zone } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import type { NamedDefinition } from "./definitions.ts";
import { COARSE_TORQUE_SHARE, LEAST_SHARE_OF_RANGE } from "./figures.ts";
import type { LimitFindings } from "./finding-data/limits.ts";
import { torqueLimits } from "./joint-torque.ts";
import { rangesOf, uncertaintyFor } from "./judgement.ts";
import { Remembered } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/** A wrench too coarse for a joint's torque, or used so low in its range that its accuracy is not known. */
export function wrenchCoarseness(
  standing: Pick<Standing, "definitions">,
  joint: TreeNode,
  gauge: NamedDefinition,
  torque: Quantity,
): LimitFindings["gauge-too-coarse"] | undefined {
  return lowInRange(gauge, torque) ?? coarse(standing, joint, gauge, torque);
}

function lowInRange(gauge: NamedDefinition, torque: Quantity): LimitFindings["gauge-too-coarse"] | undefined {
  const tops = rangesOf(gauge).flatMap(({ upper }) => upper ?? []);
  const ratios = tops.flatMap((greatest) => {
    const same = convert(torque, greatest.unit);
    return isFault(same) || greatest.value.isZero()
      ? []
      : [{ greatest, ratio: same.value.div(greatest.value).toNumber() }];
  });
  const best = ratios.sort((a, b) => b.ratio - a.ratio).find(({ ratio }) => ratio <= 1);
  if (best === undefined || best.ratio >= LEAST_SHARE_OF_RANGE) return undefined;
  return { is: "low in its range", gauge: gauge.name, reading: torque, ...best, least: LEAST_SHARE_OF_RANGE };
}

function coarse(
  standing: Pick<Standing, "definitions">,
  joint: TreeNode,
  gauge: NamedDefinition,
  torque: Quantity,
): LimitFindings["gauge-too-coarse"] | undefined {
  const limits = torqueLimits(standing, joint);
  if (limits === undefined) return undefined;
  return remembered.of(limits, [gauge, torque], () => coarseFor(limits, gauge, torque));
}

/** What was last said of each joint's limits. */
const remembered = new Remembered<Limits, LimitFindings["gauge-too-coarse"] | undefined>();

function coarseFor(
  limits: Limits,
  gauge: NamedDefinition,
  torque: Quantity,
): LimitFindings["gauge-too-coarse"] | undefined {
  const whole = limits.lower === undefined || limits.upper === undefined ? undefined : zone(limits);
  const uncertainty = uncertaintyFor(undefined, gauge, torque);
  const same = unlessFault(whole && uncertainty && convert(uncertainty, whole.unit));
  if (whole === undefined || uncertainty === undefined || same === undefined || whole.value.isZero())
    return undefined;
  const ratio = same.value.div(whole.value).abs().toNumber();
  if (ratio <= COARSE_TORQUE_SHARE) return undefined;
  return {
    is: "coarse for a torque",
    gauge: gauge.name,
    uncertainty,
    zone: whole,
    ratio,
    most: COARSE_TORQUE_SHARE,
  };
}
