/** The mend of a joint that was done up on new hardware without saying so. */
import type { Build } from "../../build/build.ts";
import type { Place } from "../../build/source.ts";
import { factAt } from "../fact-behind.ts";
import type { Fix } from "../rule.ts";

/** Says `on new hardware` behind the torque; not where the fact is about several joints, which it would say of all. */
export function onNewHardware(place: Place, { standing }: Build): readonly Fix[] {
  const record = factAt(place);
  const torque = record?.values.get("then") ?? record?.values.get("torque");
  const what = record?.values.get("what");
  if (record?.word.text !== "torqued" || torque === undefined || what?.kind !== "references") return [];
  const [reference, another] = what.items;
  if (reference === undefined || another !== undefined) return [];
  if (standing.names.targets(reference, ["joint"]).length !== 1) return [];
  const at = { site: place.site, start: torque.end, end: torque.end };
  return [
    {
      title: "It was new: write on new hardware",
      sure: false,
      edits: [{ place: at, text: " on new hardware" }],
    },
  ];
}
