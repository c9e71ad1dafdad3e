/** Figures of bolted joints that no standard fixes. */

/** Share of proof load aimed at in a joint that is opened again. Source: Shigley. */
export const preloadShare = 0.75;

/** Scatter of the preload when tightening by torque, ±. Source: common practice; SAND2008-0371 uses 35 %. */
export const torqueScatter = { narrow: 0.25, wide: 0.35 } as const;

export interface EngagementRow {
  readonly material: string;
  /** Factor of the diameter for bolts up to 830 MPa of tensile strength (8.8, grade 5, A2-70 and weaker). */
  readonly usual: number;
  /** For stronger bolts (9.8, 10.9, 12.9, grade 8). */
  readonly strong?: number;
  readonly remark?: string;
}

/** Full threads less the chamfer. Source: common practice, no source. */
export const engagementFactors: readonly EngagementRow[] = [
  { material: "steel", usual: 1, strong: 1.25 },
  { material: "cast_iron", usual: 1.3 },
  {
    material: "aluminium",
    usual: 2,
    strong: 2.5,
    remark: "for cast or unknown aluminium; wrought hard aluminium manages with 1.5 d under class 8.8",
  },
  { material: "magnesium", usual: 2.5 },
];

/** Shares of proof load: from the first on a torque is worth a word (Shigley: 90 % for a permanent joint), over it too much. */
export const heavyShare = 0.9;

/** Share of proof load under which a joint hardly clamps. Source: common practice, no source. */
export const lightShare = 0.5;

/** Pitches of thread past a nut that are asked. Source: common practice; FAA AC 43.13-1B asks at least one. */
export const pitchesPastNut = 2;

/** Pitches past a nut from which a bolt is long. Source: common practice, no source. */
export const mostPitchesPastNut = 10;

/** Height of a hexagon nut as a share of its diameter, where none is stated: at least that of style 1 of ISO 4032. */
export const usualNutHeight = 0.8;

/**
 * Height of a nut as a share of its diameter: under the first it does not bear its class (ISO 898-2, from memory),
 * under the second no standard has one.
 */
export const nutHeights = { full: 0.8, thin: 0.5 } as const;

/** Length screwed in of the shortest studs, as a share of the diameter. Source: DIN 938, from memory. */
export const shortestStudEnd = 1;
