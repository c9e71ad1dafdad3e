import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const fuseOverWire = findingRule<"fuse-over-wire">({
  code: "fuse-over-wire",
  group: "Systems and circuits",
  severity: "error",
  summary: "A fuse lets more current through than the wire behind it bears",
  why: "The fuse is there for the wire: where it outlasts the wire, a short burns the loom before it blows.",
  remedy:
    "Fit a smaller fuse or a thicker wire. The current is the lowest figure for the size, since insulation and place are unknown; the maker's figure for the cable comes first.",
  source: "currents of wires: common practice, no source; sizes of IEC 60228",
  bad: `circuit electrics.fan "Radiator fan"
  wire: 1 mm2
  fuse: 20 A
`,
  good: `circuit electrics.fan "Radiator fan"
  wire: 2.5 mm2
  fuse: 20 A
`,
  message: ({ data }) =>
    `a fuse of ${say(data.fuse)} on ${data.wire}: expected at most ${say(data.carries)}, what that wire is trusted with`,
});
