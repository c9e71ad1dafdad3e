/**
 * Complaints as diagnostics, of every file of every build, open or not. A client that can ask for them is left to ask;
 * any other is sent them. They go out when they differ from what was sent, and never for a text that has changed since.
 */
import type {
  Diagnostic,
  DocumentDiagnosticReport,
  WorkspaceDiagnosticReport,
  WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { DiagnosticSeverity } from "vscode-languageserver";
import type { SourceFile } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import { SEVERITIES } from "../rules/rule.ts";
import type { BuildSnapshot, Log } from "../workspace/build-snapshot.ts";
import { areAlike } from "./alike.ts";
import { KnownDiagnostics } from "./known-diagnostics.ts";
import { SamePlacesByFile } from "./same-places.ts";
import type { Session } from "./session.ts";

/** The diagnostics of one file as they were last computed. */
interface Known {
  readonly log: Log;
  readonly from: Sources;
  readonly items: readonly Diagnostic[];
  /** Changes when the items do. */
  readonly resultId: string;
}

/** All that the diagnostics of a file are made from: while it is the same, so are they. */
interface Sources {
  /** The same list as long as it holds the same; undefined where the build could not be checked. */
  readonly complaints: readonly Complaint[] | undefined;
  /** Where the complaints and what they point to stand: places move with the text of their file. */
  readonly places: SamePlacesByFile;
}

/** A build that took longer than this (ms) waits as long again for the next key before it is computed. */
const QUICK = 25;
const LONGEST_WAIT = 400;

/**
 * So many complaints of one file are shown. An editor draws each at every change of the list, and stalls on many
 * thousands, as when a whole file is damaged; nobody reads the thousandth before putting the first ones right.
 */
const MOST_SHOWN = 1000;

export class Diagnostics {
  private readonly session: Session;
  private readonly diagnostics: KnownDiagnostics;
  private readonly pulled: boolean;
  private readonly known = new Map<string, Known>();
  private seen = new Set<BuildSnapshot>();
  /** Files whose diagnostics have changed since the client was last told. */
  private untold = new Set<string>();
  private results = 0;
  private took = 0;
  private callOff: (() => void) | undefined;

  constructor(session: Session) {
    const { textDocument } = session.client;
    this.session = session;
    this.pulled = textDocument?.diagnostic !== undefined;
    const shown = textDocument?.diagnostic ?? textDocument?.publishDiagnostics;
    this.diagnostics = new KnownDiagnostics({
      related: shown?.relatedInformation ?? textDocument?.publishDiagnostics?.relatedInformation ?? false,
      tags: (shown?.tagSupport ?? textDocument?.publishDiagnostics?.tagSupport) !== undefined,
      rulesPage: session.rulesPage,
    });
    session.onChanged.add(() => this.schedule());
  }

  /** Something has changed: the complaints are computed again once the editor has had its say. */
  schedule(): void {
    this.callOff?.();
    const wait = this.took < QUICK ? 0 : Math.min(this.took, LONGEST_WAIT);
    this.callOff = this.session.host.later(wait, () => {
      this.callOff = undefined;
      this.bringUpToDate().catch((error: unknown) => this.session.report(error));
    });
  }

  ofFile(uri: string, previous: string | undefined): DocumentDiagnosticReport {
    const path = this.session.pathOf(uri);
    this.compute();
    const known = this.known.get(path);
    if (known === undefined) return { kind: "full", items: [] };
    if (known.resultId === previous) return { kind: "unchanged", resultId: previous };
    return { kind: "full", resultId: known.resultId, items: [...known.items] };
  }

  ofWorkspace(
    previous: readonly { readonly uri: string; readonly value: string }[],
  ): WorkspaceDiagnosticReport {
    this.compute();
    const held = new Map(previous.map(({ uri, value }) => [this.session.pathOf(uri), value]));
    const items = [...this.known].map(([path, known]): WorkspaceDocumentDiagnosticReport => {
      const uri = this.session.uriOf(path);
      const version = known.log.version ?? null;
      const { resultId } = known;
      return held.get(path) === resultId
        ? { kind: "unchanged", uri, version, resultId }
        : { kind: "full", uri, version, resultId, items: [...known.items] };
    });
    const gone = [...held.keys()].filter((path) => !this.known.has(path));
    const emptied = gone.map(
      (path): WorkspaceDocumentDiagnosticReport => ({
        kind: "full",
        uri: this.session.uriOf(path),
        version: null,
        items: [],
      }),
    );
    return { items: [...items, ...emptied] };
  }

  private async bringUpToDate(): Promise<void> {
    await this.session.workspace.settled();
    this.compute();
    const changed = this.untold;
    this.untold = new Set();
    if (!this.pulled) {
      for (const path of changed) await this.send(path);
      return;
    }
    // The file that was edited is asked for by the client anyway: only others need a word.
    const others = [...changed].some((path) => !this.session.workspace.isOpen(path)) || changed.size > 1;
    if (others && this.session.client.workspace?.diagnostics?.refreshSupport)
      await this.session.connection.languages.diagnostics.refresh();
  }

  private async send(path: string): Promise<void> {
    const known = this.known.get(path);
    const version = known?.log.version;
    await this.session.connection.sendDiagnostics({
      uri: this.session.uriOf(path),
      diagnostics: [...(known?.items ?? [])],
      ...(version === undefined ? {} : { version }),
    });
  }

  /** Computes what has changed, and notes the files whose diagnostics are other than before. */
  private compute(): void {
    const began = this.session.host.now();
    const builds = this.session.workspace.everyBuild();
    const unseen = builds.filter((build) => !this.seen.has(build));
    for (const build of unseen) this.computeBuild(build);
    const logs = builds.reduce((count, build) => count + build.logs.length, 0);
    if (logs !== this.known.size) this.forgetOthers(builds);
    this.seen = new Set(builds);
    if (unseen.length > 0) this.took = this.session.host.now() - began;
  }

  private computeBuild(build: BuildSnapshot): void {
    const files = new Map(build.logs.map(({ file }) => [file.path, file]));
    try {
      for (const [log, complaints] of build.complaintsByLog) {
        const before = this.known.get(log.path);
        const { from } = before ?? {};
        const same = from?.complaints === complaints && from.places.hold(files);
        if (before === undefined || !same) this.computeLog(build, log, complaints);
        else if (before.log !== log) this.known.set(log.path, { ...before, log });
      }
    } catch (error) {
      this.session.report(error);
      const words = error instanceof Error ? error.message : String(error);
      for (const log of build.logs) this.keep(log, UNKNOWN, [ownFailure(words)]);
    }
  }

  private computeLog(build: BuildSnapshot, log: Log, complaints: readonly Complaint[]): void {
    const places = new SamePlacesByFile(complaints);
    const uriOf = (file: SourceFile) => this.session.uriOf(build.logOf(file).path);
    const shown = worst(complaints).map((complaint) => this.diagnostics.of(complaint, uriOf));
    this.keep(
      log,
      { complaints, places },
      shown.length < complaints.length ? [...shown, notShown(complaints.length)] : shown,
    );
  }

  private keep(log: Log, from: Sources, items: readonly Diagnostic[]): void {
    const before = this.known.get(log.path);
    const same = before !== undefined && areAlike(before.items, items);
    const resultId = same ? before.resultId : String(++this.results);
    this.known.set(log.path, { log, from, items: same ? before.items : items, resultId });
    if (!same && (before !== undefined || items.length > 0)) this.untold.add(log.path);
  }

  private forgetOthers(builds: readonly BuildSnapshot[]): void {
    const present = new Set(builds.flatMap(({ logs }) => logs.map(({ path }) => path)));
    for (const [path, { items }] of this.known) {
      if (present.has(path)) continue;
      this.known.delete(path);
      if (items.length > 0) this.untold.add(path);
    }
  }
}

/** Nothing is known of a build that could not be checked. */
const UNKNOWN: Sources = { complaints: undefined, places: new SamePlacesByFile([]) };

/** The complaints that are shown of a file: of too many the worst, still in the order of the text. */
function worst(complaints: readonly Complaint[]): readonly Complaint[] {
  if (complaints.length <= MOST_SHOWN) return complaints;
  const bySeverity = SEVERITIES.flatMap((severity) => complaints.filter((one) => one.severity === severity));
  const chosen = new Set(bySeverity.slice(0, MOST_SHOWN));
  return complaints.filter((complaint) => chosen.has(complaint));
}

/** Says at the top of a file that not all of its complaints are shown. */
function notShown(all: number): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
    severity: DiagnosticSeverity.Information,
    code: "more-complaints",
    source: "cotter",
    message: `${all - MOST_SHOWN} more complaints of this file are not shown: the ${MOST_SHOWN} worst are. cotter check lists all ${all}.`,
  };
}

/** The server itself has failed on a build: said where it is seen, so that silence is not taken for "all is well". */
function ownFailure(words: string): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
    severity: DiagnosticSeverity.Warning,
    code: "internal-error",
    source: "cotter",
    message: `this build could not be checked, by an error of the program itself: ${words}`,
  };
}
