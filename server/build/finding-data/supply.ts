/** What is due, late, short or too dear. */
export type SupplyFindings = Record<never, never>;
