// How long the extension takes to start in the real editor, as the editor itself tells it (Show Running Extensions), and
// the processor time of what it loads behind that.
import { execFileSync } from "node:child_process";
import { cp, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { installExtension, startServedEditor } from "../editor/served-editor.mjs";
import { openBrowser, workbenchAddress } from "../editor/workbench.mjs";
import { median, p95 } from "./figures.mjs";

/** @param packageFile the packaged extension, made of `dist`; every round is a window of its own on the sample */
export async function measureActivation({ packageFile, dist, samples, rounds }) {
  const scratch = await mkdtemp(path.join(tmpdir(), "cotter-activation-"));
  const extensionsFolder = path.join(scratch, "extensions");
  const folder = path.join(scratch, "samples");
  await installExtension({ packageFile, extensionsFolder });
  await cp(samples, folder, { recursive: true });
  const editor = await startServedEditor({ folder: path.join(scratch, "editor"), extensionsFolder });
  const { browser, page } = await openBrowser();
  const taken = [];
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
  } finally {
    await browser.close();
    await editor.stop();
    await rm(scratch, { recursive: true, force: true });
  }
  return { rounds, median: median(taken), p95: p95(taken), behind: await loadingTime(dist, rounds) };
}

/** Processor time (ms) of the part that the extension loads once it is active. */
async function loadingTime(dist, rounds) {
  const parts = path.join(dist, "parts");
  const name = (await readdir(parts)).find((file) => /^node-client-.*\.cjs$/.test(file));
  const script = fileURLToPath(new URL("load-client.mjs", import.meta.url));
  const load = () => Number(execFileSync(process.execPath, [script, path.join(parts, name)]));
  return median(Array.from({ length: rounds }, load));
}
