/** URIs as the names of files. Editors escape them differently, so each is brought to one form before it is compared. */

const PARTS = /^([A-Za-z][A-Za-z0-9+.-]*):(\/\/[^/?#]*)?([^?#]*)(.*)$/s;
const DRIVE = /^\/[A-Za-z](?::|%3A)(?=\/|$)/i;

/** One form for all spellings of a URI: scheme, authority and a drive's letter in lower case, segments escaped alike. */
export function normalUri(uri: string): string {
  const [, scheme, authority = "", path = "", rest = ""] = PARTS.exec(uri) ?? [];
  if (scheme === undefined) return uri;
  const segments = path.replace(DRIVE, (drive) => drive.toLowerCase()).split("/");
  const escaped = segments.map((segment) => encodeURIComponent(decoded(segment))).join("/");
  return `${scheme.toLowerCase()}:${authority.toLowerCase()}${escaped}${rest}`;
}

/** A folder's URI, without the `/` at its end. */
export function folderUri(uri: string): string {
  const normal = normalUri(uri);
  return normal.endsWith("/") ? normal.slice(0, -1) : normal;
}

/** A path as people read it: without escapes. */
export function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    // A per cent sign that escapes nothing stands for itself.
    return path;
  }
}

/** The URI of a file by its path relative to a folder's URI, as it is written in a log. */
export function uriWithin(folder: string, relative: string): string {
  const segments = relative.split("/").filter((segment) => segment !== "." && segment !== "");
  const around = folder.split("/");
  for (const segment of segments) {
    if (segment === "..") around.pop();
    else around.push(encodeURIComponent(segment));
  }
  return around.join("/");
}
