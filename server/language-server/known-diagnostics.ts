import type { Diagnostic } from "vscode-languageserver";
import { isSame } from "../build/remembered.ts";
import type { Place } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import type { DiagnosticForm, UriOf } from "./to-protocol.ts";
import { diagnosticOf } from "./to-protocol.ts";

/** Complaints as diagnostics: the same object as long as all its places are where they were. */
export class KnownDiagnostics {
  private readonly form: DiagnosticForm;
  private readonly known = new WeakMap<
    Complaint,
    { readonly at: readonly unknown[]; readonly diagnostic: Diagnostic }
  >();

  constructor(form: DiagnosticForm) {
    this.form = form;
  }

  of(complaint: Complaint, uriOf: UriOf): Diagnostic {
    const at = whereabouts(complaint);
    const known = this.known.get(complaint);
    if (known !== undefined && isSame(known.at, at)) return known.diagnostic;
    const diagnostic = diagnosticOf(complaint, uriOf, this.form);
    this.known.set(complaint, { at, diagnostic });
    return diagnostic;
  }
}

/** Where the blocks of its places stand, and what they hold. */
function whereabouts({ place, seeAlso }: Complaint): readonly unknown[] {
  const at: unknown[] = [];
  note(at, place);
  for (const other of seeAlso) note(at, other.place);
  return at;
}

function note(at: unknown[], { site: { file, index, block } }: Place): void {
  at.push(file.path, file.document.lines[index], block);
}
