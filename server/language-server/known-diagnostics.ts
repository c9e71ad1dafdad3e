import type { Diagnostic } from "vscode-languageserver";
import type { Complaint } from "../rules/complaint.ts";
import { SamePlaces, sitesOf } from "./same-places.ts";
import type { DiagnosticForm, UriOf } from "./to-protocol.ts";
import { diagnosticOf } from "./to-protocol.ts";

/** Complaints as diagnostics: the same object as long as all its places are where they were. */
export class KnownDiagnostics {
  private readonly form: DiagnosticForm;
  private readonly known = new WeakMap<
    Complaint,
    { readonly places: SamePlaces; readonly diagnostic: Diagnostic }
  >();

  constructor(form: DiagnosticForm) {
    this.form = form;
  }

  of(complaint: Complaint, uriOf: UriOf): Diagnostic {
    const known = this.known.get(complaint);
    if (known?.places.hold()) return known.diagnostic;
    const diagnostic = diagnosticOf(complaint, uriOf, this.form);
    const places = new SamePlaces(sitesOf([complaint]));
    this.known.set(complaint, { places, diagnostic });
    return diagnostic;
  }
}
