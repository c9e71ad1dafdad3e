import type { FindingExtras } from "../finding.ts";
import type { DatedFact } from "../states.ts";

/** Another fact that belongs to a complaint, and what it is; nothing where there is none. */
export function seeAlso(role: string, fact: DatedFact | undefined): FindingExtras {
  return fact === undefined ? {} : { seeAlso: [{ role, place: fact.place }] };
}
