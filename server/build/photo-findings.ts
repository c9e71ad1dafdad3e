import type { DayBlock, Gathered } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import type { FactOf } from "./lowering/fact.ts";
import { madeOnce, Remembered } from "./remembered.ts";
import type { BlockSite } from "./source.ts";
import { placeAt } from "./source.ts";

/** The photos that the diary names and that are not there; of days to come too. */
export function missingPhotos(
  { dayLists }: Pick<Gathered, "dayLists">,
  isThere: (path: string) => boolean,
): readonly Finding[] {
  return dayLists
    .flatMap((days) => madeOnce(remembered, days, () => photosIn(days)))
    .flatMap(({ site, photo }) =>
      isThere(photo.path)
        ? []
        : missing.of(photo, [site, site.block], () =>
            finding("photo-not-found", placeAt(site, photo.pathAt), { path: photo.path }),
          ),
    );
}

const missing = new Remembered<FactOf<"photo">, Finding>();

interface Photo {
  readonly site: BlockSite;
  readonly photo: FactOf<"photo">;
}

const remembered = new WeakMap<readonly DayBlock[], readonly Photo[]>();

function photosIn(days: readonly DayBlock[]): readonly Photo[] {
  const photos: Photo[] = [];
  for (const { site, facts } of days)
    for (const fact of facts) if (fact.word === "photo") photos.push({ site, photo: fact });
  return photos;
}
