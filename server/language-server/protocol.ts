/**
 * What the server answers beyond the standard protocol, for a client that shows views of a build of its own: names and
 * shapes alone, so that either side can import this without carrying the other.
 *
 * A client that wants to be told of changes says so in its capabilities: `experimental: { cotter: { buildChanged: true } }`.
 * It is then sent `cotter/buildChanged`, without content, once things have been quiet for a moment.
 */
import type { OpenCode } from "../build/open-item.ts";
import type { PartPlace as PlaceOfPart } from "../build/states.ts";
import type { SystemLack } from "../build/system-check.ts";
import type { GitFault } from "../history/git-fault.ts";

/** Requests by name. Each answers null where there is no such build. */
export interface ViewRequests extends RecordRequests {
  "cotter/overview": { readonly params: OfBuild; readonly result: BuildOverview | null };
  "cotter/branch": { readonly params: OfBranch; readonly result: readonly BranchEntry[] | null };
  /** Markdown. */
  "cotter/describe": { readonly params: OfThing; readonly result: string | null };
  "cotter/stillOpen": { readonly params: OfBuild; readonly result: readonly HoldEntry[] | null };
  "cotter/toOrder": { readonly params: OfBuild; readonly result: readonly SupplierEntry[] | null };
  "cotter/report": { readonly params: OfReport; readonly result: Report | null };
  "cotter/book": { readonly params: OfBuild; readonly result: Book | null };
  "cotter/calculate": { readonly params: OfExpression; readonly result: Calculated };
  "cotter/dayPlace": { readonly params: OfBuild; readonly result: DayPlace | null };
  "cotter/partPlace": { readonly params: OfThing; readonly result: PartPlace | null };
}

/** Requests about what git keeps of a build. */
export interface RecordRequests {
  /** The newest commits that touched a log of the build, newest first. */
  "cotter/commits": { readonly params: OfBuild; readonly result: Recorded<readonly RecordedCommit[]> | null };
  "cotter/compare": { readonly params: OfComparison; readonly result: Recorded<BuildComparison> | null };
  "cotter/recordedText": { readonly params: OfRecordedText; readonly result: Recorded<string> | null };
  "cotter/history": { readonly params: OfHistory; readonly result: Recorded<ThingRecord> | null };
  /** The path or name of the thing at a place, or of the one that its line or block is about. */
  "cotter/thingAt": { readonly params: OfPlace; readonly result: string | null };
}

/** Notifications that the server sends. */
export interface ViewNotifications {
  "cotter/buildChanged": undefined;
}

/** Notifications that the client sends. */
export interface ClientNotifications {
  /**
   * Whether the user trusts the folders: git is started only there. How it is at the start stands in
   * `initializationOptions.trusted`; a client that says nothing has no record shown.
   */
  "cotter/trusted": { readonly trusted: boolean };
}

export interface OfBuild {
  /** A log of the build; null, or a log of none: the first build of the workspace. */
  readonly uri: string | null;
}

export interface OfBranch extends OfBuild {
  /** The path of an assembly or of a part with others below it; null for the vehicle. */
  readonly path: string | null;
}

export interface OfThing extends OfBuild {
  readonly path: string;
}

export interface OfReport extends OfBuild {
  readonly report: ReportName;
}

export interface OfExpression extends OfBuild {
  readonly expression: string;
}

/** Two revisions, or one and the build as the editor has it. */
export interface OfComparison extends OfBuild {
  /** A commit, a branch, a tag, or a day. */
  readonly from: string;
  readonly to: string | null;
}

export interface OfRecordedText extends OfBuild {
  readonly commit: string;
  /** From the root of the repository. */
  readonly path: string;
}

export interface OfHistory extends OfBuild {
  readonly ref: string;
}

