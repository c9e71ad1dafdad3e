// docs/reliability.md, from the figures that the runs have left and the checklist.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { kept, root } from "./figures.mjs";
import { wilson } from "./mutation-sample.mjs";

export function writePage() {
  const here = (name) => path.join(root, "test/reliability", name);
  const figures = kept();
  const parts = [
    readFileSync(here("page-head.md"), "utf8").trim(),
    editing(figures.editing),
    memory(figures.memory),
    properties(figures.properties),
    limits(figures.limits),
    disk(figures.disk),
    hostile(figures.hostile),
    network(figures.network),
    regexes(figures.regexes),
    dependencies(figures.dependencies),
    mutation(figures.mutation),
    readFileSync(here("page-survivors.md"), "utf8").trim(),
    readFileSync(here("page-checklist.md"), "utf8").trim(),
  ];
  writeFileSync(path.join(root, "docs/reliability.md"), `${parts.join("\n\n")}\n`);
}

const notRun = (title) => `## ${title}\n\nNot run.`;

function listed(faults, none) {
  return faults.length === 0
    ? none
    : faults.map((fault) => `- fault: \`${fault.slice(0, 300).replace(/[`\n]/g, " ")}\``).join("\n");
}

function editing(figures) {
  if (figures === undefined) return notRun("Random editing through the built server");
  const { on, seed, minutes, counts, memory, heaps, faults } = figures;
  const rows = Object.entries({
    "edits, of one or two places each": counts.edits,
    "requests of every kind, at random places": counts.requests,
    "of them called off at once": counts.calledOff,
    "malformed messages": counts.malformed,
    "messages out of turn, or with an older version": counts.outOfTurn,
    "files written, renamed, replaced on disk": counts.files,
    "comparisons with a fresh server": counts.comparisons,
    "faults found in this run": faults.length,
  }).map(([what, count]) => `| ${what} | ${count.toLocaleString("en")} |`);
  return [
    "## Random editing through the built server",
    `Run on ${on}, seed ${seed}, ${minutes} minutes, one server throughout.`,
    ["| what | count |", "| --- | ---: |", ...rows].join("\n"),
    held({ memory, heaps }),
    listed(faults, "No crash, no hang, no difference from a fresh server."),
  ].join("\n\n");
}

/** What a server held, at about twelve moments of the run. */
function held({ memory, heaps }) {
  const picked = (figures = []) =>
    figures.filter(
      (_, index) => index === figures.length - 1 || index % Math.max(1, Math.ceil(figures.length / 12)) === 0,
    );
  return `What the server held after a collection of what is not held any more, each time with all files closed and as they were at first (MB): ${picked(heaps).join(", ")}. Of the machine's memory, before it (MB): ${picked(memory).join(", ")}.`;
}

function memory(figures) {
  if (figures === undefined) return notRun("Memory over edits of a longer log");
  const { on, seed, sample, minutes, counts, faults } = figures;
  return [
    "## Memory over edits of a longer log",
    `Run on ${on}, on the sample \`${sample}\`, seed ${seed}, ${minutes} minutes, one server throughout: ${counts.edits.toLocaleString("en")} edits, ${counts.requests.toLocaleString("en")} requests, ${counts.comparisons} comparisons with a fresh server.`,
    held(figures),
    listed(faults, "No crash, no hang, no difference from a fresh server."),
  ].join("\n\n");
}

function properties(figures) {
  const title = "Random logs and builds at length";
  if (figures === undefined) return notRun(title);
  const says = {
    grammar:
      "cases of the properties of the grammar: nothing of a text is lost, reading ends, the layout is stable and keeps the meaning",
    builds:
      "builds for each property of builds that go on from edit to edit, each compared with one read afresh",
  };
  const lines = Object.entries(says)
    .filter(([name]) => figures[name] !== undefined)
    .map(([name, words]) => {
      const { on, cases, minutes, passed } = figures[name];
      return `- ${cases.toLocaleString("en")} ${words}: ${passed ? "all passed" : "**failed**"}, in ${minutes} minutes, on ${on}`;
    });
  return [
    `## ${title}`,
    "`node test/long/properties.mjs`, on a machine that others used at the same time.",
    lines.join("\n"),
  ].join("\n\n");
}

