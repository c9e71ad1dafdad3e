// The figures as a page.

import { inFigures, milliseconds } from "./figures.mjs";
import { goalsOf } from "./goals.mjs";
import { PEER_VERSIONS } from "./peers.mjs";

/**
 * @param results by the name of each part: what was measured, on which day, and the load before and after
 * @param changes what has been made quicker so far, written by hand
 */
export function pageOf(results, { processor, cores, node }, changes) {
  const measured = Object.fromEntries(Object.entries(results).map(([name, part]) => [name, part.measured]));
  const sections = [
    "# How fast Cotter is",
    "Written by `npm run bench`, which measures the programs as they are shipped. Nothing here is asserted by a test.",
    `Measured on ${cores} cores of ${processor}, Node ${node}. ${loadWords(results, cores)}`,
    "## Goals",
    table(
      ["goal", "measured", ""],
      goalsOf(results).map(({ goal, figure, reached }) => [goal, figure, reachedWord(reached)]),
    ),
    ...(measured.edits === undefined ? [] : editSections(measured.edits)),
    ...(measured.requests === undefined ? [] : requestSections(measured.requests)),
    ...(measured.reading === undefined ? [] : readingSections(measured.reading)),
    ...(measured.start === undefined ? [] : startSections(measured.start)),
    ...(measured.memory === undefined ? [] : memorySections(measured.memory)),
    ...(measured.sizes === undefined ? [] : sizeSections(measured.sizes)),
    changes.trim(),
  ];
  return `${sections.join("\n\n")}\n`;
}

function loadWords(results, cores) {
  const loads = Object.values(results).flatMap(({ load }) => load);
  const [least, most] = [Math.min(...loads), Math.max(...loads)].map((load) => load.toFixed(1));
  const days = [...new Set(Object.values(results).map(({ day }) => day))].sort();
  const when = days.length === 1 ? `on ${days[0]}` : `from ${days[0]} to ${days.at(-1)}`;
  const busy =
    Math.max(...loads) > cores
      ? " Other programs were at work on the machine: the times on the clock are longer than they would be on an idle one, so go by the ratios, which are taken in turn, and by the processor time."
      : "";
  return `Measured ${when}, with a load of ${least} to ${most}.${busy}`;
}

function reachedWord(reached) {
  if (reached === undefined) return "–";
  return reached ? "reached" : "**missed**";
}

function editSections(edits) {
  const versions = Object.entries(PEER_VERSIONS).map(([name, version]) => `${name} ${version}`);
  return [
    "## From a key to the diagnostics",
    "A generated build (parts, joints, days, prose, 5 % broken lines) of so many lines in all its files is open in the server, over its standard streams. Someone types a fact or a record key by key, and takes it back. Each key is one change, and the time runs until the diagnostics that follow it have come. The servers take turns, round by round. *Processor* is what the server's process has used of the processor's time for one key, with its collection of memory.",
    "The *empty server* keeps the text, reads nothing and reports an empty list: no server can be quicker. The peers read a text in their own language with as many lines, without a schema or outside checkers, and with the pause that they make before they check. They check one file by itself; Cotter checks the whole build.",
    `The peers: ${versions.join(", ")}.`,
    ...edits.flatMap(({ lines, rows, failed }) => [
      `### ${lines.toLocaleString("en")} lines`,
      table(
        ["server", "keys", "median", "p95", "processor, median", "processor, p95"],
        rows.map(({ name, keys, ...row }) => [
          name,
          String(keys),
          ...[row.median, row.p95, row.processor, row.processorP95].map(milliseconds),
        ]),
      ),
      ...failed.map((words) => `Not measured: ${words}.`),
    ]),
  ];
}

function requestSections({ lines, requests, rows }) {
  return [
    `## Hover and completion at ${lines.toLocaleString("en")} lines`,
    `${requests} of each, at names all over the last file of the diary; the last row asks in the moment after a key, before anything else has been computed.`,
    table(
      ["request", "median", "p95"],
      rows.map(({ name, ...row }) => [name, milliseconds(row.median), milliseconds(row.p95)]),
    ),
  ];
}

function readingSections({ lines, rounds, rows }) {
  return [
    `## Reading ${lines.toLocaleString("en")} lines`,
    `Processor time of ${rounds} rounds in turn, within one process.`,
    table(
      ["what reads", "median", "p95"],
      rows.map(({ name, ...row }) => [name, milliseconds(row.median), milliseconds(row.p95)]),
    ),
  ];
}

function startSections(rows) {
  return [
    "## Programs from start to end",
    "In turn: on the clock, and the mean of the processor time.",
    table(
      ["program", "rounds", "median", "p95", "processor"],
      rows.map(({ name, rounds, ...row }) => [
        name,
        String(rounds),
        milliseconds(row.median),
        milliseconds(row.p95),
        milliseconds(row.processor),
      ]),
    ),
  ];
}

function memorySections({ edits, editedLines, growth }) {
  return [
    `## Memory over ${edits.toLocaleString("en")} edits`,
    `What the server holds after a full collection (MB), on a build of ${editedLines.toLocaleString("en")} lines: after the first 100 keys, and after each tenth of the keys typed at each place.`,
    table(
      ["place", "first", ...Array.from({ length: 10 }, (_, index) => `${(index + 1) * 10} %`)],
      growth.map(({ place, heaps }) => [place, ...heaps.map((heap) => inFigures(heap))]),
    ),
    "By what it is, from snapshots of the heap after the first 100 keys and after the last. The engine goes on compiling for thousands of keys, and gives a table whose keys are held weakly as much room as there were dead keys between two collections; neither is held by the log.",
    table(
      ["place", "objects of the server", "code and shapes of the engine", "room in weak tables"],
      growth.map(({ place, contents: [first, last] }) => [
        place,
        ...["objects", "code", "tables"].map(
          (kind) => `${first[kind].toFixed(2)} to ${last[kind].toFixed(2)}`,
        ),
      ]),
    ),
  ];
}

function sizeSections(sizes) {
  return [
    "## Sizes",
    "What a server weighs once it has told the first diagnostics is the sum of the files that it says it has loaded by then: after the start, a folder, and one file of it open. Nothing is packed, and names of properties stay what they are.",
    table(
      ["what", "size"],
      sizes.map(({ name, size }) => [name, size === undefined ? "–" : `${size.toFixed(0)} KB`]),
    ),
  ];
}

function table(heads, rows) {
  const line = (cells) => `| ${cells.join(" | ")} |`;
  return [line(heads), line(heads.map((_, index) => (index === 0 ? "---" : "---:"))), ...rows.map(line)].join(
    "\n",
  );
}
