/** The diary as a story: each day with its prose, its facts and its photos, in the order in which they were written. */
import type { BlockNode, ItemNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { DayBlock } from "../build/definitions.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { compareDates } from "../quantities/dates.ts";
import { formatDecimal } from "../quantities/decimal.ts";

export type StoryPart =
  | { readonly is: "prose"; readonly text: string }
  | { readonly is: "fact"; readonly word: string; readonly text: string }
  | {
      readonly is: "photo";
      readonly path: string;
      readonly caption: string | undefined;
      /** What it shows, as the line names it. */
      readonly of: string | undefined;
    };

export interface StoryDay {
  readonly date: IsoDate;
  readonly hours: string | undefined;
  readonly parts: readonly StoryPart[];
}

/** The days of the diary up to today, by date. */
export function storyOf({ standing, today }: Build): readonly StoryDay[] {
  return standing.gathered.days
    .filter((day): day is DayBlock & { date: IsoDate } => day.date !== undefined && day.date <= today)
    .sort((a, b) => compareDates(a.date, b.date))
    .map((day) => ({
      date: day.date,
      hours: day.hours && `${formatDecimal(day.hours)} h`,
      parts: joinProse(day.site.block.items.flatMap((item) => partOf(day.site.block, item))),
    }));
}

/** The paragraphs of any block, without its records. */
export function proseOf(block: BlockNode): readonly string[] {
  const parts = block.items.flatMap((item) =>
    item.kind === "prose" || item.kind === "blank" ? partOf(block, item) : [],
  );
  return joinProse(parts).flatMap((part) => (part.is === "prose" ? [part.text] : []));
}

function partOf({ text }: BlockNode, item: ItemNode): StoryPart[] {
  switch (item.kind) {
    case "prose":
      return [
        {
          is: "prose",
          text: text
            .slice(item.start, item.end)
            .trim()
            .replace(/^\|\s?/, ""),
        },
      ];
    case "blank":
      return [{ is: "prose", text: "" }];
    case "record": {
      const said = text
        .slice(item.word.end + 1, item.contentEnd)
        .replace(/\s+/g, " ")
        .trim();
      const path = item.values.get("path");
      if (item.word.text !== "photo" || path?.kind !== "string")
        return [{ is: "fact", word: item.word.text, text: said }];
      const caption = item.values.get("note");
      const of = item.values.get("of");
      return [
        {
          is: "photo",
          path: path.text,
          caption: caption?.kind === "string" ? caption.text : undefined,
          of: of && text.slice(of.start, of.end),
        },
      ];
    }
    default:
      return [];
  }
}

/** Lines of prose that follow each other are one paragraph; a blank line parts two. */
function joinProse(parts: readonly StoryPart[]): StoryPart[] {
  const joined: StoryPart[] = [];
  let open = false;
  for (const part of parts) {
    const last = joined.at(-1);
    if (part.is === "prose" && part.text === "") open = false;
    else if (part.is === "prose" && open && last?.is === "prose") {
      joined[joined.length - 1] = { is: "prose", text: `${last.text} ${part.text}` };
    } else {
      joined.push(part);
      open = part.is === "prose";
    }
  }
  return joined;
}
