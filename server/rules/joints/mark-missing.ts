import { factBehind } from "../fact-behind.ts";
import { findingRule } from "../rule.ts";

export const markMissing = findingRule<"mark-missing">({
  code: "mark-missing",
  group: "Joints",
  severity: "warning",
  summary: "A joint that needs a witness mark has none",
  why: "The mark tells at a glance that the joint was torqued, and whether it has moved since.",
  remedy: "Mark the joint and write `marked:`.",
  source: "common practice, no source",
  bad: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint column_pinch "Pinch bolt"
  torque: 25 N.m
  mark: yes

day 2026-05-02
  loosened: column_pinch
  torqued: column_pinch 25 N.m
`,
  good: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint column_pinch "Pinch bolt"
  torque: 25 N.m
  mark: yes

day 2026-05-02
  loosened: column_pinch
  torqued: column_pinch 25 N.m
  marked: column_pinch
`,
  message: ({ data }) => `${data.joint} is tightened and not marked: expected a witness mark`,
  fixes: ({ data, place }) => factBehind(place, `marked: ${data.joint}`),
});
