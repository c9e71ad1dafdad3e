// How long the extension takes to start in the real editor, as the editor itself tells it (Show Running Extensions), beside
// an empty one that starts at the same moment, and the processor time of what it loads behind that. All extensions start
// in one thread, and the editor counts how long one waits for the others: what the empty one takes is that.
import { execFileSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { createVSIX } from "@vscode/vsce";
import { installExtension, startServedEditor } from "../editor/served-editor.mjs";
import { openBrowser, workbenchAddress } from "../editor/workbench.mjs";
import { median, p95 } from "./figures.mjs";

/** @param packageFile the packaged extension, made of `dist`; every round is a window of its own on the sample */
export async function measureActivation({ packageFile, dist, samples, rounds }) {
  const scratch = await mkdtemp(path.join(tmpdir(), "cotter-activation-"));
  const extensionsFolder = path.join(scratch, "extensions");
  const folder = path.join(scratch, "samples");
  await installExtension({ packageFile, extensionsFolder });
  await installExtension({ packageFile: await packEmpty(path.join(scratch, "empty")), extensionsFolder });
  await cp(samples, folder, { recursive: true });
  const editor = await startServedEditor({ folder: path.join(scratch, "editor"), extensionsFolder });
  const { browser, page } = await openBrowser();
  // Tall enough for the whole list: rows that are out of sight are not there.
  await page.setViewportSize({ width: 1400, height: 2400 });
  const taken = { cotter: [], empty: [] };
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
      const rows = page.locator(".runtime-extensions-editor .extension");
      for (const [name, times] of Object.entries(taken)) {
        const row = rows.filter({ has: page.locator(".name", { hasText: new RegExp(`^${name}$`, "i") }) });
        const told = await row.first().locator(".activation-time").textContent();
        times.push(Number(/(\d+) ?ms/.exec(told ?? "")?.[1]));
      }
    }
  } finally {
    await browser.close();
    await editor.stop();
    await rm(scratch, { recursive: true, force: true });
  }
  return {
    rounds,
    median: median(taken.cotter),
    p95: p95(taken.cotter),
    empty: median(taken.empty),
    behind: await loadingTime(dist, rounds),
  };
}

/** An extension that does nothing, for the same moments as ours. */
async function packEmpty(folder) {
  const { activationEvents, engines } = JSON.parse(
    await readFile(new URL("../../package.json", import.meta.url), "utf8"),
  );
  const manifest = {
    name: "empty",
    publisher: "bench",
    version: "0.0.1",
    engines: { vscode: engines.vscode },
    main: "./main.cjs",
    activationEvents: [...activationEvents, "onLanguage:cotter"],
  };
  await mkdir(folder);
  await writeFile(path.join(folder, "package.json"), JSON.stringify(manifest));
  await writeFile(path.join(folder, "main.cjs"), "exports.activate = () => undefined;\n");
  const packagePath = `${folder}.vsix`;
  await createVSIX({
    cwd: folder,
    packagePath,
    dependencies: false,
    allowMissingRepository: true,
    skipLicense: true,
  });
  return packagePath;
}

/** Processor time (ms) of the part that the extension loads once it is active. */
async function loadingTime(dist, rounds) {
  const parts = path.join(dist, "parts");
  const name = (await readdir(parts)).find((file) => /^node-client-.*\.cjs$/.test(file));
  const script = fileURLToPath(new URL("load-client.mjs", import.meta.url));
  const load = () => Number(execFileSync(process.execPath, [script, path.join(parts, name)]));
  return median(Array.from({ length: rounds }, load));
}
