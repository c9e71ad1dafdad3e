import type { ReferenceRow } from "./reference-rows.ts";
import { call, callLimits, checkRows, inUnit } from "./row-checks.ts";
import { labelled, named, numbers, quantity } from "./row-inputs.ts";

const degrees = (angle: number) => inUnit(angle, "degree");

/** Corner loads of `LF 310; RF 295; LR 260; RR 275 kg`: front left, front right, rear left, rear right. */
function corners(row: ReferenceRow): readonly number[] {
  return numbers(row.inputs);
}

checkRows("11_alignment_weights", [
  {
    quantity: /^total toe mm to degrees/,
    answer: () => [degrees(call("toe_angle", quantity("4 mm"), quantity("727.7 mm")))],
  },
  {
    quantity: /^toe per axle mm to degrees/,
    answer: ({ inputs }) => {
      const [toe = 0, , diameter = 0] = numbers(inputs);
      return [degrees(call("toe_angle", toe / 1000, diameter / 1000))];
    },
  },
  {
    quantity: /^toe degrees to mm/,
    answer: ({ inputs }) => {
      const [minutes = 0, diameter = 0] = numbers(inputs);
      return [inUnit(call("toe_distance", quantity(`${minutes}'`), diameter / 1000), "mm")];
    },
  },
  {
    quantity: /^camber from two-point gauge/,
    answer: ({ inputs }) => {
      const [offset = 0, height = 0] = numbers(inputs);
      return [degrees(call("camber_from_gauge", offset / 1000, height / 1000))];
    },
  },
  {
    quantity: /^caster, sine form/,
    answer: ({ inputs }) => [
      degrees(
        call(
          "caster_from_swing",
          named(inputs, "camber2"),
          named(inputs, "camber1"),
          quantity(`${Math.abs(numbers(inputs).at(-1) ?? 0)} deg`),
        ),
      ),
    ],
  },
  {
    quantity: /^ideal outer wheel angle/,
    answer: ({ inputs }) => {
      const wheelbase = named(inputs, "L");
      const track = quantity(/t=([^;]+)/.exec(inputs)?.[1] ?? "");
      const inner = labelled(inputs, "inner");
      const radius = wheelbase / Math.tan(inner) + track / 2;
      return [degrees(callLimits("ackermann", wheelbase, track, radius).lower)];
    },
  },
  {
    quantity: /^front % \/ left % \/ cross %/,
    answer: (row) =>
      ["axle_share", "side_share", "cross_weight"].map((name) => inUnit(call(name, ...corners(row)), "%")),
  },
  {
    quantity: /^longitudinal CG from front axle$/,
    answer: ({ inputs }) => {
      const rear = labelled(inputs, "rear axle load");
      const front = labelled(inputs, "total") - rear;
      const rearShare = 1 - call("axle_share", front / 2, front / 2, rear / 2, rear / 2);
      return [inUnit(named(inputs, "WB") * rearShare, "mm")];
    },
  },
]);
