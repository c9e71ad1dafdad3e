/** From what the floors below speak of to what the protocol carries. */
import type { Diagnostic, Location, Range, TextEdit } from "vscode-languageserver";
import { DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { Document } from "../../grammar/document.ts";
import type { Span } from "../../grammar/syntax.ts";
import type { Place, SourceFile } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import type { Severity } from "../rules/rule.ts";

/** Gives the URI of a file of the build. */
export type UriOf = (file: SourceFile) => string;

/** The range of a stretch of a block. */
export function rangeIn(document: Document, block: number, { start, end }: Span): Range {
  return { start: document.positionIn(block, start), end: document.positionIn(block, end) };
}

export function rangeOf({ site, start, end }: Place): Range {
  return rangeIn(site.file.document, site.index, { start, end });
}

export function locationOf(place: Place, uriOf: UriOf): Location {
  return { uri: uriOf(place.site.file), range: rangeOf(place) };
}

export function editOf(place: Place, newText: string): TextEdit {
  return { range: rangeOf(place), newText };
}

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What a client can show of a diagnostic, and where the rules are explained. */
export interface DiagnosticForm {
  readonly related: boolean;
  readonly tags: boolean;
  /** The page that explains the rules, to which `#CODE` is added; undefined where none is known. */
  readonly rulesPage: string | undefined;
}

export function diagnosticOf(
  { code, severity, message, place, seeAlso }: Complaint,
  uriOf: UriOf,
  { related, tags, rulesPage }: DiagnosticForm,
): Diagnostic {
  const diagnostic: Diagnostic = {
    range: rangeOf(place),
    severity: SEVERITIES[severity],
    code,
    source: "cotter",
    message,
  };
  if (rulesPage !== undefined) diagnostic.codeDescription = { href: `${rulesPage}#${code}` };
  if (tags && code.startsWith("unused-")) diagnostic.tags = [DiagnosticTag.Unnecessary];
  if (related && seeAlso.length > 0) {
    diagnostic.relatedInformation = seeAlso.map((other) => ({
      location: locationOf(other.place, uriOf),
      message: other.message,
    }));
  }
  return diagnostic;
}
