// How long the extension takes to start in the real editor, as the editor itself tells it (Show Running Extensions), and
// until all of it is loaded, as its own log tells it.
import { cp, mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { installExtension, startServedEditor } from "../editor/served-editor.mjs";
import { openBrowser, workbenchAddress } from "../editor/workbench.mjs";
import { median, p95 } from "./figures.mjs";

/** @param packageFile the packaged extension; every round is a window of its own on the sample */
export async function measureActivation({ packageFile, samples, rounds }) {
  const scratch = await mkdtemp(path.join(tmpdir(), "cotter-activation-"));
  const extensionsFolder = path.join(scratch, "extensions");
  const folder = path.join(scratch, "samples");
  await installExtension({ packageFile, extensionsFolder });
  await cp(samples, folder, { recursive: true });
  const editor = await startServedEditor({ folder: path.join(scratch, "editor"), extensionsFolder });
  const { browser, page } = await openBrowser();
  const taken = [];
  let loaded = [];
  try {
    for (let round = 0; round < rounds; round++) {
      const openFile = path.join(folder, "vehicle.cotter");
      await page.goto(workbenchAddress(editor.origin, folder, { openFile }));
      await page.locator(".statusbar-item").filter({ hasText: " open" }).first().waitFor();
      await page.keyboard.press("F1");
      await page.locator(".quick-input-widget:visible").waitFor();
      await page.keyboard.type("Developer: Show Running Extensions");
      await page
        .locator(".quick-input-widget .monaco-list-row")
        .filter({ hasText: "Show Running" })
        .first()
        .waitFor();
      await page.keyboard.press("Enter");
      const row = page.locator(".runtime-extensions-editor .extension").filter({ hasText: /cotter/i });
      const told = await row.first().locator(".activation-time").textContent();
      taken.push(Number(/(\d+) ?ms/.exec(told ?? "")?.[1]));
    }
    loaded = await loadingTimes(path.join(scratch, "editor"));
  } finally {
    await browser.close();
    await editor.stop();
    await rm(scratch, { recursive: true, force: true });
  }
  return { rounds, median: median(taken), p95: p95(taken), loaded: median(loaded) };
}

/** From the call of the extension until all of it is loaded (ms), from the logs that it has written in the editor's folder. */
async function loadingTimes(folder) {
  const files = await readdir(folder, { recursive: true });
  const logs = files.filter((file) => /logs.*Cotter\.log$/.test(file));
  const texts = await Promise.all(logs.map((file) => readFile(path.join(folder, file), "utf8")));
  return texts.flatMap((text) =>
    [...text.matchAll(/loaded (\d+) ms after the extension was called/g)].map(([, time]) => Number(time)),
  );
}
