/** A build as a value: files go in, and what they say and how things stand comes out. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Calculation } from "./calculation.ts";
import { complaintsOfCalculations, definedCalculations } from "./calculation-findings.ts";
import { complaintsOfCircuits } from "./circuit-findings.ts";
import { complaintsOfComparisons } from "./comparison-findings.ts";
import { complaintsOfCopies } from "./copy-findings.ts";
import { complaintsOfCycles } from "./cycle-findings.ts";
import { dayFindings } from "./day-findings.ts";
import type { Gathered } from "./definitions.ts";
import { gather } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { complaintsOfGauges } from "./gauge-findings.ts";
import { complaintsOfJoints } from "./joint-findings.ts";
import { Leanings } from "./leaning.ts";
import { complaintsOfLives } from "./life-findings.ts";
import { complaintsOfReadings } from "./limit-findings.ts";
import type { Source } from "./lookups.ts";
import { lostLinesOf } from "./lost-lines.ts";
import { LostIndex } from "./lost-reasons.ts";
import { Memory } from "./memory.ts";
import type { Names, ReferenceLink } from "./names.ts";
import { namesOf } from "./names.ts";
import { missingPhotos } from "./photo-findings.ts";
import { Remembered } from "./remembered.ts";
import { readDiary } from "./replay/diary.ts";
import type { Diary } from "./replay/footing.ts";
import { Review } from "./review.ts";
import { complaintsOfUnseenParts } from "./second-look-findings.ts";
import { complaintsOfSettings } from "./setting-findings.ts";
import type { BlockSite, SourceFile } from "./source.ts";
import { inOrder, placeAt, sitesIn } from "./source.ts";
import type { DatedFact } from "./states.ts";
import { complaintsOfSystems } from "./system-findings.ts";
import { complaintsOfUnmeasured } from "./unmeasured-findings.ts";
import { unusedDefinitions } from "./unused-findings.ts";

export interface Build {
  readonly files: readonly SourceFile[];
  readonly sites: readonly BlockSite[];
  readonly today: IsoDate;
  /** How things stand today. */
  readonly standing: Review;
  /** Every fact that counts, in the order in which they are read. */
  readonly facts: readonly DatedFact[];
  /** Every reference in the text, and what it leads to. */
  readonly links: readonly ReferenceLink[];
  /** Every `calc:`, and what came of it: of the days in their order, then of the other blocks. */
  readonly calculations: readonly Calculation[];
  /** What it has noticed, in one list for each way of noticing: what goes on from a build compares list with list. */
  readonly findingLists: readonly (readonly Finding[])[];
  /** All that it has noticed. */
  readonly findings: readonly Finding[];
  /** How the diary was read, for the next build of the same files. */
  readonly diary: Diary;
  /** What was made of it, for the next build; undefined where none will go on from it. */
  readonly memory: Memory | undefined;
}

export interface BuildOptions {
  /** The clock's date; `today:` of the vehicle beats it. */
  readonly clock: IsoDate;
  /** A day asked for: beats `today:`. */
  readonly on?: IsoDate | undefined;
  /** Whether a photo's path is a file within the build's folder; without it no photo is missed. */
  readonly photos?: (path: string) => boolean;
  /**
   * The build before an edit, of the same files (`fileAfter`). It changes nothing of what comes out: what it has derived
   * already is taken from it.
   */
  readonly before?: Build | undefined;
  /** Whether a build will go on from this one: what that will need is then kept. With one before it, that is taken for granted. */
  readonly isGoneOnFrom?: boolean;
}

/** Derives a build from its files. Pure: the same files and dates give the same build. */
export function readBuild(files: readonly SourceFile[], options: BuildOptions): Build {
  const { clock, on, photos, before } = options;
  const keeps = before !== undefined || options.isGoneOnFrom === true;
  const ordered = inOrder(files);
  const gathered = gather(ordered);
  const names = namesOf(gathered);
  const today = on ?? statedToday(gathered) ?? clock;
  const lost = lostLinesOf(ordered, gathered, names);
  const diary = readDiary(gathered, names, today, lost, keeps, before?.diary);
  const { replay, facts } = diary;
  const memory = keeps ? (before?.memory ?? new Memory()) : undefined;
  const review = reviewOf(diary, memory);
  const calculations = definedCalculations(review);
  const findingLists = [
    ...gathered.findingLists,
    withoutVehicle(gathered, ordered),
    ...ordered.map((file) => names.findings(file, gathered.written)),
    ...dayFindings(ordered, gathered, today),
    unusedDefinitions(names, gathered.written, ordered),
    photos === undefined ? [] : missingPhotos(gathered, photos),
    ...complaintsOfReadings(review, replay.findings, replay.calculations),
    complaintsOfCalculations(review, calculations),
    ...complaintsOfComparisons(review),
    ...complaintsOfGauges(review, facts),
    complaintsOfUnmeasured(review),
    complaintsOfCopies(review),
    complaintsOfCycles(review),
    ...complaintsOfJoints(review),
    complaintsOfSystems(review),
    ...complaintsOfCircuits(review),
    complaintsOfSettings(review),
    complaintsOfLives(review),
    complaintsOfUnseenParts(review),
  ];
  let sites: readonly BlockSite[] | undefined;
  const sitesOf = () => {
    sites ??= ordered.flatMap(sitesIn);
    return sites;
  };
  return {
    files,
    get sites() {
      return sitesOf();
    },
    today,
    standing: review,
    get facts() {
      return facts.all();
    },
    get links() {
      return names.links(sitesOf(), gathered.written);
    },
    calculations: [...replay.calculations, ...calculations],
    findingLists,
    get findings() {
      return findingLists.flat();
    },
    diary,
    memory,
  };
}

/** The last index of all lines that could not be read. */
const lostIndexes = new WeakMap<Names, LostIndex>();

/** The diary as it stands. */
function reviewOf({ replay, facts, differences }: Diary, memory: Memory | undefined): Review {
  const known = lostIndexes.get(replay.names);
  const lost = known?.lost === replay.lost ? known : new LostIndex(replay.lost, known);
  lostIndexes.set(replay.names, lost);
  const source: Source = {
    standing: replay,
    lostAbout: (node) => lost.about(node),
    leanings: new Leanings(replay, facts),
  };
  memory?.goOn(source, differences);
  return new Review(source, memory !== undefined, memory);
}

function statedToday({ vehicle }: Gathered): IsoDate | undefined {
  const record = vehicle.records.findLast(({ record: { word } }) => word === "today")?.record;
  return record?.word === "today" ? record.date : undefined;
}

function withoutVehicle({ vehicle }: Gathered, files: readonly SourceFile[]): readonly Finding[] {
  if (vehicle.header !== undefined) return NONE;
  const first = files.map(sitesIn).find(({ length }) => length > 0)?.[0];
  return first === undefined
    ? NONE
    : [missing.of(first, [], () => finding("no-vehicle", placeAt(first, { start: 0, end: 0 }), {}))];
}

const NONE: readonly Finding[] = [];
const missing = new Remembered<BlockSite, Finding>();
