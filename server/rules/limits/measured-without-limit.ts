import { nearest } from "../../../grammar/nearest.ts";
import type { Place } from "../../build/source.ts";
import { placeAt, textAt } from "../../build/source.ts";
import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const measuredWithoutLimit = findingRule<"measured-without-limit">({
  code: "measured-without-limit",
  group: "Limits and measurements",
  severity: "hint",
  summary: "A characteristic is measured that has no limit",
  why: "Nothing says what the reading should be, so it cannot be judged; sometimes the name is merely spelt otherwise than in the limit.",
  remedy: "Give the part a limit or a size of that name, or correct the name.",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
  measured: disc width 9.2 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
`,
  message: ({ data }) =>
    `${data.what} has no limit called ${data.characteristic}${data.known.length === 0 ? "" : `; it has ${list(data.known)}`}`,
  fixes: ({ data, place }) => {
    const at = nameIn(place, data.characteristic);
    const near = at === undefined ? [] : nearest(data.characteristic, data.known);
    return near.map((text) => ({
      title: `Write ${text}`,
      sure: false,
      edits: at === undefined ? [] : [{ place: at, text }],
    }));
  },
});

/** Where a measurement names its characteristic: apart, or at the end of its reference. */
function nameIn({ site, start }: Place, name: string): Place | undefined {
  const record = site.block.items.find((item) => item.start <= start && start < item.end);
  if (record?.kind !== "record") return undefined;
  const apart = record.values.get("name");
  const { end } = apart ?? record.values.get("what") ?? { end: -1 };
  const place = placeAt(site, { start: end - name.length, end });
  return textAt(place) === name ? place : undefined;
}
