/** A build as it would be with some places written otherwise. */
import type { Build } from "../build/build.ts";
import { readBuild } from "../build/build.ts";
import type { Place, SourceFile } from "../build/source.ts";

/** @param edits replacements that do not overlap */
export function changedBuild(build: Build, edits: ReadonlyMap<Place, string>): Build {
  const byFile = new Map<SourceFile, [Place, string][]>();
  for (const [place, text] of edits) {
    const { file } = place.site;
    const known = byFile.get(file);
    if (known === undefined) byFile.set(file, [[place, text]]);
    else known.push([place, text]);
  }
  const files = build.files.map((file) => changedFile(file, byFile.get(file) ?? []));
  return readBuild(files, { clock: build.today, on: build.today });
}

function changedFile(file: SourceFile, edits: readonly [Place, string][]): SourceFile {
  let { document } = file;
  const offsetOf = ({ site }: Place) => file.document.offsets[site.index] as number;
  // From the end, so that the places before stay where they are.
  const backwards = [...edits].sort(([a], [b]) => offsetOf(b) + b.start - (offsetOf(a) + a.start));
  for (const [place, text] of backwards)
    document = document.edit(offsetOf(place) + place.start, offsetOf(place) + place.end, text);
  return { path: file.path, document };
}
