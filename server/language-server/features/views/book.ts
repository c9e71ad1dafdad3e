/** The build's record as one page, with its photos. */
import { photosOf, renderBook } from "../../../reports/book.ts";
import type { BookPhoto } from "../../../reports/book-photo.ts";
import type { Host } from "../../host.ts";
import type { Book } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";
import { fileName } from "./file-name.ts";

/** @param read undefined where the server runs in surroundings that cannot read pictures */
export async function book(chosen: ChosenBuild, read: Host["readPhotos"]): Promise<Book> {
  const { build, plan, snapshot } = chosen;
  const paths = photosOf(build);
  const photos = read === undefined ? notRead(paths) : await read(snapshot.folder, paths);
  const missing = [...photos].flatMap(([path, photo]) =>
    photo.is === "missing" ? [{ path, why: photo.why }] : [],
  );
  return {
    page: renderBook(build, plan, photos),
    fileName: fileName(chosen.name, "build-record", build.today),
    photos: photos.size - missing.length,
    missing,
  };
}

function notRead(paths: readonly string[]): ReadonlyMap<string, BookPhoto> {
  return new Map(paths.map((path) => [path, { is: "missing", why: "photos cannot be read here" }]));
}
