import type { Gathered } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { placeAt } from "./source.ts";

/** The photos that the diary names and that are not there; of days to come too. */
export function missingPhotos({ days }: Gathered, isThere: (path: string) => boolean): readonly Finding[] {
  return days.flatMap(({ facts, site }) =>
    facts.flatMap((fact) =>
      fact.word === "photo" && !isThere(fact.path)
        ? [finding("photo-not-found", placeAt(site, fact.pathAt), { path: fact.path })]
        : [],
    ),
  );
}
