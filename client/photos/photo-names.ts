/** The names of photos: where one lies within a build, what a new one is called, and how a log writes it. */
import { quoted } from "../../grammar/quoted.ts";

/** The folder for photos that come from outside, within the build's own. */
export const PHOTO_FOLDER = "photos";

/** The kinds that the server looks for. */
export const PHOTO_ENDINGS = ["png", "jpg", "jpeg", "webp", "gif", "avif", "heic"] as const;

export function isPhoto(name: string): boolean {
  const ending = /\.([^./\\]+)$/.exec(name)?.[1]?.toLowerCase();
  return PHOTO_ENDINGS.some((known) => known === ending);
}

/**
 * The path of a file relative to the folder, as a log writes it; undefined where the file is not in it, or the way there
 * cannot be told for sure.
 * @param folder path of a URI, decoded
 * @param file the same
 */
export function pathWithin(folder: string, file: string): string | undefined {
  const base = folder.endsWith("/") ? folder : `${folder}/`;
  if (!file.startsWith(base) || file.includes("\\")) return undefined;
  const path = file.slice(base.length);
  const isPlain = path.split("/").every((segment) => segment !== "" && segment !== "." && segment !== "..");
  return isPlain && !/\p{Cc}/u.test(path) ? path : undefined;
}

/** A name without what a file system or a log would take amiss. */
export function cleanName(name: string): string {
  const [, stem = "", ending = ""] = /^(.*?)(\.[^.]*)?$/s.exec(name.replace(/^.*[/\\]/s, "")) ?? [];
  const plain = stem
    .normalize("NFC")
    .replace(/[\p{Cc}\p{Cf}"*:<>?|\\/#%]+/gu, " ")
    .trim()
    .replace(/\s+/g, "-")
    .replace(/^[.-]+|(?<![.-])[.-]+$/g, "")
    .slice(0, 80);
  return `${plain === "" ? "photo" : plain}${ending.toLowerCase()}`;
}

/** Names to try one after the other until one is free: `disc.png`, `disc-2.png`, … */
export function* namesFor(name: string): Generator<string> {
  const clean = cleanName(name);
  const [, stem = "", ending = ""] = /^(.*?)(\.[^.]*)?$/s.exec(clean) ?? [];
  yield clean;
  for (let count = 2; ; count += 1) yield `${stem}-${count}${ending}`;
}

/** `photo: "photos/disc.png" "The left disc"`; the caption is left out where it is empty. */
export function photoFact(path: string, caption: string): string {
  const words = caption.trim();
  return `photo: ${quoted(path)}${words === "" ? "" : ` ${quoted(words)}`}`;
}
