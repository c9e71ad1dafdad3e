/** Alignment and weights: wheel angles, corner weights, centre of gravity. Angles in rad. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";

/** Toe angle of a difference across the rim. */
function toeAngle(toe: number, rimDiameter: number): number {
  return Math.asin(toe / rimDiameter);
}

/** Difference across the rim of a toe angle. */
function toeDistance(angle: number, rimDiameter: number): number {
  return rimDiameter * Math.sin(angle);
}

/** Castor of a swing, sine form. */
function castorFromSwing(camberToeOut: number, camberToeIn: number, steer: number): number {
  return (camberToeOut - camberToeIn) / (2 * Math.sin(steer));
}

/** Angles of the inner and the outer wheel that roll about one point. */
function ackermannAngles(
  wheelbase: number,
  track: number,
  radius: number,
): { readonly inner: number; readonly outer: number } {
  return {
    inner: Math.atan(wheelbase / (radius - track / 2)),
    outer: Math.atan(wheelbase / (radius + track / 2)),
  };
}

interface CornerWeights {
  readonly frontLeft: number;
  readonly frontRight: number;
  readonly rearLeft: number;
  readonly rearRight: number;
}

function total({ frontLeft, frontRight, rearLeft, rearRight }: CornerWeights): number {
  return frontLeft + frontRight + rearLeft + rearRight;
}

/** Share of the diagonal from the right front to the left rear wheel. */
function crossWeight(weights: CornerWeights): number {
  return (weights.frontRight + weights.rearLeft) / total(weights);
}

const degrees = (angle: number) => ((angle * 180) / Math.PI).toFixed(2);

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;
const angle = { is: "quantity", dimension: "angle", unit: "deg" } as const;
const angleResult = { is: "quantity", dimension: "angle", unit: "deg" } as const;
const degree = Math.PI / 180;
const rimDiameter = {
  ...length,
  name: "rim_diameter",
  min: 0.05,
  max: 2,
  doc: "Diameter at the height where toe is measured.",
} as const;
const camber = { ...angle, min: -30 * degree, max: 30 * degree } as const;
const corner = { is: "any quantity", among: ["mass", "force"], min: 0, max: 1e6 } as const;
const corners = [
  { ...corner, name: "front_left", doc: "Load under the left front wheel." },
  { ...corner, name: "front_right", doc: "Load under the right front wheel." },
  { ...corner, name: "rear_left", doc: "Load under the left rear wheel." },
  { ...corner, name: "rear_right", doc: "Load under the right rear wheel." },
] as const;
const cornerLimits = "Level pads, tyres at pressure, the load of the setup in place, suspension settled.";

