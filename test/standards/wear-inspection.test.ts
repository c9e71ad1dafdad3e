import { call, checkRows } from "./row-checks.ts";
import { numbers } from "./row-inputs.ts";

checkRows("15_wear_inspection", [
  {
    quantity: /^thickness variation = max - min$/,
    answer: ({ inputs }) => {
      const readings = numbers(inputs.split(":")[1] ?? "");
      return [call("total_runout", Math.max(...readings), Math.min(...readings))];
    },
  },
  {
    quantity: /^bore taper \/ out-of-round$/,
    answer: ({ inputs }) => {
      const [topX = 0, topY = 0, bottomX = 0, bottomY = 0] = numbers(inputs);
      const runout = (a: number, b: number) => call("total_runout", Math.max(a, b), Math.min(a, b));
      return [
        Math.max(runout(topX, bottomX), runout(topY, bottomY)),
        Math.max(runout(topX, topY), runout(bottomX, bottomY)),
      ];
    },
  },
]);
