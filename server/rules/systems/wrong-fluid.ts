import { fluidFamily } from "../../build/fluids.ts";
import { findingRule } from "../rule.ts";

export const wrongFluid = findingRule<"wrong-fluid">({
  code: "wrong-fluid",
  group: "Systems and circuits",
  severity: "error",
  summary: "A system is filled with another fluid than the one it takes",
  why: "Glycol, silicone and mineral fluids do not mix: seals swell or shrink, and the pedal fades when it is needed.",
  remedy:
    "Drain it, flush it, fit new seals and fill it with what it takes; where the fluid was changed on purpose, write changed: with the new one. The maker's manual decides.",
  source: "FMVSS 116 (49 CFR 571.116): DOT 3, 4 and 5.1 are not silicone based, DOT 5 is",
  bad: `system gearbox.oil "Gearbox oil"
  fluid: "EP 80"

day 2026-05-09
  filled: gearbox.oil 1 l with "20W-50"
`,
  good: `system gearbox.oil "Gearbox oil"
  fluid: "EP 80"

day 2026-05-09
  filled: gearbox.oil 1 l with "EP 80, mineral"
`,
  message: ({ data: { system, asked, filled } }) => {
    const [wanted, got] = [fluidFamily(asked), fluidFamily(filled)];
    const mixed =
      wanted !== undefined && got !== undefined && wanted !== got
        ? `: ${got} and ${wanted} fluids are never mixed without a flush and new seals`
        : "";
    return `${system} is filled with ${filled}, expected ${asked}${mixed}`;
  },
});
