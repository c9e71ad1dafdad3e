/**
 * A circuit as it is specified: what its fuse and wire bear, and how much voltage is lost on the way. A circuit that does
 * not state what a check needs is not checked; inrush and stall of motors and lamps are not judged.
 */
import { decimal } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { computedQuantity, convert, floatIn, hasDimension, quantityOf } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import { readWireGauge, voltageDrop, wireArea, wireCurrent } from "../trade/electrics.ts";
import { wireRows } from "../trade/tables/wires.ts";
import { FUSE_SHARE } from "./figures.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions">;

/** What is wrong with a circuit; `words` are the records that it follows from, the first the one to look at. */
export type CircuitFault = { readonly words: readonly [RecordWord, ...RecordWord[]] } & (
  | {
      readonly is: "fuse over wire";
      readonly fuse: Quantity;
      readonly wire: string;
      readonly carries: Quantity;
    }
  | {
      readonly is: "fuse under load";
      readonly fuse: Quantity;
      readonly load: Quantity;
      /** Load over fuse; over 1 it is an error, less a warning. */
      readonly share: number;
    }
  | {
      readonly is: "voltage drop";
      readonly load: Quantity;
      readonly drop: Quantity;
      /** Of the supply, in percent. */
      readonly share: Quantity | undefined;
      readonly limit: Quantity;
      readonly back: "wire" | "frame";
    }
);

const AMPERE = unit("A");

export function circuitFaults(standing: Defined, circuit: TreeNode): readonly CircuitFault[] {
  return [fuseOverWire, fuseUnderLoad, voltageLost].flatMap((check) => check(standing, circuit) ?? []);
}

/** Whether a fault is an error: the wire or the fuse cannot bear what is asked of them. */
export function isCircuitError(fault: CircuitFault): boolean {
  return fault.is === "fuse over wire" || (fault.is === "fuse under load" && fault.share > 1);
}

/** Of a current that is computed from a power: nobody states one more exactly. */
const FIGURES = 3;

/** The loads of a circuit together, in A; undefined where none is stated, or one in W without a supply. */
export function loadOf({ definitions }: Defined, circuit: TreeNode): Quantity | undefined {
  const loads = definitions.all(circuit, "load");
  const supply = definitions.one(circuit, "supply")?.record.quantity;
  let sum = decimal(0);
  for (const { record } of loads) {
    const current = currentOf(record.quantity, supply);
    if (current === undefined) return undefined;
    sum = sum.plus(current.value);
  }
  if (loads.length === 0) return undefined;
  const inPower = loads.some(({ record }) => hasDimension(record.quantity, "power"));
  return inPower ? computedQuantity(sum, AMPERE, FIGURES) : quantityOf(sum, AMPERE);
}

function currentOf(load: Quantity, supply: Quantity | undefined): Quantity | undefined {
  if (!hasDimension(load, "power")) return unlessFault(convert(load, AMPERE));
  const volts = supply === undefined ? 0 : floatIn(supply, "V");
  return volts > 0 ? computedQuantity(floatIn(load, "W") / volts, AMPERE) : undefined;
}

interface Wire {
  readonly said: string;
  /** m² */
  readonly area: number;
}

function wireOf({ definitions }: Defined, circuit: TreeNode): Wire | undefined {
  const wire = definitions.one(circuit, "wire")?.record;
  if (wire === undefined) return undefined;
  if ("area" in wire) {
    const millimetres = floatIn(wire.area, "mm2");
    return { said: `${millimetres} mm2`, area: millimetres * 1e-6 };
  }
  const gauge = readWireGauge(wire.gauge);
  return gauge === undefined ? undefined : { said: wire.gauge, area: wireArea(gauge) };
}

/** What the wire is trusted with, its insulation and place being unknown: the lowest figure there is for it. */
function currentOfWire({ area }: Wire): number {
  // Below the smallest listed size the current is less than that one's, which is enough to judge by.
  return wireCurrent(area) ?? wireRows[0]?.current ?? 0;
}

function fuseOverWire(standing: Defined, circuit: TreeNode): CircuitFault | undefined {
  const fuse = standing.definitions.one(circuit, "fuse")?.record.quantity;
  const wire = wireOf(standing, circuit);
  if (fuse === undefined || wire === undefined) return undefined;
  const carries = currentOfWire(wire);
  if (floatIn(fuse, "A") <= carries) return undefined;
  return {
    is: "fuse over wire",
    words: ["fuse", "wire"],
    fuse,
    wire: wire.said,
    carries: quantityOf(carries, AMPERE),
  };
}

function fuseUnderLoad(standing: Defined, circuit: TreeNode): CircuitFault | undefined {
  const fuse = standing.definitions.one(circuit, "fuse")?.record.quantity;
  const load = loadOf(standing, circuit);
  if (fuse === undefined || load === undefined) return undefined;
  const share = load.value.div(decimal(floatIn(fuse, "A"))).toNumber();
  return share <= FUSE_SHARE * (1 + ROUNDING)
    ? undefined
    : { is: "fuse under load", words: ["fuse", "load", "supply"], fuse, load, share };
}

/** A load that was divided out of watts may miss a round figure by this share. */
const ROUNDING = 1e-9;

function voltageLost(standing: Defined, circuit: TreeNode): CircuitFault | undefined {
  const { definitions } = standing;
  const limit = definitions.one(circuit, "drop")?.record.limits.upper;
  const length = definitions.one(circuit, "length")?.record.quantity;
  const supply = definitions.one(circuit, "supply")?.record.quantity;
  const wire = wireOf(standing, circuit);
  const load = loadOf(standing, circuit);
  if (limit === undefined || length === undefined || wire === undefined || load === undefined)
    return undefined;
  const back = definitions.one(circuit, "return")?.record.choice ?? "wire";
  const lost = voltageDrop(load.value.toNumber(), wire.area, floatIn(length, "m"), back);
  const volts = supply === undefined ? undefined : floatIn(supply, "V");
  const allowed = hasDimension(limit, "ratio")
    ? volts && (floatIn(limit, "%") / 100) * volts
    : floatIn(limit, "V");
  if (allowed === undefined || lost <= allowed * (1 + ROUNDING)) return undefined;
  return {
    is: "voltage drop",
    words: ["drop", "load", "wire", "length", "return", "supply"],
    load,
    drop: computedQuantity(lost, unit("V"), 3),
    share: volts && volts > 0 ? computedQuantity((lost / volts) * 100, unit("%"), 3) : undefined,
    limit,
    back,
  };
}
