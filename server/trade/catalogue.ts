/** All functions of the trade, by name and by alias. */

import { alignmentFunctions } from "./alignment.ts";
import { boltFunctions } from "./bolt-functions.ts";
import { brakeFunctions } from "./brakes.ts";
import { driveFunctions } from "./drive.ts";
import { electricFunctions } from "./electric-functions.ts";
import { engineFunctions } from "./engine.ts";
import { fitFunctions } from "./fits.ts";
import type { TradeFunction } from "./function.ts";
import { measurementFunctions } from "./measurement.ts";
import { shaftFunctions } from "./shafts.ts";
import { springFunctions } from "./springs.ts";
import { threadFunctions } from "./thread-functions.ts";
import { tighteningFunctions } from "./tightening-functions.ts";

interface Subject {
  /** Of its functions, aliases included: it is loaded when one of them is asked for. */
  readonly names: string;
  readonly functions: () => readonly TradeFunction[];
}

/** In the order of the reference page. */
const subjects: readonly Subject[] = [
  {
    functions: threadFunctions,
    names:
      "pitch major_diameter pitch_diameter effective_diameter minor_diameter root_diameter stress_area tap_drill",
  },
  { functions: boltFunctions, names: "proof_load yield_load tensile_load thread_length" },
  {
    functions: tighteningFunctions,
    names:
      "preload preload_friction torque_for torque_for_friction torque_of_class assembly_preload torque_of_class_friction wrench_setting thread_engagement protrusion",
  },
  {
    functions: fitFunctions,
    names: "limits_of tolerance_grade fit_range thermal_growth heat_to_fit interference_pressure press_force",
  },
  { functions: measurementFunctions, names: "expanded combine total_runout" },
  {
    functions: springFunctions,
    names: "spring_rate spring_stress spring_series spring_parallel wheel_rate ride_frequency",
  },
  { functions: shaftFunctions, names: "torsion_stress twist" },
  {
    functions: driveFunctions,
    names:
      "overall_ratio road_speed engine_speed_at tyre_diameter chain_length chain_centres sprocket_diameter piston_speed",
  },
  {
    functions: brakeFunctions,
    names: "piston_area line_pressure clamp_force brake_torque bar_share brake_split pedal_travel",
  },
  {
    functions: alignmentFunctions,
    names:
      "toe_angle toe_distance camber_from_gauge castor_from_swing caster_from_swing ackermann cross_weight side_share axle_share cg_height",
  },
  { functions: electricFunctions, names: "wire_area wire_resistance voltage_drop fuse_for wire_for" },
  {
    functions: engineFunctions,
    names: "swept_volume compression_ratio clearance_volume ring_gap_range power freeze_point",
  },
];

/** By every name that may be written. */
const subjectNamed: ReadonlyMap<string, Subject> = new Map(
  subjects.flatMap((subject) => subject.names.split(" ").map((name) => [name, subject] as const)),
);

/** Every name that may be written, aliases included. */
export const tradeNames: readonly string[] = [...subjectNamed.keys()];

/** Of that name or alias; undefined where there is none. */
export function tradeFunction(name: string): TradeFunction | undefined {
  return subjectNamed
    .get(name)
    ?.functions()
    .find((entry) => entry.name === name || entry.aliases.includes(name));
}

/** All, in the order of the reference page. */
export function tradeFunctions(): readonly TradeFunction[] {
  return subjects.flatMap(({ functions }) => functions());
}
