// What a suite cannot do or see from inside the editor's extension host, done and seen from outside, in the page: keys,
// words on the screen, and the accessibility of webviews. A small server on this machine's own address, for one run.
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { text } from "node:stream/consumers";
import { setTimeout as sleep } from "node:timers/promises";
import { installAxe } from "./install.mjs";

/** How long words may take to appear, in ms. */
const patience = 20_000;

/**
 * @param {import("playwright-core").Page} page
 * @returns {Promise<{address: string, stop: () => void}>}
 */
export async function startDriver(page) {
  const deeds = {
    "/type": ({ words }) => page.keyboard.type(words),
    "/press": ({ key }) => page.keyboard.press(key),
    "/see": ({ words }) => see(page, words),
    "/gone": ({ words }) => gone(page, words),
    "/follow": () => followFirstLink(page),
    "/axe": () => axe(page),
  };
  const server = createServer(async (request, response) => {
    try {
      const deed = deeds[request.url];
      if (deed === undefined) throw new Error(`There is no deed ${request.url}.`);
      const result = await deed(JSON.parse(await text(request)));
      response.end(JSON.stringify(result ?? null));
    } catch (error) {
      response.writeHead(500).end(error.message);
    }
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  return {
    address: `http://127.0.0.1:${server.address().port}`,
    stop: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Waits until words are on the screen, in the workbench or in a webview. */
async function see(page, words) {
  const alarm = AbortSignal.timeout(patience);
  while (!alarm.aborted) {
    if (await isShown(page, words)) return;
    await sleep(100);
  }
  throw new Error(`“${words}” is nowhere on the screen.`);
}

/** Waits until they are not. */
async function gone(page, words) {
  const alarm = AbortSignal.timeout(patience);
  while (!alarm.aborted) {
    if (!(await isShown(page, words))) return;
    await sleep(100);
  }
  throw new Error(`“${words}” is still on the screen.`);
}

async function isShown(page, words) {
  const wanted = words.replace(/\s+/g, " ");
  for (const frame of page.frames()) {
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not seen.
    const shown = await frame.evaluate(() => document.body?.innerText ?? "").catch(() => "");
    if (shown.replace(/\s+/g, " ").includes(wanted)) return true;
  }
  return false;
}

/** The frames that hold what webviews show. */
async function webviews(page) {
  const found = [];
  for (const frame of page.frames()) {
    const isWebview = await frame
      .evaluate(() => document.querySelector("main#report") !== null)
      .catch(() => false);
    if (isWebview && (await (await frame.frameElement()).isVisible())) found.push(frame);
  }
  return found;
}

async function followFirstLink(page) {
  const alarm = AbortSignal.timeout(patience);
  while (!alarm.aborted) {
    for (const frame of await webviews(page)) {
      const link = frame.locator("[data-spot]").first();
      if ((await link.count()) > 0) return await link.click();
    }
    await sleep(100);
  }
  throw new Error("No webview has a link to a line.");
}

/** What axe finds wrong in each webview that is seen, in short. */
async function axe(page) {
  const script = await readFile(await installAxe(), "utf8");
  const found = [];
  for (const frame of await webviews(page)) {
    await frame.evaluate(script);
    const { violations, passes } = await frame.evaluate(() => globalThis.axe.run(document));
    found.push({
      title: await frame.title(),
      passes: passes.length,
      violations: violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html ?? ""})`),
    });
  }
  return found;
}
