/** The block words: what each defines, and how its header reads. */
import type { BlockEntry, Shape } from "./shape.ts";
import { date, element, optional, quantity, string } from "./shape.ts";

const name: Shape = { value: "word", of: { names: "new name" } };
const path: Shape = { value: "word", of: { names: "path" } };

const titled = (shape: Shape, ...clauses: BlockEntry["clauses"]) => ({
  elements: [element("name", shape), optional("title", string)],
  clauses,
  note: false,
});

const like: BlockEntry["clauses"][number] = { words: ["like"], role: "like", shape: path };

export const BLOCKS: readonly BlockEntry[] = [
  {
    word: "vehicle",
    elements: [element("title", string)],
    clauses: [],
    note: false,
    help: "The vehicle that the build is about: one in each build, with what holds for the whole of it.",
    example: 'vehicle "Halvorsen Sprint"',
  },
  {
    word: "supplier",
    ...titled(name),
    help: "A firm or person that sells, or does outside work.",
    example: 'supplier northgate "Northgate Motor Factors"',
  },
  {
    word: "gauge",
    ...titled(name),
    help: "A measuring or setting tool, with what it can read and how well.",
    example: 'gauge mic25 "Micrometer, 0 to 25 mm"',
  },
  {
    word: "assembly",
    ...titled(path, like),
    help: "A branch of the tree: holds every path that starts with its own. `like` copies a whole branch.",
    example: 'assembly front.right "Right front corner" like front.left',
  },
  {
    word: "part",
    ...titled(path, like),
    help: "A part, with its identity, sizes, limits and how it is bought. `like` copies definitions, never history.",
    example: 'part front.left.disc "Brake disc"',
  },
  {
    word: "joint",
    ...titled(path, like),
    help: "A fastened joint: the unit that is tightened, locked and marked.",
    example: 'joint front.left.disc_bolts "Disc to hub"',
  },
  {
    word: "system",
    ...titled(path, like),
    help: "A fluid system that is filled, bled and proved.",
    example: 'system brakes.front "Front brake circuit"',
  },
  {
    word: "circuit",
    ...titled(path, like),
    help: "An electrical circuit: its load, wire and fuse.",
    example: 'circuit cooling.fan_feed "Radiator fan"',
  },
  {
    word: "job",
    ...titled(path),
    help: "Planned work, with the time it takes and what it waits for.",
    example: 'job strip_front "Strip the front end"',
    choice: "A job's name may be dotted; jobs and hold points share one name space.",
  },
  {
    word: "hold",
    ...titled(name),
    help: "A hold point: work does not pass it until everything it needs has been verified.",
    example: 'hold first_run "First run of the engine"',
  },
  {
    word: "setup",
    ...titled(name),
    help: "The condition under which settings and weights are taken.",
    example: 'setup driver_up "Driver aboard"',
  },
  {
    word: "donor",
    ...titled(name),
    help: "A known part from elsewhere, to identify unknown ones by.",
    example: 'donor saloon_hub "Hub of the small saloon"',
  },
  {
    word: "day",
    elements: [element("date", date), optional("hours", quantity("time"))],
    clauses: [],
    note: false,
    help: "What happened on one day, with the hours worked.",
    example: "day 2026-05-02 5.5 h",
  },
];
