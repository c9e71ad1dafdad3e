import { findingRule } from "../rule.ts";

export const photoNotFound = findingRule<"photo-not-found">({
  code: "photo-not-found",
  group: "Notation",
  severity: "warning",
  summary: "A photo that is not in the build's folder",
  why: "A picture of how it was is worth most when it is needed, and then it is missing: it may have been moved, or never copied off the camera.",
  remedy: "Put the picture where the path says, or correct the path, which counts from the build's folder.",
  bad: `day 2026-05-02
  photo: "photos/disk.png" "lip on the outer edge"
`,
  good: `day 2026-05-02
  photo: "photos/disc.png" "lip on the outer edge"
`,
  message: ({ data }) => `${data.path} is not there: expected a picture in the build's folder`,
});
