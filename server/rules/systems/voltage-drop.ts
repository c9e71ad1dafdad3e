import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const voltageDrop = findingRule<"voltage-drop">({
  code: "voltage-drop",
  group: "Systems and circuits",
  severity: "warning",
  summary: "More voltage is lost on the way than the circuit allows",
  why: "A filament lamp at nine tenths of its voltage gives about seven tenths of its light, and a pump or a coil loses as much.",
  remedy: "Fit a thicker or shorter wire, a relay near the load, or look at the load again.",
  source: "IEC 60028: 0.017241 Ω·mm²/m at 20 °C; plugs, switches and warm copper come on top",
  bad: `circuit lamps.dipped "Dipped beams"
  supply: 12 V
  load: 110 W
  wire: 1.5 mm2
  length: 4 m
  drop: max 3 %
`,
  good: `circuit lamps.dipped "Dipped beams"
  supply: 12 V
  load: 110 W
  wire: 4 mm2
  length: 4 m
  drop: max 3 %
`,
  message: ({ data: { drop, share, limit, load, back } }) => {
    const way = back === "frame" ? "there, the frame leading back" : "there and back";
    return `${say(drop)}${share === undefined ? "" : ` (${say(share)})`} is lost at ${say(load)} on the way ${way}: expected at most ${say(limit)}`;
  },
});
