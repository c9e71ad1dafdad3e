import { call, checkRows, inUnit } from "./row-checks.ts";
import { labelled, numbers, quantity } from "./row-inputs.ts";

checkRows("10_hydraulics_brakes", [
  {
    quantity: /^cylinder bore for force at pressure$/,
    answer: () => {
      const area = quantity("450 lbf") / quantity("100 psi");
      return [inUnit(Math.sqrt(area / call("piston_area", 0.1, 1)) * 0.1, "in")];
    },
  },
  {
    quantity: /^intensified pressure/,
    answer: () => {
      const force = call("clamp_force", quantity("100 psi"), call("piston_area", quantity("4 in"), 1));
      return [inUnit(call("line_pressure", force / 2, 2, quantity("1 in")), "psi")];
    },
  },
  {
    quantity: /^displaced volume$/,
    answer: () => [inUnit(call("piston_area", quantity("1 in"), 1) * quantity("4 in"), "in³")],
  },
  {
    quantity: /^slave travel$/,
    answer: () => {
      const slave = call("piston_area", quantity("3 in"), 1);
      // The master's travel is proportional to the slave's.
      const masterForOne = call("pedal_travel", 1, quantity("1 in"), slave, 0.01) / 0.01;
      return [inUnit(quantity("4 in") / masterForOne, "in")];
    },
  },
  {
    quantity: /^disc brake torque/,
    answer: ({ inputs }) => {
      const [pressure = 0, count = 0, diameter = 0, friction = 0, radius = 0] = numbers(inputs);
      const area = call("piston_area", diameter / 1000, count);
      const force = call("clamp_force", pressure * 1e6, area);
      return [call("brake_torque", force, friction, radius / 1000)];
    },
  },
  {
    quantity: /^balance bar split/,
    answer: ({ inputs }) => {
      const front = labelled(inputs, "pivot to front clevis");
      const rear = labelled(inputs, "to rear clevis");
      const total = labelled(inputs, "pushrod total");
      // The pivot lies towards the rear clevis by half of what the front arm is longer.
      const rearShare = call("bar_share", (front - rear) / 2, front + rear);
      return [total * (1 - rearShare), total * rearShare];
    },
  },
  {
    quantity: /^front brake bias/,
    answer: ({ inputs }) => {
      const torques = inputs.split(";").map((side) => {
        const [pressure = 0, area = 0, friction = 0, radius = 0] = numbers(side);
        return call(
          "brake_torque",
          call("clamp_force", pressure * 1e6, area * 1e-6),
          friction,
          radius / 1000,
        );
      });
      return [inUnit(call("brake_split", ...torques), "%")];
    },
  },
]);
