/** A file in its build, as the features see it: one moment, never changed. */
import type { Document, Position } from "../../grammar/document.ts";
import type { BlockNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { BlockSite, SourceFile } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import type { BuildSnapshot, Log } from "../workspace/build-snapshot.ts";

/** A place in a block: what the trees count in. */
export interface BlockPlace {
  readonly index: number;
  readonly block: BlockNode;
  /** From the start of the block, in UTF-16 units. */
  readonly offset: number;
}

export class FileView {
  readonly snapshot: BuildSnapshot;
  readonly log: Log;

  private readonly spell: (path: string) => string;

  /** @param spell the URI by which the editor knows a path */
  constructor(snapshot: BuildSnapshot, log: Log, spell: (path: string) => string = (path) => path) {
    this.snapshot = snapshot;
    this.log = log;
    this.spell = spell;
  }

  get build(): Build {
    return this.snapshot.build;
  }

  /** The build as it was read last, perhaps before the last few letters. */
  get recentBuild(): Build {
    return this.snapshot.recentBuild;
  }

  get document(): Document {
    return this.log.file.document;
  }

  get file(): SourceFile {
    return this.log.file;
  }

  get complaints(): readonly Complaint[] {
    return this.snapshot.complaintsByLog.get(this.log) ?? [];
  }

  /** The blocks of this file. */
  get sites(): readonly BlockSite[] {
    return this.document.blocks.map((block, index) => ({ file: this.file, index, block }));
  }

  /** The URI of a file of the build. */
  uriOf(file: SourceFile): string {
    return this.spell(this.snapshot.logOf(file).path);
  }

  /** Where a position lies; undefined in an empty file. */
  placeAt(position: Position): BlockPlace | undefined {
    const { document } = this;
    const at = document.offsetAt(position);
    // A position at the start of a line belongs to that line's block, at the end of a text to the last one.
    const index = document.blockIndexAt(at);
    const block = document.blocks[index];
    return block === undefined
      ? undefined
      : { index, block, offset: at - (document.offsets[index] as number) };
  }
}
