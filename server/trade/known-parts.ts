/** Standard parts with the dimensions they are known by: what an unknown part is compared with. */

import { americanWireGauges } from "./electrics.ts";
import { boreCirclips, shaftCirclips } from "./tables/circlips.ts";
import { inchKeyRows, parallelKeyRows, woodruffKeyRows } from "./tables/keys.ts";
import { oRingSeries, singleORings } from "./tables/o-rings.ts";
import { rollerChainRows } from "./tables/roller-chains.ts";
import { bearingSeries, inchBearings } from "./tables/rolling-bearings.ts";
import { sparkPlugRows } from "./tables/spark-plugs.ts";
import { tyreDesignations } from "./tables/tyres.ts";
import { wireRows } from "./tables/wires.ts";
import type { Thread } from "./thread.ts";
import { readThread, threadsOfSeries } from "./thread.ts";
import { readTyre, tyreDiameter } from "./tyres.ts";

export type PartFamily =
  | "thread"
  | "rolling bearing"
  | "O-ring"
  | "circlip"
  | "roller chain"
  | "key"
  | "wire"
  | "spark plug"
  | "tyre";

export interface KnownPart {
  readonly family: PartFamily;
  readonly name: string;
  /** By name as a restorer would measure them, in m; the area of a wire in m². */
  readonly dimensions: Readonly<Record<string, number>>;
  readonly standard: string;
  /** What else the same dimensions may be, or another name. */
  readonly remark?: string;
}

const MILLIMETRE = 0.001;
const INCH = 0.0254;

/** Bore of a rolling bearing from the last figures of its designation, mm (ISO 15 practice). */
export function boreOfCode(code: string): number {
  if (code.length === 1) return Number(code);
  const first: Readonly<Record<string, number>> = { "00": 10, "01": 12, "02": 15, "03": 17 };
  return first[code] ?? 5 * Number(code);
}

/** Every part of the standard tables, family by family. */
export function knownParts(): readonly KnownPart[] {
  return [
    ...threads(),
    ...bearings(),
    ...oRings(),
    ...circlips(),
    ...chains(),
    ...keys(),
    ...wires(),
    ...sparkPlugs(),
    ...tyres(),
  ];
}

function inMetres(dimensions: Readonly<Record<string, number>>, unit: number): Record<string, number> {
  return Object.fromEntries(Object.entries(dimensions).map(([name, value]) => [name, value * unit]));
}

function threads(): KnownPart[] {
  const series = ["M", "UNC", "UNF", "UNEF", "BSW", "BSF", "BA", "BSC", "BSP"] as const;
  return series.flatMap(threadsOfSeries).map((thread: Thread) => ({
    family: "thread",
    name: thread.designation,
    dimensions: { major: thread.majorDiameter, pitch: thread.pitch },
    standard: thread.standard ?? "",
  }));
}

function bearings(): KnownPart[] {
  const metric = bearingSeries.flatMap(({ series, kind, alsoCalled, shares, rows }) =>
    rows.map(([code, outside, width]): KnownPart => {
      const other = alsoCalled === undefined ? [] : [`also called ${alsoCalled}${code}`];
      const same = shares === undefined || code.length === 1 ? [] : [`the same in series ${shares}`];
      const tapered = kind === "tapered roller";
      return {
        family: "rolling bearing",
        name: `${series}${code}`,
        dimensions: inMetres({ bore: boreOfCode(code), outside, width }, MILLIMETRE),
        standard: tapered ? "ISO 355" : "ISO 15",
        remark: [kind, ...other, ...same].join("; "),
      };
    }),
  );
  const inch = inchBearings.map(
    ({ name, bore, outside, width }): KnownPart => ({
      family: "rolling bearing",
      name,
      dimensions: inMetres({ bore, outside, width }, MILLIMETRE),
      standard: "BS 292",
      remark: "inch ball bearing",
    }),
  );
  return [...metric, ...inch];
}

function oRings(): KnownPart[] {
  const ring = (dash: number, inside: number, section: number): KnownPart => ({
    family: "O-ring",
    name: `AS568-${String(dash).padStart(3, "0")}`,
    dimensions: inMetres({ inside, section }, INCH),
    standard: "AS568, ISO 3601-1",
  });
  return [
    ...oRingSeries.flatMap(({ crossSection, rows }) =>
      rows.map(([dash, inside]) => ring(dash, inside, crossSection)),
    ),
    ...singleORings.map(([dash, inside, section]) => ring(dash, inside, section)),
  ];
}

