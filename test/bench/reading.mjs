// Reading a long log into its tree, against a pass that only splits lines into words.
import { inTurn, median, p95 } from "./figures.mjs";
import { scan } from "./scanner.mjs";

export async function measureReading({ generateLog, Document, lines, rounds }) {
  const texts = generateLog({ lines, broken: 0.05 }).map(({ text }) => text);
  const jobs = [
    { name: "the scanner: lines and words", run: (text) => scan(text).lines },
    { name: "Cotter: lines, words and tree", run: (text) => Document.read(text).lineCount },
  ];
  const taken = new Map(jobs.map((job) => [job, []]));
  await inTurn(rounds + 1, jobs, (job, round) => {
    const began = process.cpuUsage();
    let count = 0;
    for (const text of texts) count += job.run(text);
    const { user, system } = process.cpuUsage(began);
    if (count < lines / 2) throw new Error(`${job.name} has read ${count} lines only`);
    if (round > 0) taken.get(job).push((user + system) / 1000);
  });
  const rows = [...taken].map(([{ name }, all]) => ({ name, median: median(all), p95: p95(all) }));
  return { lines, rounds, rows };
}
