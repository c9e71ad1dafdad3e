/** What a machine is told of a book: the page or where it went, and which photos are in it. */
import type { Build } from "../build/build.ts";
import type { BookPhoto } from "./book-photo.ts";
import { ESTIMATES_CAUTION } from "./table.ts";

export interface BookReport {
  readonly schema: "cotter/book/1";
  readonly title: string | null;
  readonly today: string;
  /** As the call named it; null where the page is given here. */
  readonly file: string | null;
  /** The page whole; null where it was written to a file. */
  readonly html: string | null;
  readonly photos: readonly {
    readonly path: string;
    readonly shown: boolean;
    /** Why it is not shown. */
    readonly why: string | null;
  }[];
  readonly caution: string;
}

export function bookReport(
  { standing, today }: Build,
  photos: ReadonlyMap<string, BookPhoto>,
  written: { readonly file: string } | { readonly page: string },
): BookReport {
  return {
    schema: "cotter/book/1",
    title: standing.gathered.vehicle.title ?? null,
    today,
    file: "file" in written ? written.file : null,
    html: "page" in written ? written.page : null,
    photos: [...photos].map(([path, photo]) => ({
      path,
      shown: photo.is === "picture",
      why: photo.is === "missing" ? photo.why : null,
    })),
    caution: ESTIMATES_CAUTION,
  };
}
