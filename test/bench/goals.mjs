// What was aimed at, and what came of it.
import { inFigures, milliseconds } from "./figures.mjs";

const END = "Cotter, end of the diary";
const PEER_NAMES = /server$/;

/** @returns each goal in words, the figure, and whether it is reached; undefined where it was not measured */
export function goalsOf(results) {
  const { edits, requests, reading, start, memory, activation, sizes } = Object.fromEntries(
    Object.entries(results).map(([name, { measured }]) => [name, measured]),
  );
  return [
    ...(edits === undefined ? [] : editGoals(edits)),
    ...(requests === undefined ? [] : requestGoals(requests)),
    ...(reading === undefined ? [] : readingGoals(reading)),
    ...(start === undefined ? [] : startGoals(start)),
    ...(memory === undefined ? [] : memoryGoals(memory)),
    ...(sizes === undefined ? [] : sizeGoals(sizes)),
    ...(activation === undefined ? [] : activationGoals(activation)),
  ];
}

function editGoals(edits) {
  const at = (lines) => edits.find((size) => size.lines === lines)?.rows ?? [];
  const row = (lines, name) => at(lines).find((one) => one.name === name);
  const goals = [];
  const [short, floor] = [row(1000, END), row(1000, "empty server")];
  if (short !== undefined && floor !== undefined) {
    const ratio = short.median / floor.median;
    goals.push({
      goal: "from a key to the diagnostics at 1,000 lines within 8 times the empty server",
      figure: `${inFigures(ratio)} times (${milliseconds(short.median)} against ${milliseconds(floor.median)})`,
      reached: ratio <= 8,
    });
  }
  const middle = row(20_000, END);
  if (middle !== undefined) {
    goals.push({
      goal: "the same at 20,000 lines within 16 ms in 95 of 100",
      figure: `${milliseconds(middle.p95)} (median ${milliseconds(middle.median)})`,
      reached: middle.p95 <= 16,
    });
    const peers = at(20_000).filter(({ name }) => PEER_NAMES.test(name) && name !== "empty server");
    const nearest = peers.sort((a, b) => a.processor - b.processor)[0];
    if (nearest !== undefined) {
      const ratio = nearest.processor / middle.processor;
      goals.push({
        goal: "10 times faster than the nearest peer at 20,000 lines, by processor time",
        figure: `${inFigures(ratio)} times (${nearest.name}: ${milliseconds(nearest.processor)})`,
        reached: ratio >= 10,
      });
    }
  }
  const long = row(100_000, END);
  if (short !== undefined && long !== undefined) {
    const ratio = long.processor / short.processor;
    goals.push({
      goal: "the cost of an edit grows less than 3 times from 1,000 to 100,000 lines",
      figure: `${inFigures(ratio)} times, by processor time`,
      reached: ratio < 3,
    });
  }
  return goals;
}

function requestGoals({ rows, lines }) {
  return ["hover", "completion"].map((name) => {
    const { p95 } = rows.find((row) => row.name === name);
    return {
      goal: `${name} at ${lines.toLocaleString("en")} lines within 5 ms in 95 of 100`,
      figure: milliseconds(p95),
      reached: p95 <= 5,
    };
  });
}

function readingGoals({ rows: [scanner, cotter], lines }) {
  const ratio = cotter.median / scanner.median;
  return [
    {
      goal: `lines, words and tree of ${lines.toLocaleString("en")} lines within 20 times the scanner`,
      figure: `${inFigures(ratio)} times (${milliseconds(cotter.median)} against ${milliseconds(scanner.median)})`,
      reached: ratio <= 20,
    },
  ];
}

function startGoals([bare, help, check, formatLong, checkLong]) {
  const times = (row, most) => ({
    goal: `${row.name} within ${most} times bare Node`,
    figure: `${inFigures(row.processor / bare.processor)} times by processor time (${milliseconds(row.processor)} against ${milliseconds(bare.processor)}), ${inFigures(row.median / bare.median)} times on the clock`,
    reached: row.processor / bare.processor <= most,
  });
  const within2s = ({ name, median, processor }, what) => ({
    goal: `${what} under 2 s: ${name}`,
    figure: `${milliseconds(median)} on the clock, ${milliseconds(processor)} of processor time`,
    reached: median < 2000,
  });
  return [
    times(help, 1.6),
    times(check, 2.5),
    within2s(formatLong, "reading from the command line"),
    within2s(checkLong, "the whole check"),
  ];
}

function memoryGoals({ resident, held, lines, growth, edits }) {
  const most = (kind) => Math.max(...growth.map(({ contents: [first, last] }) => last[kind] - first[kind]));
  const signed = (size) => `${size < 0 ? "−" : "+"}${Math.abs(size).toFixed(2)} MB`;
  return [
    {
      goal: `the server at ${lines.toLocaleString("en")} lines under 250 MB`,
      figure: `${inFigures(resident)} MB of the machine's memory, ${inFigures(held)} MB held after a collection`,
      reached: resident < 250,
    },
    {
      goal: `no growth over ${edits.toLocaleString("en")} edits`,
      figure: `${signed(most("objects"))} of what the server has made, at the most; code that the engine compiles ${signed(most("code"))}, room in its weak tables ${signed(most("tables"))}`,
      reached: most("objects") < 0.25,
    },
  ];
}

function activationGoals({ median, empty, behind }) {
  const beside = `an empty extension beside it ${milliseconds(empty)}`;
  const figure = `${milliseconds(median)}, ${beside}; what it loads behind that takes ${milliseconds(behind)} of processor time`;
  return [{ goal: "the extension starts within 50 ms", figure, reached: median <= 50 }];
}

function sizeGoals(sizes) {
  const [generated, sample] = sizes.map(({ size }) => size);
  const vsix = sizes.at(-1);
  return [
    {
      goal: "the server under 700 KB",
      figure: `${generated.toFixed(0)} KB on a generated log, ${sample.toFixed(0)} KB on a sample with every word`,
      reached: Math.max(generated, sample) < 700,
    },
    {
      goal: "the package under 1 MB",
      figure: vsix.size === undefined ? "not packaged" : `${vsix.size.toFixed(0)} KB`,
      reached: vsix.size === undefined ? undefined : vsix.size < 1024,
    },
  ];
}
