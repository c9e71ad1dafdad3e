/** The records of what a build rests on: the vehicle, suppliers, gauges, setups and donors. */
import { record } from "./entry.ts";
import type { RecordEntry } from "./shape.ts";
import {
  characteristic,
  choice,
  clause,
  date,
  either,
  element,
  flag,
  money,
  number,
  quantity,
  string,
} from "./shape.ts";

const VEHICLE: readonly RecordEntry[] = [
  record("vehicle", "chassis", string, {
    help: "The chassis or frame number.",
    example: 'chassis: "HS 0147"',
    bad: "chassis: HS 0147",
    code: "unreadable-value",
  }),
  record("vehicle", "year", number, {
    help: "The year it was built.",
    example: "year: 1963",
    bad: "year: nineteen sixty-three",
    code: "unreadable-value",
  }),
  record(
    "vehicle",
    "currency",
    { value: "word", of: { names: "currency" } },
    {
      help: "The currency of the build's totals, by its code of ISO 4217.",
      example: "currency: GBP",
      bad: "currency: pounds",
      code: "unreadable-value",
    },
  ),
  record(
    "vehicle",
    "rate",
    { value: "exchange" },
    {
      help: "What one currency is worth in another. Without it two currencies never add.",
      example: "rate: 1 EUR = 0.86 GBP",
      bad: "rate: EUR = 0.86 GBP",
      code: "unreadable-value",
      repeats: true,
    },
  ),
  record("vehicle", "tax", quantity("ratio"), {
    help: "Tax added to prices in totals, and shown apart (default 0 %).",
    example: "tax: 20 %",
    bad: "tax: twenty %",
    code: "unreadable-value",
  }),
  record(
    "vehicle",
    "labour",
    { value: "moneyRate" },
    {
      help: "What an hour of own work is reckoned at.",
      example: "labour: 40 GBP/h",
      bad: "labour: 40 GBP",
      code: "unreadable-value",
    },
  ),
  record("vehicle", "budget", money, {
    help: "What the build may cost.",
    example: "budget: 9500.00 GBP",
    bad: "budget: 9,500 GBP",
    code: "decimal-comma",
  }),
  record(
    "vehicle",
    "week",
    { value: "week" },
    {
      help: "The hours that one pair of hands has on each day of the week (default sat 6 h, sun 4 h).",
      example: "week: tue 2 h, thu 2 h, sat 6 h",
      bad: "week: tuesday 2 h, thu 2 h, sat 6 h",
      code: "unreadable-value",
    },
  ),
  record("vehicle", "hands", number, {
    help: "How many pairs of hands work at once (default 1).",
    example: "hands: 1",
    bad: "hands: one",
    code: "unreadable-value",
  }),
  record("vehicle", "closed", either({ value: "dateRange" }, date), {
    help: "Days on which no work is done.",
    example: "closed: 2026-12-24..2027-01-03",
    bad: "closed: 2026-12-24 to 2027-01-03",
    code: "unreadable-value",
    repeats: true,
    choice: "A single date closes that one day. Each period has a line of its own.",
  }),
  record("vehicle", "protrusion", number, {
    help: "How many thread pitches must stand out past a nut (default 2).",
    example: "protrusion: 2",
    bad: "protrusion: two",
    code: "unreadable-value",
  }),
  record("vehicle", "near", quantity("ratio"), {
    help: "A limit is near when less than this share of its zone is left (default 10 %).",
    example: "near: 10 %",
    bad: "near: 10 % left",
    code: "unreadable-value",
  }),
  record("vehicle", "past", choice("unknown", "known"), {
    help: "Whether joints as found may be trusted (`known`) or are unproven until opened or torqued (default).",
    example: "past: known",
    bad: "past: forgotten",
    code: "unreadable-value",
  }),
  record("vehicle", "today", date, {
    help: "The day that reports are made for; without it, the clock decides.",
    example: "today: 2026-11-24",
    bad: "today: 24.11.2026",
    code: "bad-date",
  }),
];