function shareFunction(
  name: string,
  share: (weights: CornerWeights) => number,
  texts: {
    readonly summary: string;
    readonly formula: string;
    readonly meaning: string;
    readonly note: string;
  },
): TradeFunction {
  const { note, ...description } = texts;
  return defineFunction({
    name,
    group: "alignment",
    parameters: corners,
    returns: { is: "number", unit: "%" },
    source: "definition",
    limits: cornerLimits,
    ...description,
    compute: ({ front_left, front_right, rear_left, rear_right }) => {
      const weights = {
        frontLeft: front_left,
        frontRight: front_right,
        rearLeft: rear_left,
        rearRight: rear_right,
      };
      return total(weights) > 0
        ? { value: share(weights), notes: [note] }
        : { fault: { kind: "impossible", reason: "all four loads are zero" } };
    },
  });
}

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "toe_angle",
    group: "alignment",
    parameters: [
      {
        ...length,
        name: "toe",
        min: -0.2,
        max: 0.2,
        doc: "Behind less in front, across the rims; positive is toe-in.",
      },
      rimDiameter,
    ],
    returns: angleResult,
    summary: "Toe as an angle.",
    formula: "asin(toe / rim diameter)",
    source: "definition",
    meaning: "Total toe gives the total angle; halve it for each wheel. Positive is inwards.",
    compute: ({ toe, rim_diameter }) =>
      Math.abs(toe) > rim_diameter
        ? {
            fault: {
              kind: "out-of-range",
              parameter: "toe",
              value: toe,
              min: -rim_diameter,
              max: rim_diameter,
              unit: "mm",
            },
          }
        : { value: toeAngle(toe, rim_diameter) },
  }),
  defineFunction({
    name: "toe_distance",
    group: "alignment",
    parameters: [
      { ...angle, name: "angle", min: -30 * degree, max: 30 * degree, doc: "Toe angle; positive is toe-in." },
      rimDiameter,
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Toe as a difference across the rims.",
    formula: "rim diameter × sin(angle)",
    source: "definition",
    meaning: "The total angle gives total toe. Positive is inwards.",
    compute: ({ angle, rim_diameter }) => ({ value: toeDistance(angle, rim_diameter) }),
  }),
  defineFunction({
    name: "camber_from_gauge",
    group: "alignment",
    parameters: [
      {
        ...length,
        name: "offset",
        min: -0.3,
        max: 0.3,
        doc: "How much further out the top of the rim is than the bottom.",
      },
      { ...length, name: "height", min: 0.05, max: 2, doc: "Upright distance between the two points." },
    ],
    returns: angleResult,
    summary: "Camber from a plumb line or square at the rim.",
    formula: "atan(offset / height)",
    source: "plane trigonometry",
    meaning: "Negative with the top inwards.",
    limits: "On level ground; run-out of the rim turned out or averaged.",
    compute: ({ offset, height }) => ({ value: Math.atan(offset / height) }),
  }),
  defineFunction({
    name: "castor_from_swing",
    aliases: ["caster_from_swing"],
    group: "alignment",
    parameters: [
      { ...camber, name: "camber_toe_out", doc: "Camber with the wheel turned outwards." },
      { ...camber, name: "camber_toe_in", doc: "Camber with the wheel turned inwards by as much." },
      { ...angle, name: "steer", min: 1 * degree, max: 45 * degree, doc: "How far it is turned each way." },
    ],
    returns: angleResult,
    summary: "Castor from the change of camber in a swing of the steering.",
    formula: "(camber turned to toe-out − camber turned to toe-in) / (2 sin steer)",
    source: "small-angle camber swing (SAE alignment texts)",
    meaning: "Positive with the top rearwards. The sine form; the rule of thumb at 20° is a factor of 1.5.",
    limits: "Both turns equal, brake locked, wheels on turntables.",
    compute: ({ camber_toe_out, camber_toe_in, steer }) => {
      const factor = 1 / (2 * Math.sin(steer));
      const ruleOfThumb = 180 / (Math.PI * 2 * ((steer * 180) / Math.PI));
      return {
        value: castorFromSwing(camber_toe_out, camber_toe_in, steer),
        notes: [
          `factor ${factor.toFixed(4)} = 1/(2 sin steer); rule of thumb for small turns ${ruleOfThumb.toFixed(4)}, rounded to 1.5 at 20 deg`,
        ],
      };
    },
  }),
  defineFunction({
    name: "ackermann",
    group: "alignment",
    parameters: [
      { ...length, name: "wheelbase", min: 0.2, max: 10, doc: "From axle to axle." },
      { ...length, name: "track", min: 0.1, max: 4, doc: "Between the kingpin axes." },
      {
        ...length,
        name: "radius",
        min: 0.2,
        max: 1000,
        doc: "From the centre of the turn to the middle of the rear axle.",
      },
    ],
    returns: { is: "limits", dimension: "angle", unit: "deg" },
    summary: "Steering angles of the outer and the inner wheel without scrub.",
    formula: "outer atan(L / (R + t/2)), inner atan(L / (R − t/2)); cot outer − cot inner = t/L",
    source: "Ackermann condition; Khurmi and Gupta, Theory of Machines, ch. 9",
    meaning:
      "The lower figure is the outer wheel, the upper one the inner wheel; the note gives toe-out on turns.",
    compute: ({ wheelbase, track, radius }) => {
      if (radius <= track / 2) {
        return {
          fault: { kind: "out-of-range", parameter: "radius", value: radius, min: track / 2, unit: "m" },
        };
      }
      const { inner, outer } = ackermannAngles(wheelbase, track, radius);
      return {
        value: { lower: outer, upper: inner },
        notes: [
          `outer ${degrees(outer)} deg, inner ${degrees(inner)} deg: toe-out on turns ${degrees(inner - outer)} deg`,
        ],
      };
    },
  }),
  shareFunction("cross_weight", crossWeight, {
    summary: "Share of the weight on the diagonal from right front to left rear.",
    formula: "(front right + rear left) / total",
    meaning: "The diagonal right front + left rear; half is balanced when the sides are equal.",
    note: "diagonal: right front + left rear",
  }),
  shareFunction("side_share", (weights) => (weights.frontLeft + weights.rearLeft) / total(weights), {
    summary: "Share of the weight on the left side.",
    formula: "(front left + rear left) / total",
    meaning: "The left side, as seen from the driver's seat.",
    note: "left side",
  }),
  shareFunction("axle_share", (weights) => (weights.frontLeft + weights.frontRight) / total(weights), {
    summary: "Share of the weight on the front axle.",
    formula: "(front left + front right) / total",
    meaning: "The front axle.",
    note: "front axle",
  }),
  defineFunction({
    name: "cg_height",
    group: "alignment",
    parameters: [
      { ...length, name: "wheelbase", min: 0.2, max: 10, doc: "From axle to axle." },
      { ...corner, name: "total", doc: "Weight of the whole vehicle." },
      { ...corner, name: "front_level", doc: "Load of the front axle, level." },
      { ...corner, name: "front_raised", doc: "Load of the front axle with the rear wheels raised." },
      { ...length, name: "rise", min: 0.01, max: 5, doc: "How high the rear wheels stand." },
      {
        ...length,
        name: "wheel_radius",
        min: 0.05,
        max: 1,
        doc: "Loaded radius of the wheels, the same front and rear.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Height of the centre of gravity above the ground.",
    formula: "h = r + L (F_raised − F_level) / (W tan θ), sin θ = rise / L",
    source: "moments about the front axle",
    meaning: "Rear raised, front on the scales; springs blocked so that the car does not squat.",
    limits:
      "A few per cent of error in the loads is a tenth of the height. Chock the front wheels, rear wheels on a firm platform, nobody under it.",
    compute: ({ wheelbase, total, front_level, front_raised, rise, wheel_radius }) => {
      if (rise >= wheelbase) {
        return {
          fault: { kind: "out-of-range", parameter: "rise", value: rise, max: wheelbase, unit: "mm" },
        };
      }
      if (total <= Math.max(front_level, front_raised)) {
        return { fault: { kind: "impossible", reason: "an axle cannot weigh as much as the whole vehicle" } };
      }
      const slope = Math.tan(Math.asin(rise / wheelbase));
      const height = wheel_radius + (wheelbase * (front_raised - front_level)) / (total * slope);
      if (height <= 0) {
        const reason =
          "that far below the ground nothing has its weight: the front axle weighs more once the rear is raised";
        return { fault: { kind: "impossible", reason } };
      }
      return {
        value: height,
        notes: [
          "a raised vehicle: chock the wheels on the ground, stand it on a firm platform, nobody under it",
        ],
      };
    },
  }),
];

export function alignmentFunctions(): readonly TradeFunction[] {
  return functions;
}
