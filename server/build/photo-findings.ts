import type { DayBlock, Gathered } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import type { FactOf } from "./lowering/fact.ts";
import { placeAt } from "./source.ts";

/** The photos that the diary names and that are not there; of days to come too. */
export function missingPhotos({ days }: Gathered, isThere: (path: string) => boolean): readonly Finding[] {
  return days.flatMap((day) =>
    photosOf(day).flatMap(({ path, pathAt }) =>
      isThere(path) ? [] : [finding("photo-not-found", placeAt(day.site, pathAt), { path })],
    ),
  );
}

const remembered = new WeakMap<DayBlock, readonly FactOf<"photo">[]>();

function photosOf(day: DayBlock): readonly FactOf<"photo">[] {
  const known = remembered.get(day) ?? day.facts.filter((fact) => fact.word === "photo");
  remembered.set(day, known);
  return known;
}
