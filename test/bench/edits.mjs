// From a key to the diagnostics that follow it, at each length of log, the servers in turn.
import { inTurn, median, p95 } from "./figures.mjs";
import { cotterSubject, emptySubject, LOG_PLACES, LogFolder, peerSubjects } from "./subjects.mjs";

/** A server that has taken longer than this (ms) at one length is left out of the rounds to come. */
const ENOUGH = 10_000;
/** So many keys are measured all the same. */
const FEWEST = 12;

/** @returns for each length: rows of a server with its figures (ms), and the peers that failed */
export async function measureEdits({ program, generateLog, modules, lengths, rounds, keys }) {
  const sizes = [];
  for (const lines of lengths) {
    const folder = new LogFolder(generateLog({ lines, broken: 0.05 }));
    const subjects = [await emptySubject(folder, LOG_PLACES[0])];
    for (const place of LOG_PLACES) subjects.push(await cotterSubject(program, folder, place));
    const peers =
      modules === undefined || lines > 20_000
        ? { subjects: [], failed: [] }
        : await peerSubjects(modules, lines, folder);
    subjects.push(...peers.subjects);
    const taken = new Map(subjects.map((subject) => [subject, []]));
    for (const subject of subjects) await warmUp(subject, 25 * keys);
    await inTurn(rounds, subjects, async (subject) => {
      const known = taken.get(subject);
      const spent = known.reduce((sum, { wall }) => sum + wall, 0);
      if (spent > ENOUGH && known.length >= FEWEST) return;
      for (let key = 0; key < keys; key++) known.push(await subject.key());
    });
    for (const subject of subjects) await subject.client.stop();
    folder.remove();
    const rows = [...taken].map(([{ name }, all]) => {
      const walls = all.map(({ wall }) => wall);
      const spent = all.map(({ processor }) => processor);
      return {
        name,
        keys: all.length,
        median: median(walls),
        p95: p95(walls),
        processor: median(spent),
        processorP95: p95(spent),
      };
    });
    sizes.push({ lines, rows, failed: peers.failed });
  }
  return sizes;
}

/** Keys that are not counted, until the code has been compiled. */
async function warmUp(subject, keys) {
  const began = performance.now();
  for (let key = 0; key < keys && performance.now() - began < ENOUGH / 4; key++) await subject.key();
}