function circlips(): KnownPart[] {
  const clip =
    (place: "shaft" | "bore", standard: string) =>
    ([nominal, thickness, free, groove]: readonly [number, number, number, number]): KnownPart => ({
      family: "circlip",
      name: `${standard} ${nominal} x ${thickness}`,
      dimensions: inMetres({ [place]: nominal, thickness, free, groove }, MILLIMETRE),
      standard,
      remark: place === "shaft" ? "outside, on a shaft" : "inside, in a bore",
    });
  return [...shaftCirclips.map(clip("shaft", "DIN 471")), ...boreCirclips.map(clip("bore", "DIN 472"))];
}

function chains(): KnownPart[] {
  return rollerChainRows.map(({ name, standard, pitch, roller, innerWidth, alsoCalled }) => ({
    family: "roller chain",
    name: standard === "motorcycle" ? name : `${standard} ${name}`,
    dimensions: inMetres({ pitch, roller, width: innerWidth }, MILLIMETRE),
    standard,
    ...(alsoCalled === undefined ? {} : { remark: alsoCalled }),
  }));
}

function keys(): KnownPart[] {
  const parallel = parallelKeyRows.map(
    ({ over, upTo, width, height }): KnownPart => ({
      family: "key",
      name: `parallel key ${width} x ${height}`,
      dimensions: inMetres({ width, height }, MILLIMETRE),
      standard: "DIN 6885-1",
      remark: `for shafts over ${over} up to ${upTo} mm`,
    }),
  );
  const inch = inchKeyRows.map(
    ([width, height]): KnownPart => ({
      family: "key",
      name: `parallel key ${width} x ${height} in`,
      dimensions: inMetres({ width: inchesOf(width), height: inchesOf(height) }, INCH),
      standard: "ASME B17.1",
    }),
  );
  const woodruff = woodruffKeyRows.map(
    ({ name, width, height, diameter }): KnownPart => ({
      family: "key",
      name,
      dimensions: inMetres({ width, height, diameter }, MILLIMETRE),
      standard: name.includes("No.") ? "ASME B17.2" : "ISO 3912",
    }),
  );
  return [...parallel, ...inch, ...woodruff];
}

/** `3/16` or `1` as a number. */
function inchesOf(text: string): number {
  const [above, below = 1] = text.split("/").map(Number);
  return (above ?? Number.NaN) / below;
}

/** American gauges, and metric wires by their nominal area with the diameter of a solid conductor of that area. */
function wires(): KnownPart[] {
  const gauges = americanWireGauges().map(
    ({ name, diameter }): KnownPart => ({
      family: "wire",
      name,
      dimensions: { diameter, area: (Math.PI / 4) * diameter ** 2 },
      standard: "ASTM B258",
    }),
  );
  const metric = wireRows.map(({ area, solid }): KnownPart => {
    const squareMetres = area * MILLIMETRE ** 2;
    return {
      family: "wire",
      name: `${area} mm2`,
      dimensions: { diameter: Math.sqrt((4 / Math.PI) * squareMetres), area: squareMetres },
      standard: solid === undefined ? "vehicle cable" : "IEC 60228",
      remark: "a stranded conductor of this area is thicker",
    };
  });
  return [...gauges, ...metric];
}

function sparkPlugs(): KnownPart[] {
  return sparkPlugRows.flatMap(({ thread, reach, seat, hexagon }): KnownPart[] => {
    const read = readThread(thread);
    if ("fault" in read) return [];
    return [
      {
        family: "spark plug",
        name: `${thread}, ${reach} mm reach, ${seat} seat, ${hexagon} mm hexagon`,
        dimensions: {
          major: read.majorDiameter,
          pitch: read.pitch,
          ...inMetres({ reach, hexagon }, MILLIMETRE),
        },
        standard: "ISO 28741",
        remark: "a reach that is too long can meet the piston",
      },
    ];
  });
}

function tyres(): KnownPart[] {
  return tyreDesignations().flatMap((name): KnownPart[] => {
    const tyre = readTyre(name);
    if (tyre === undefined) return [];
    return [
      {
        family: "tyre",
        name,
        dimensions: { width: tyre.width, outside: tyreDiameter(tyre), rim: tyre.rim },
        standard: "ISO 4000-1",
      },
    ];
  });
}
