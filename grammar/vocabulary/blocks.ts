/** The block words: what each defines, and how its header reads. */
import type { BlockWord } from "../syntax.ts";
import type { BadExample, BlockEntry, Clause, Shape } from "./shape.ts";
import { date, element, optional, quantity, string } from "./shape.ts";

const name: Shape = { value: "word", of: { names: "new name" } };
const path: Shape = { value: "word", of: { names: "path" } };
const like: Clause = { words: ["like"], role: "like", shape: path };

interface Text {
  readonly help: string;
  readonly example: string;
  readonly bad: string;
  readonly code: BadExample["code"];
  readonly choice?: string;
}

/** A block with a name and, after it, a title. */
function titled(word: BlockWord, shape: Shape, clauses: readonly Clause[], text: Text): BlockEntry {
  const { help, example, bad, code, choice } = text;
  return {
    word,
    elements: [element("name", shape), optional("title", string)],
    clauses,
    note: false,
    help,
    example,
    bad: { text: bad, code },
    ...(choice === undefined ? {} : { choice }),
  };
}

export const BLOCKS: readonly BlockEntry[] = [
  {
    word: "vehicle",
    elements: [element("title", string)],
    clauses: [],
    note: false,
    help: "The vehicle that the build is about: one in each build, with what holds for the whole of it.",
    example: 'vehicle "Halvorsen Sprint"',
    bad: { text: "vehicle Halvorsen", code: "unreadable-value" },
  },
  titled("supplier", name, [], {
    help: "A firm or person that sells, or does outside work.",
    example: 'supplier northgate "Northgate Motor Factors"',
    bad: 'suplier northgate "Northgate Motor Factors"',
    code: "unknown-block",
    choice: "Here and in the other blocks with a title, the title may be left out.",
  }),
  titled("gauge", name, [], {
    help: "A measuring or setting tool, with what it can read and how well.",
    example: 'gauge mic25 "Micrometer, 0 to 25 mm"',
    bad: 'gauge mic-25 "Micrometer, 0 to 25 mm"',
    code: "unreadable-value",
  }),
  titled("assembly", path, [like], {
    help: "A branch of the tree: holds every path that starts with its own. `like` copies a whole branch.",
    example: 'assembly front.right "Right front corner" like front.left',
    bad: 'assembly front.right "Right front corner" like',
    code: "missing-value",
    choice: "The title may stand behind the copied path too.",
  }),
  titled("part", path, [like], {
    help: "A part, with its identity, sizes, limits and how it is bought. `like` copies definitions, never history.",
    example: 'part front.left.disc "Brake disc"',
    bad: 'part front.left.M10 like "Brake disc"',
    code: "unreadable-value",
  }),
  titled("joint", path, [like], {
    help: "A fastened joint: the unit that is tightened, locked and marked.",
    example: 'joint front.left.disc_bolts "Disc to hub"',
    bad: 'joint M10 "Disc to hub"',
    code: "reserved-name",
  }),
  titled("system", path, [like], {
    help: "A fluid system that is filled, bled and proved.",
    example: 'system brakes.front "Front brake circuit"',
    bad: 'system brakes.*.front "Front brake circuit"',
    code: "unreadable-value",
  }),
  titled("circuit", path, [like], {
    help: "An electrical circuit: its load, wire and fuse.",
    example: 'circuit cooling.fan_feed "Radiator fan"',
    bad: 'circuit cooling..fan_feed "Radiator fan"',
    code: "unreadable-value",
  }),
  titled("job", path, [], {
    help: "Planned work, with the time it takes and what it waits for.",
    example: 'job strip_front "Strip the front end"',
    bad: 'job "Strip the front end"',
    code: "unreadable-value",
    choice: "A job's name may be dotted; jobs and hold points share one name space.",
  }),
  titled("hold", name, [], {
    help: "A hold point: work does not pass it until everything it needs has been verified.",
    example: 'hold first_run "First run on the road"',
    bad: 'hold first.run "First run on the road"',
    code: "unreadable-value",
  }),
  titled("setup", name, [], {
    help: "The condition under which settings and weights are taken.",
    example: 'setup driver_up "Driver aboard"',
    bad: 'setup driver_up "Driver aboard',
    code: "unclosed-string",
  }),
  titled("donor", name, [], {
    help: "A known part from elsewhere, to identify unknown ones by.",
    example: 'donor saloon_hub "Hub of the small saloon"',
    bad: 'donor 2nd_hub "Hub of the small saloon"',
    code: "unreadable-value",
  }),
  {
    word: "day",
    elements: [element("date", date), optional("hours", quantity("time"))],
    clauses: [],
    note: false,
    help: "What happened on one day, with the hours worked.",
    example: "day 2026-05-02 6 h",
    bad: { text: "day 2.5.2026 6 h", code: "bad-date" },
    choice:
      "A line that means to be a day starts one even where its date cannot be read, so that its facts do not fall to the day above.",
  },
];
