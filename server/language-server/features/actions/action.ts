/** What an editor can be offered to do at a place. */
import type { TextEdit } from "vscode-languageserver";
import type { SourceFile } from "../../../build/source.ts";
import type { Complaint } from "../../../rules/complaint.ts";

export type FileEdits = ReadonlyMap<SourceFile, readonly TextEdit[]>;

export interface Action {
  readonly title: string;
  /** A kind of the protocol, in its dotted form. */
  readonly kind: string;
  /** True where nothing else can have been meant. */
  readonly preferred: boolean;
  /** The complaint that it answers. */
  readonly complaint?: Complaint;
  readonly edits: FileEdits;
}

export const QUICK_FIX = "quickfix";
export const REWRITE = "refactor.rewrite";
export const WRITE_DOWN = "refactor.write";
export const FIX_ALL = "source.fixAll.cotter";

export function editsOf(edits: Iterable<readonly [SourceFile, TextEdit]>): FileEdits {
  const byFile = new Map<SourceFile, TextEdit[]>();
  for (const [file, edit] of edits) {
    const known = byFile.get(file);
    if (known === undefined) byFile.set(file, [edit]);
    else known.push(edit);
  }
  return byFile;
}
