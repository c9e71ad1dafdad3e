/** The complaints of one block: each once, waived or not, graded as asked, in the order of the text. */
import type { ItemNode, WaiverNode } from "../../grammar/syntax.ts";
import type { BlockSite } from "../build/source.ts";
import { placeAt } from "../build/source.ts";
import { catalogue } from "./catalogue.ts";
import type { Complaint, SeverityOverrides, Waived } from "./complaint.ts";
import type { Fix, WaiverRule } from "./rule.ts";

export interface Settled {
  readonly complaints: readonly Complaint[];
  readonly waived: readonly Waived[];
}

/** Of a block that nobody complains of: most are. */
const NOTHING: Settled = { complaints: [], waived: [] };

/** @param graded what the rules complain of in the block, rule by rule */
export function settle(site: BlockSite, graded: readonly Complaint[], overrides: SeverityOverrides): Settled {
  const waivers = waiversIn(site);
  if (graded.length === 0 && waivers.length === 0) return NOTHING;
  const unique = [...new Map(graded.map((one) => [keyOf(one), one])).values()];
  const { standing, waived, unused } = applyWaivers(waivers, unique);
  const complaints = [...standing, ...complaintsOfWaivers(site, unused, overrides)].map((complaint) => {
    const severity = overrides.get(complaint.code);
    return severity === undefined || severity === "off" ? complaint : { ...complaint, severity };
  });
  return { complaints: complaints.sort(inBlockOrder), waived };
}

/** One complaint of a code for each place and message. */
function keyOf({ code, place, message }: Complaint): string {
  return `${code} ${place.start} ${message}`;
}

function inBlockOrder(a: Complaint, b: Complaint): number {
  return a.place.start - b.place.start || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}

/** A waiver in the text, and the item whose complaints it can set aside. */
interface StandingWaiver {
  readonly waiver: WaiverNode;
  readonly item: ItemNode;
}

function waiversIn({ block }: BlockSite): readonly StandingWaiver[] {
  // Hardly any block has one: its lines need not be looked at.
  if (!block.text.includes("waived")) return [];
  return block.items.flatMap((item) =>
    item.kind === "record" || item.kind === "header"
      ? item.comments.flatMap(({ waiver }) => (waiver === undefined ? [] : [{ waiver, item }]))
      : [],
  );
}

interface AfterWaivers {
  readonly standing: readonly Complaint[];
  readonly waived: readonly Waived[];
  readonly unused: readonly WaiverNode[];
}

function applyWaivers(inBlock: readonly StandingWaiver[], all: readonly Complaint[]): AfterWaivers {
  const used = new Set<StandingWaiver>();
  const standing: Complaint[] = [];
  const waived: Waived[] = [];
  for (const complaint of all) {
    const { code, place, waivable } = complaint;
    const match = inBlock.find(
      ({ waiver, item }) => waiver.code === code && item.start <= place.start && place.start < item.end,
    );
    if (match !== undefined) used.add(match);
    if (match === undefined) standing.push(complaint);
    else if (waivable) waived.push({ complaint, reason: match.waiver.reason });
    else standing.push({ ...complaint, message: `${complaint.message} (${NOT_WAIVED})` });
  }
  const unused = inBlock.filter((waiver) => !used.has(waiver)).map(({ waiver }) => waiver);
  return { standing, waived, unused };
}

const NOT_WAIVED = "not waived: an error on something safety-critical stands until it is put right";

function complaintsOfWaivers(
  site: BlockSite,
  unused: readonly WaiverNode[],
  overrides: SeverityOverrides,
): Complaint[] {
  if (unused.length === 0) return [];
  const rules = [...catalogue.values()].filter(
    (rule): rule is WaiverRule => rule.of === "waiver" && overrides.get(rule.code) !== "off",
  );
  return rules.flatMap(({ code, severity, message }) =>
    unused.map((waiver) => ({
      code,
      severity,
      message: message(waiver, catalogue.has(waiver.code)),
      place: placeAt(site, waiver),
      seeAlso: [],
      fixes: () => [withoutWaiver(site, waiver)],
      waivable: false,
    })),
  );
}

/** The comment taken out, with the spaces before it. */
function withoutWaiver(site: BlockSite, { start, end }: WaiverNode): Fix {
  const spaces = /(?<![ \t])[ \t]*$/.exec(site.block.text.slice(0, start))?.[0].length ?? 0;
  const place = placeAt(site, { start: start - spaces, end });
  return { title: "Take the waiver out", sure: false, edits: [{ place, text: "" }] };
}
