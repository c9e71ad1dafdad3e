// `npm run screenshots`: takes the pictures for the documentation in a real VS Code, light and dark, into
// docs/images/, and renders the icon from its drawing. Look at each picture before committing it.
import { execFileSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { installExtension, startServedEditor } from "./served-editor.mjs";
import { root } from "./suite-build.mjs";
import { openBrowser, workbenchAddress } from "./workbench.mjs";

/** The pictures: the file that is shown (`:LINE` may follow), and what has to be on the page before it is taken. */
const pictures = [
  {
    name: "diary",
    file: "roadster/vehicle.cotter",
    shows: ".monaco-editor .squiggly-error, .monaco-editor .squiggly-warning",
  },
];

const themes = [
  { name: "light", dark: false, settings: { "workbench.colorTheme": "Default Light Modern" } },
  { name: "dark", dark: true, settings: { "workbench.colorTheme": "Default Dark Modern" } },
];

const images = path.join(root, "docs/images");
await mkdir(images, { recursive: true });
await renderIcon();

const scratch = await mkdtemp(path.join(tmpdir(), "cotter-pictures-"));
const extensionsFolder = path.join(scratch, "extensions");
try {
  execFileSync("npm", ["run", "--silent", "package"], { cwd: root, stdio: ["ignore", "ignore", "inherit"] });
  await installExtension({ packageFile: path.join(root, "cotter.vsix"), extensionsFolder });
  const samples = path.join(scratch, "samples");
  await cp(path.join(root, "samples"), samples, { recursive: true });
  for (const theme of themes) await takePictures(theme, samples);
} finally {
  await rm(scratch, { recursive: true, force: true });
}

async function takePictures({ name: theme, dark, settings }, samples) {
  const editor = await startServedEditor({ folder: path.join(scratch, theme), settings, extensionsFolder });
  const { browser, page } = await openBrowser({ dark, scale: 2, viewport: { width: 1200, height: 750 } });
  try {
    for (const { name, file, shows } of pictures) {
      const openFile = path.join(samples, file);
      await page.goto(workbenchAddress(editor.origin, samples, { openFile }));
      await page.waitForSelector(shows, { timeout: 60_000 });
      // The status bar and the file tree follow a moment later.
      await page.waitForTimeout(2_000);
      const picture = path.join(images, `${name}-${theme}.png`);
      await page.screenshot({ path: picture });
      console.log(path.relative(root, picture));
    }
  } finally {
    await browser.close();
    await editor.stop();
  }
}

async function renderIcon() {
  const { browser, page } = await openBrowser({ viewport: { width: 256, height: 256 } });
  try {
    const drawing = await readFile(path.join(root, "media/icon.svg"), "utf8");
    await page.setContent(`<style>body { margin: 0 }</style>${drawing}`);
    await page.screenshot({ path: path.join(root, "media/icon.png"), omitBackground: true });
  } finally {
    await browser.close();
  }
}
