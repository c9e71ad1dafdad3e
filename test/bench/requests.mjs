// Hover and completion in a long log: at rest, and right after a key.
import { median, p95 } from "./figures.mjs";
import { cotterSubject, emptySubject, LogFolder } from "./subjects.mjs";

export async function measureRequests({ program, generateLog, lines, rounds }) {
  const folder = new LogFolder(generateLog({ lines, broken: 0.05 }));
  const end = "end of the diary";
  const [cotter, empty] = [await cotterSubject(program, folder, end), await emptySubject(folder, end)];
  const { text } = folder.files.at(-1);
  const places = hoverPlaces(text);
  const series = new Map();
  const measure = async (name, asks) => {
    const began = performance.now();
    await asks();
    const all = series.get(name) ?? [];
    series.set(name, all);
    all.push(performance.now() - began);
  };
  const at = (subject, position) => ({ textDocument: { uri: subject.uri }, position });
  for (let round = -5; round < rounds; round++) {
    if (round === 0) series.clear();
    const position = places[(Math.abs(round) * 37) % places.length];
    await measure("hover, empty server", () => empty.client.ask("textDocument/hover", at(empty, position)));
    await measure("hover", () => cotter.client.ask("textDocument/hover", at(cotter, position)));
    await measure("completion", () => cotter.client.ask("textDocument/completion", at(cotter, position)));
    cotter.type();
    await measure("completion right after a key", () =>
      cotter.client.ask("textDocument/completion", at(cotter, cotter.typist.cursor)),
    );
    await cotter.diagnostics();
  }
  await cotter.client.stop();
  await empty.client.stop();
  folder.remove();
  const rows = [...series].map(([name, all]) => ({ name, median: median(all), p95: p95(all) }));
  return { lines, requests: rounds, rows };
}

/** Places in the names of parts, all over a text. */
function hoverPlaces(text) {
  return text.split("\n").flatMap((content, line) => {
    const found = /axle\d+\.(left|right)\.?\w*/.exec(content);
    return found === null ? [] : [{ line, character: found.index + 5 }];
  });
}
