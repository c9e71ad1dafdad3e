/** The settings of the section `cotter`, and what a client states once when it starts the server. */
import type { SeverityOverrides } from "../rules/complaint.ts";
import type { Severity } from "../rules/rule.ts";
import { SEVERITIES } from "../rules/rule.ts";

export interface Settings {
  /** Severities by rule: `{"near-limit": "off"}`. */
  readonly severity: SeverityOverrides;
  readonly inlayHints: {
    /** The values of `calc:`. */
    readonly computed: boolean;
    /** Values in the unit of the limit, or of the other system, that the author did not use. */
    readonly converted: boolean;
    /** What a reading proves, and how much is left. */
    readonly verdicts: boolean;
    /** Running hours so far, behind `ran:`. */
    readonly running: boolean;
  };
  readonly codeLens: boolean;
  /** Whether a hover says that a fact was written later than its day. */
  readonly writtenLater: boolean;
}

export const DEFAULT_SETTINGS: Settings = {
  severity: new Map(),
  inlayHints: { computed: true, converted: true, verdicts: true, running: true },
  codeLens: true,
  writtenLater: true,
};

/** Reads a section as a client sends it; what is absent or not of its type is as by default. */
export function readSettings(section: unknown): Settings {
  const { inlayHints, codeLens, writtenLater, severity } = record(section);
  const hints = record(inlayHints);
  const byDefault = DEFAULT_SETTINGS;
  const hint = (name: keyof Settings["inlayHints"]) => flag(hints[name], byDefault.inlayHints[name]);
  return {
    severity: new Map(
      Object.entries(record(severity)).filter((entry): entry is [string, Severity | "off"] =>
        isSeverity(entry[1]),
      ),
    ),
    inlayHints: {
      computed: hint("computed"),
      converted: hint("converted"),
      verdicts: hint("verdicts"),
      running: hint("running"),
    },
    codeLens: flag(codeLens, byDefault.codeLens),
    writtenLater: flag(writtenLater, byDefault.writtenLater),
  };
}

/** What `initializationOptions` may hold. */
export interface StartOptions {
  /** The web address of the page that explains the rules. */
  readonly rulesPage: string | undefined;
  /** The section `cotter`, from a client that cannot be asked for it. */
  readonly settings: Settings;
  /** Whether the user trusts the folders: only then is git started there. Not unless the client says so. */
  readonly trusted: boolean;
}

export function readStartOptions(options: unknown): StartOptions {
  const { rulesPage, settings, trusted } = record(options);
  return {
    rulesPage: typeof rulesPage === "string" && /^https?:\/\//.test(rulesPage) ? rulesPage : undefined,
    settings: readSettings(settings),
    trusted: trusted === true,
  };
}

function record(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

function flag(value: unknown, byDefault: boolean): boolean {
  return typeof value === "boolean" ? value : byDefault;
}

function isSeverity(value: unknown): value is Severity | "off" {
  const severities: readonly unknown[] = SEVERITIES;
  return value === "off" || severities.includes(value);
}
