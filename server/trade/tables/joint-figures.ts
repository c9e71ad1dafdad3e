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