function limits(figures) {
  if (figures === undefined) return notRun("Limits");
  const rows = figures.results.map(({ name, program, server }) => {
    const served =
      server.answers === undefined
        ? server.faults.join("; ")
        : `${server.diagnostics} shown, then a key and a hover in ${server.answers.toFixed(1)} s`;
    return `| ${name} | ${program.seconds.toFixed(1)} s, status ${program.status}: ${program.says.replaceAll("|", "\\|")} | ${server.seconds.toFixed(1)} s: ${served} |`;
  });
  return [
    "## Limits",
    `Run on ${figures.on}, on a machine that others used at the same time: the times say how it feels, no more. An editor is shown the 1,000 worst complaints of a file, and one notice of how many more there are.`,
    ["| log | command line | server |", "| --- | --- | --- |", ...rows].join("\n"),
  ].join("\n\n");
}

function disk(figures) {
  const title = "A disk that is full";
  if (figures === undefined) return notRun(title);
  if (!figures.possible)
    return `## ${title}\n\nNot possible where it was last run, on ${figures.on}: ${figures.why}.`;
  const rows = figures.tried.map(
    ({ what, room, says, faults }) =>
      `| ${what} | ${room.toLocaleString("en")} | ${says.split("\n")[0].replaceAll("|", "\\|").slice(0, 110)} | ${faults.length === 0 ? "as before" : faults.join("; ")} |`,
  );
  return [
    `## ${title}`,
    `Run on ${figures.on}, on a disk of memory of two megabytes that was filled but for the bytes that are named. Afterwards each file had to be as before, none more to be there, the status to be 2; and with room again the same call had to succeed.`,
    ["| call | bytes left | what it said | files |", "| --- | ---: | --- | --- |", ...rows].join("\n"),
  ].join("\n\n");
}

function hostile(figures) {
  if (figures === undefined) return notRun("A hostile log in every form");
  return [
    "## A hostile log in every form",
    `Run on ${figures.on}: ${figures.called.length} outputs of a log full of control sequences, markup, formulas and links (${figures.called.join(", ")}).`,
    listed(figures.faults, "None could steer a terminal, a browser, a spreadsheet or a page of Markdown."),
  ].join("\n\n");
}

function network(figures) {
  if (figures === undefined) return notRun("No network");
  if (!figures.traced) return `## No network\n\n${figures.why}.`;
  const told = (calls) =>
    Object.entries(calls)
      .map(([call, count]) => `${call}…) ${count} times`)
      .join(", ") || "none";
  return [
    "## No network",
    `\`strace -f -e trace=network\`, run on ${figures.on}. A program that does open a connection was traced first, to see that the trace sees it: ${told(figures.control)}.`,
    [
      `- Node alone: ${told(figures.bare)}`,
      ...Object.entries(figures.program).map(([command, calls]) => `- \`cotter ${command}\`: ${told(calls)}`),
      `- the server over a session of requests, reports, a book and the record in git: ${told(figures.server)}`,
    ].join("\n"),
    "`getsockname` and `getsockopt` are Node asking what its own standard streams are; `socketpair(AF_UNIX…)` and `shutdown` are the pipes to git, which is traced too.",
    listed(figures.faults, "No socket of a network was made, none connected."),
  ].join("\n\n");
}

