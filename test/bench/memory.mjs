// What the server holds: on a long log, and over many edits.
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { heapContent } from "./heap-content.mjs";
import { cotterSubject, LOG_PLACES, LogFolder } from "./subjects.mjs";

const PROBED = ["--expose-gc", "--import", fileURLToPath(new URL("heap-probe.mjs", import.meta.url))];

export async function measureMemory({ program, generateLog, lines, edits, editedLines }) {
  const long = new LogFolder(generateLog({ lines, broken: 0.05 }));
  const plain = await cotterSubject(program, long, LOG_PLACES[0]);
  for (let key = 0; key < 10; key++) await plain.key();
  const resident = plain.client.memory();
  await plain.client.stop();
  const probed = await cotterSubject(program, long, LOG_PLACES[0], PROBED);
  for (let key = 0; key < 10; key++) await probed.key();
  const held = await heapOf(probed);
  await probed.client.stop();
  long.remove();
  return { lines, resident, held, ...(await measureGrowth({ program, generateLog, edits, editedLines })) };
}

/** What the server holds after each tenth of the edits, at the three places in turn. */
async function measureGrowth({ program, generateLog, edits, editedLines }) {
  const folder = new LogFolder(generateLog({ lines: editedLines, broken: 0.05 }));
  const growth = [];
  for (const place of LOG_PLACES) {
    const subject = await cotterSubject(program, folder, place, PROBED);
    const each = Math.ceil(edits / LOG_PLACES.length / 10);
    const heaps = [];
    const contents = [];
    for (let tenth = 0; tenth <= 10; tenth++) {
      // The first keys fill what is kept on purpose.
      for (let key = 0; key < (tenth === 0 ? 100 : each); key++) await subject.key();
      heaps.push(await heapOf(subject));
      if (tenth % 10 === 0) contents.push(await contentOf(subject));
    }
    await subject.client.stop();
    growth.push({ place, heaps, contents });
  }
  folder.remove();
  return { edits, editedLines, growth };
}

/** What the server holds after a collection, in MB. */
async function heapOf({ client }) {
  return Number(await told(client, "SIGUSR2", /heap (\d+)\n/)) / 1024 ** 2;
}

/** The same by what it is. */
async function contentOf({ client }) {
  const file = await told(client, "SIGURG", /snapshot (.+)\n/);
  const content = heapContent(file);
  rmSync(file);
  return content;
}

/** What the probe answers to a signal. */
function told(client, signal, answer) {
  return new Promise((resolve) => {
    let heard = "";
    const hear = (text) => {
      heard += text;
      const found = answer.exec(heard)?.[1];
      if (found === undefined) return;
      client.process.stderr.off("data", hear);
      resolve(found);
    };
    client.process.stderr.on("data", hear);
    client.process.kill(signal);
  });
}