const SUPPLIER: readonly RecordEntry[] = [
  record(["supplier", "part"], "lead", quantity("time"), {
    help: "Calendar days from order to delivery.",
    example: "lead: 5 d",
    bad: "lead: a week",
    code: "unreadable-value",
    choice: "Any unit of time reads; a part of a day counts as a whole one.",
  }),
  record("supplier", "carriage", money, {
    help: "What one delivery costs.",
    example: "carriage: 8.50 GBP",
    bad: "carriage: 8,50 GBP",
    code: "decimal-comma",
  }),
  record("supplier", "minimum", money, {
    help: "The smallest order taken.",
    example: "minimum: 25.00 GBP",
    bad: "minimum: 25.00 gbp",
    code: "unreadable-value",
  }),
  record("supplier", "web", string, {
    help: "Where it is found on the web.",
    example: 'web: "https://northgate.example"',
    bad: "web: https://northgate.example",
    code: "unreadable-value",
  }),
  record("supplier", "email", string, {
    help: "Its address for mail.",
    example: 'email: "parts@northgate.example"',
    bad: 'email: "parts@northgate.example',
    code: "unclosed-string",
  }),
  record("supplier", "phone", string, {
    help: "Its telephone number.",
    example: 'phone: "01632 960144"',
    bad: "phone: 01632 960144",
    code: "unreadable-value",
  }),
];

const GAUGE: readonly RecordEntry[] = [
  record(
    "gauge",
    "reads",
    { value: "ranges" },
    {
      help: "What it can read; several ranges by comma.",
      example: "reads: 0..25 mm",
      bad: "reads: 25 mm",
      code: "unreadable-value",
    },
  ),
  record("gauge", "resolution", quantity("any"), {
    help: "The smallest step it shows.",
    example: "resolution: 0.01 mm",
    bad: "resolution: .01 mm",
    code: "unreadable-value",
  }),
  record(
    "gauge",
    "uncertainty",
    { value: "tolerance" },
    {
      help: "Its expanded uncertainty (k = 2), absolute or in % of the reading. Without it, from the resolution.",
      example: "uncertainty: ± 0.004 mm",
      bad: "uncertainty: good",
      code: "unreadable-value",
      clauses: [flag("ofReading", "of", "reading")],
      choice: "The ± may be left out.",
    },
  ),
  record("gauge", "calibrated", [element("date", date)], {
    help: "When it was last calibrated, and for how long that holds.",
    example: "calibrated: 2026-01-15 for 12 month",
    bad: "calibrated: 2026-1-15 for 12 month",
    code: "bad-date",
    clauses: [clause("for", "for", quantity("time"))],
  }),
];

const SETUP_AND_DONOR: readonly RecordEntry[] = [
  record("setup", "with", string, {
    help: "What is aboard, and how it stands.",
    example: 'with: "two bags of 75 kg, 10 l of fuel"',
    bad: "with: two bags of 75 kg",
    code: "unreadable-value",
  }),
  record(["part", "donor"], "number", string, {
    help: "The part number.",
    example: 'number: "HS-2201"',
    bad: "number: HS-2201",
    code: "unreadable-value",
  }),
  record(
    ["part", "assembly", "joint", "system", "circuit", "donor"],
    "size",
    [element("name", characteristic), element("value", either({ value: "thread" }, quantity("any")))],
    {
      help: "A nominal dimension, for calculations and identification.",
      example: "size: bore 54 mm",
      bad: "size: 54 mm",
      code: "unreadable-value",
      repeats: true,
      choice: "A thread may be given as a size; assemblies, joints, systems and circuits may have sizes too.",
    },
  ),
];

export const BUILD_RECORDS: readonly RecordEntry[] = [...VEHICLE, ...SUPPLIER, ...GAUGE, ...SETUP_AND_DONOR];
