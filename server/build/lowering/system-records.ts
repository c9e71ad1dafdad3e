/** The records of fluid systems and circuits, from syntax to values. */
import { readWireGauge } from "../../trade/electrics.ts";
import { AREA, CABLE, CURRENT, DROP, LOAD, PRESSURE, TIME, VOLTAGE, VOLUME } from "./due.ts";
import { lowerMagnitudes } from "./limits.ts";
import type { NodeValues } from "./node-values.ts";
import type { LowerTable } from "./record-forms.ts";
import { amountOf, chosen, every, references, saying, text, whole, yes } from "./record-forms.ts";
import type { ValueLowering } from "./values.ts";

type Word =
  | "fluid"
  | "capacity"
  | "parts"
  | "bleed"
  | "pressure_test"
  | "change"
  | "supply"
  | "load"
  | "wire"
  | "length"
  | "return"
  | "fuse"
  | "drop"
  | "from"
  | "to"
  | "colour"
  | "relay"
  | "switch"
  | "earth";

const end = (_: ValueLowering, values: NodeValues) => {
  const written = values.get("value", "string");
  if (written !== undefined) return { end: { text: written.text } };
  const node = values.get("value", "references");
  return node && { end: { references: node.items } };
};

export const SYSTEM_RECORDS: LowerTable<Word> = {
  fluid: text,
  capacity: amountOf(VOLUME),
  parts: references,
  bleed: yes,
  pressure_test: (lowering, values) => {
    const node = values.get("pressure", "quantity");
    const time = values.get("for", "quantity");
    const pressure = node && lowering.amount(node, PRESSURE);
    return pressure && { pressure, time: time && lowering.amount(time, TIME) };
  },
  change: every,
  supply: amountOf(VOLTAGE),
  load: amountOf(LOAD),
  wire: (lowering, values) => {
    const gauge = values.get("value", "wireGauge");
    if (gauge !== undefined) {
      const text = `AWG ${gauge.number.text}`;
      return readWireGauge(text) === undefined
        ? lowering.complain("unreadable-value", gauge, "a wire gauge, AWG 4/0 to AWG 40")
        : { gauge: text };
    }
    const node = values.get("value", "quantity");
    return whole({ area: node && lowering.amount(node, AREA) });
  },
  length: amountOf(CABLE),
  return: chosen(["frame", "wire"]),
  fuse: amountOf(CURRENT),
  drop: saying("limits", "limits", (lowering, node) => lowerMagnitudes(lowering, node, DROP)),
  from: end,
  to: end,
  colour: text,
  relay: end,
  switch: end,
  earth: end,
};
