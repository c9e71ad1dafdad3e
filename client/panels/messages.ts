/** What the page of a panel says to the extension, and what it is told. */
import type { ReportName } from "../../server/language-server/protocol.ts";

export type FromPage =
  /** It is there, and wants its report. */
  | { readonly is: "ready" }
  /** A link was followed: an index into the places of the report that was sent with this number. */
  | { readonly is: "go"; readonly spot: number; readonly report: number };

export interface ToPage {
  readonly fragment: string;
  /** Counts up. */
  readonly number: number;
  readonly name: ReportName;
}

/** A message as it should be; undefined for anything else. */
export function readFromPage(message: unknown): FromPage | undefined {
  if (typeof message !== "object" || message === null) return undefined;
  const { is, spot, report } = message as Record<string, unknown>;
  if (is === "ready") return { is };
  if (is !== "go" || !Number.isInteger(spot) || !Number.isInteger(report)) return undefined;
  return { is, spot: spot as number, report: report as number };
}