export interface OfPlace {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

/** A place in a log: line and character from 0, in UTF-16 units. */
export interface Spot {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

export interface BuildOverview {
  /** The URI of the folder that paths of photos are relative to. */
  readonly folder: string;
  /** The vehicle's name; without a vehicle, that of the file. */
  readonly name: string;
  readonly today: string;
  /** The vehicle's header; null without one. */
  readonly spot: Spot | null;
  /** The first hold point that is shut; null where all are released or nothing is open without one. */
  readonly next: NextHold | null;
  /** Lines to order. */
  readonly toOrder: number;
}

export interface NextHold {
  readonly title: string;
  readonly planned: string | null;
  readonly open: number;
  /** The vehicle as a whole, where the log has no hold point: there is nothing to release. */
  readonly isWhole: boolean;
}

/** How a thing stands, at a glance. */
export type Look =
  /** As it will have to be: on, secured, proved, tested. */
  | "settled"
  /** Not yet. */
  | "unsettled"
  /** May not be used as it is. */
  | "condemned"
  /** Not in the workshop: sent out, missing, gone. */
  | "away"
  /** Nothing is known against it and nothing asks for it. */
  | "plain";

/** How a thing stands, for a client to put into a few words of its own; `cotter/describe` tells it in full. */
export type ThingState =
  /** How many of the things below it are not as they will have to be. */
  | { readonly is: "assembly"; readonly wanting: number; readonly of: number }
  | {
      readonly is: "part";
      readonly place: PlaceOfPart | "missing";
      /** The day on which it came there; null of one that is as it was found. */
      readonly since: string | null;
      readonly condemned: boolean;
      /** Of goods on the shelf: how many there are. */
      readonly inHand: number | null;
      /** It is on, and its newest reading is outside a limit. */
      readonly outOfLimits: boolean;
    }
  | { readonly is: "joint"; readonly secured: boolean }
  | { readonly is: "system"; readonly lack: SystemLack | null }
  | { readonly is: "circuit"; readonly atFault: boolean; readonly tested: boolean };

export interface BranchEntry {
  readonly path: string;
  readonly name: string;
  readonly kind: "assembly" | "part" | "joint" | "system" | "circuit";
  readonly title: string | null;
  readonly state: ThingState;
  readonly look: Look;
  readonly critical: boolean;
  readonly hasMore: boolean;
  /** Null of an assembly without a block of its own. */
  readonly spot: Spot | null;
}

export interface HoldEntry {
  readonly ref: string;
  readonly title: string;
  readonly planned: string | null;
  /** The day of the release that stands. */
  readonly released: string | null;
  /** Since when a release stands no more. */
  readonly lapsed: string | null;
  readonly spot: Spot;
  readonly open: readonly OpenEntry[];
  /** The vehicle as a whole, where the log has no hold point: there is nothing to release. */
  readonly isWhole: boolean;
}

export interface OpenEntry {
  /** Empty of a line that could not be read. */
  readonly ref: string;
  readonly title: string | null;
  /** Why it is open, for a client to put into a few words of its own. */
  readonly why: OpenReason;
  /** The same in full. */
  readonly message: string;
  readonly critical: boolean;
  readonly spot: Spot;
}

export interface OpenReason {
  readonly code: OpenCode;
  /** The day of what opened it; null where it was never otherwise, or that is not known. */
  readonly since: string | null;
  /** Of a part that is off: where it is. */
  readonly where: "off" | "away" | "missing" | "gone" | null;
  /** Of a job: whether it is begun. */
  readonly begun: boolean;
}

export interface SupplierEntry {
  /** Its name in the log; null of what no supplier is named for. */
  readonly ref: string | null;
  /** Null where it has none. */
  readonly title: string | null;
  /** Amounts with their currencies. */
  readonly goods: readonly string[];
  readonly carriage: string | null;
  /** Lines without a price. */
  readonly unpriced: number;
  /** What is lacking to the smallest order that the supplier takes. */
  readonly short: { readonly by: string; readonly minimum: string } | null;
  /** Null where none is named. */
  readonly spot: Spot | null;
  readonly lines: readonly OrderEntry[];
}

export interface OrderEntry {
  readonly ref: string;
  readonly title: string | null;
  readonly number: string | null;
  readonly quantity: number;
  /** With its currency; null where no price is stated. */
  readonly total: string | null;
  readonly needBy: string | null;
  readonly orderBy: string | null;
  readonly late: boolean;
  readonly why: readonly { readonly text: string; readonly spot: Spot }[];
  /** The part's own block. */
  readonly spot: Spot | null;
}

export type ReportName = "order" | "timeline" | "joints" | "outstanding" | "costs";

export interface Report {
  readonly title: string;
  /** What stands in the body of a page, safe as it is; `data-spot` of a link is an index into `spots`. */
  readonly fragment: string;
  readonly spots: readonly Spot[];
  /** The same as a page of its own, to keep and print. */
  readonly page: string;
  /** A name for that page's file. */
  readonly fileName: string;
}

export interface Book {
  readonly page: string;
  readonly fileName: string;
  readonly photos: number;
  /** Photos that are not in it, with the reason. */
  readonly missing: readonly { readonly path: string; readonly why: string }[];
}

export interface Calculated {
  /** The result in one line, or what is wrong with the expression. */
  readonly text: string;
  readonly notes: readonly string[];
  readonly failed: boolean;
}

export interface DayPlace {
  readonly date: string;
  /** The block of that day; null where there is none yet. */
  readonly found: Spot | null;
  /** Where a line may be added: at the end of that block, or of the newest before it. */
  readonly end: Spot;
}

export interface PartPlace {
  /** The thing that has that path already; null where it is free. */
  readonly taken: Spot | null;
  /** The end of the block beside which it belongs. */
  readonly end: Spot;
}

/**
 * Requests from the server to the client: files that the client reads for a server that has no disk, as in a browser.
 * Each is about a file or folder by its URI.
 */
export interface FileRequests {
  /** The text of a file, read as UTF-8; refused where there is none. */
  "cotter/files/read": { readonly params: OfFile; readonly result: string };
  /** What stands in a folder; nothing where there is no such folder. */
  "cotter/files/list": { readonly params: OfFile; readonly result: readonly FolderEntry[] };
  /** What a URI leads to; null where it leads to nothing. */
  "cotter/files/kind": { readonly params: OfFile; readonly result: FileKind | null };
}

export interface OfFile {
  readonly uri: string;
}

export type FileKind = "file" | "folder";

export interface FolderEntry {
  /** Without the folder, not escaped. */
  readonly name: string;
  /** Of a link that of what it leads to. */
  readonly kind: FileKind;
  /** A link is not followed when a folder is searched. */
  readonly link: boolean;
}

export type Recorded<T> = { readonly is: "recorded"; readonly value: T } | Refusal;

/** Why the record could not be read, with the words of the server for it. */
export interface Refusal {
  readonly is: "refused";
  readonly why: GitFault["fault"] | "not trusted" | "not on disk" | "unclear";
  readonly message: string;
}

export interface RecordedCommit {
  readonly id: string;
  /** The first characters of the id. */
  readonly short: string;
  readonly day: string;
  readonly author: string;
  /** The first line of its message. */
  readonly subject: string;
}

export interface BuildComparison {
  readonly from: ComparedSide;
  readonly to: ComparedSide;
  readonly groups: readonly ChangesGroup[];
}

export interface ComparedSide {
  /** Null of the build as the editor has it. */
  readonly commit: string | null;
  readonly short: string | null;
  readonly day: string | null;
  /** False where there was nothing of the build. */
  readonly hasBuild: boolean;
}

export interface ChangesGroup {
  readonly heading: string;
  readonly changes: readonly ChangeEntry[];
}

export interface ChangeEntry {
  /** What it is about, by title where it has one; of several the first. */
  readonly thing: string;
  /** The paths or names of all of them. */
  readonly refs: readonly string[];
  /** `reading of 2026-05-02 altered after the fact` */
  readonly change: string;
  readonly before: string | null;
  readonly after: string | null;
  /** Something recorded is otherwise now, or less is asked: to be looked at first. */
  readonly standsOut: boolean;
  readonly at: TwoSided | null;
}

/** A line of a log of which there are two versions. */
export interface TwoSided {
  readonly left: RecordedSide;
  readonly right: RecordedSide;
  /** On which of them the line stands, counted from 0. */
  readonly side: "left" | "right";
  readonly line: number;
}

/** A log at a commit; without one the log in the editor. */
export interface RecordedSide {
  readonly commit: string | null;
  /** From the root of the repository. */
  readonly path: string;
  /** The log in the editor; null where there is no such file, or a commit is meant. */
  readonly uri: string | null;
}

export interface ThingRecord {
  readonly ref: string;
  readonly title: string | null;
  /** The names it had before, newest first. */
  readonly earlierNames: readonly string[];
  /** In the order in which they were written. */
  readonly statements: readonly RecordedStatement[];
}

export interface RecordedStatement {
  readonly is: "written" | "altered" | "taken out";
  readonly says: string;
  /** What an altered one said before. */
  readonly was: string | null;
  /** The day that it tells of; null of a definition. */
  readonly day: string | null;
  /** Null where it was written on its day. */
  readonly daysLater: number | null;
  /** Null of what has not been committed. */
  readonly commit: RecordedCommit | null;
  readonly at: TwoSided;
}