function regexes(figures) {
  if (figures === undefined) return notRun("Regular expressions");
  const { on, counts, short, faults } = figures;
  return [
    "## Regular expressions",
    `Looked at on ${on} with \`recheck\` 4.5: of ${counts.proved} it is proved that they take time linear in the text, of ${counts.searched} no text was found by search that takes longer. The other ${counts.short} take time in the square of a text that is cut short before:`,
    short.map((one) => `- \`${one.replace(/\/: /, "/`: ")}`).join("\n"),
    listed(faults, "None else takes longer than that."),
  ].join("\n\n");
}

function dependencies(figures) {
  if (figures === undefined) return notRun("What is bundled");
  return [
    "## What is bundled",
    `Looked at on ${figures.on}. Not on the allow-list: ${figures.refused.join(", ") || "none"}. \`npm audit --omit=dev\`: ${figures.audit}. The manifest states no package to be installed besides: all is in the bundle, so the audit covers the lock file's development packages only where it is run without that option.`,
    figures.packages.map((one) => `- ${one}`).join("\n"),
    "`npm run sbom` prints the same as a bill of materials (CycloneDX). A test of the package lists every file that it holds.",
  ].join("\n\n");
}

function mutation(figures) {
  const title = "## Mutation testing";
  if (figures === undefined) return notRun("Mutation testing");
  const files = Object.entries(figures.files).sort(([one], [other]) => (one < other ? -1 : 1));
  const folderOf = (file) => file.split("/")[1];
  const folders = [...new Set(files.map(([file]) => folderOf(file)))].map((folder) => {
    const own = files.filter(([file]) => folderOf(file) === folder);
    const sum = own.reduce(
      (total, [, { killed, alive, ignored }]) => ({
        killed: total.killed + killed,
        alive: total.alive + alive,
        ignored: total.ignored + ignored,
      }),
      { killed: 0, alive: 0, ignored: 0 },
    );
    const all = readdirSync(path.join(root, "server", folder), { recursive: true });
    const whole = all.filter((name) => name.endsWith(".ts")).length;
    return [`**\`server/${folder}\`, ${own.length} of its ${whole} files**`, sum];
  });
  const row = ([name, { killed, alive, ignored, on = "" }]) => {
    const share = killed + alive === 0 ? "" : `${((100 * killed) / (killed + alive)).toFixed(0)} %`;
    return `| ${name} | ${killed} of ${killed + alive} | ${share} | ${ignored} | ${on} |`;
  };
  return [
    title,
    "Stryker 9.6 with its runner for vitest. What runs only once, as a file is loaded, was left out: most tables, and what rules say whatever the log has. Each change that was not noticed stands in `test/reliability/figures.json`, with its line.",
    samples(figures.samples),
    "### File by file",
    "Every change of these files. A file that is not in the table was not tried as a whole.",
    [
      "| files | noticed | share | left out | run on |",
      "| --- | ---: | ---: | ---: | --- |",
      ...folders.map(row),
      ...files.map(([file, counts]) => row([`\`${file}\``, counts])),
    ].join("\n"),
  ].join("\n\n");
}

/** What was drawn from all files of each folder, the newest draw first. */
function samples(byFolder = {}) {
  const percent = (share) => (100 * share).toFixed(0);
  const rowsOf = ([folder, draw]) => {
    const { on, seed, killed, timedOut, alive, all, ignored, byAllTests, earlier } = draw;
    const drawn = killed + alive;
    const [lower, upper] = wilson(killed, drawn).map(percent);
    const row = `| \`server/${folder}\` | ${seed} | ${drawn.toLocaleString("en")} of ${all.toLocaleString("en")} | ${killed} (${timedOut}) | ${byAllTests ?? "–"} | **${percent(killed / drawn)} %** | ${lower} to ${upper} % | ${ignored.toLocaleString("en")} | ${on} |`;
    return [row, ...(earlier === undefined ? [] : rowsOf([folder, earlier]))];
  };
  return [
    "### A draw from all files",
    "`npm run mutation -- sample FOLDER --seed N --share 0.08`. All changes of a folder would take days. So some were drawn from all of its files, by a hash of the file, the place, the kind of the change and a seed: each change has the same chance. The interval is that of Wilson, at 95 %. In brackets: those that were noticed since a test did not end in time.",
    "Stryker runs for each change the tests that it has seen to reach it. Where something is made once and then kept, only the first to ask is seen to reach what makes it, and where only a slow test reaches it, none. So each change that was not noticed is tried once more, with all tests of the folder and of what `test/reliability/stryker.mjs` names beside, the slow ones too, and the change in place before any file is loaded. What survives that counts as not noticed. The column *then* has those that were noticed only then; where it has a dash the draw is of before, and its share is too low.",
    "Where a folder has several seeds, the tests were written for what the lower rows left, and the uppermost was drawn anew after that.",
    [
      "| folder | seed | drawn | noticed (in time) | then | share | interval | left out | run on |",
      "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |",
      ...Object.entries(byFolder).flatMap(rowsOf),
    ].join("\n"),
  ].join("\n\n");
}
