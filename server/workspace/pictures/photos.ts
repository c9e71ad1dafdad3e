/** The photos of a build for its book: only those inside its folder, large ones made smaller, as data URIs. */
import { readFile, realpath, stat } from "node:fs/promises";
import path from "node:path";
import type { BookPhoto } from "../../reports/book-photo.ts";
import type { PictureHead } from "./picture-file.ts";
import { readPictureHead } from "./picture-file.ts";
import { withoutPrivateData } from "./private-data.ts";

/** Pixels along the longer side: enough for the width of a page in print. */
const LONGEST = 1600;
/** Bytes and pixels beyond which a file is not read: no camera writes such, and the machine would stand still. */
const MOST_BYTES = 64 * 1024 * 1024;
const MOST_PIXELS = 100_000_000;

/** Reads each path once, in turn, so that no more than one picture is held unpacked. */
export async function readPhotos(
  folder: string,
  paths: readonly string[],
): Promise<ReadonlyMap<string, BookPhoto>> {
  const photos = new Map<string, BookPhoto>();
  for (const photo of new Set(paths)) photos.set(photo, await readPhoto(folder, photo));
  return photos;
}

async function readPhoto(folder: string, photo: string): Promise<BookPhoto> {
  const file = await fileInside(folder, photo);
  if (file === undefined) return missing("there is no such file in the build's folder");
  try {
    const { size } = await stat(file);
    if (size > MOST_BYTES) return missing("the file is too large");
    const bytes = await readFile(file);
    const head = readPictureHead(bytes);
    if (head === undefined) return missing("the file is no JPEG, PNG, GIF or WebP picture");
    if (pixelsOf(head) > MOST_PIXELS) return missing("the picture has too many pixels");
    return await embed(bytes, head);
  } catch {
    return missing("the file cannot be read");
  }
}

/** The file behind a photo's path, links followed; undefined where that is outside the folder or no file. */
async function fileInside(folder: string, photo: string): Promise<string | undefined> {
  try {
    const base = await realpath(folder);
    const file = await realpath(path.resolve(base, photo));
    const inside = file.startsWith(base.endsWith(path.sep) ? base : base + path.sep);
    return inside && (await stat(file)).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

function pixelsOf({ size }: PictureHead): number {
  return size === undefined ? 0 : size.width * size.height;
}

/**
 * Small enough, or of a kind that is not unpacked here: as it is, without what it says of its taker. Else made smaller,
 * which leaves that behind too; so is a file in which it cannot be told apart.
 */
async function embed(bytes: Buffer, head: PictureHead): Promise<BookPhoto> {
  const { kind, size, orientation } = head;
  const large = size !== undefined && Math.max(size.width, size.height) > LONGEST;
  const unpacked = kind === "jpeg" || kind === "png";
  const clean = large && unpacked ? undefined : withoutPrivateData(bytes, head);
  if (clean !== undefined) {
    const shown = size !== undefined && orientation >= 5 ? { width: size.height, height: size.width } : size;
    return picture(kind, clean, shown);
  }
  if (!unpacked) return missing("the file cannot be read");
  const { scaleFile } = await import("./scale-picture.ts");
  const { file, ...smaller } = scaleFile(bytes, kind, orientation, LONGEST);
  return picture(kind, file, smaller);
}

function picture(kind: PictureHead["kind"], file: Uint8Array, size: PictureHead["size"]): BookPhoto {
  const uri = `data:image/${kind};base64,${Buffer.from(file).toString("base64")}`;
  return { is: "picture", uri, size };
}

function missing(why: string): BookPhoto {
  return { is: "missing", why };
}
