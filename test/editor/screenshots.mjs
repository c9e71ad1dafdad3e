// `npm run screenshots`: takes the pictures for the documentation in a real VS Code, light and dark, into
// docs/pictures/, and renders the icon from its drawing. Look at each picture before committing it.
//
//   npm run screenshots -- completion     one of them
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { PNG } from "pngjs";
import { installExtension, startServedEditor } from "./served-editor.mjs";
import { root } from "./suite-build.mjs";
import { openBrowser, workbenchAddress } from "./workbench.mjs";

/**
 * The pictures: the file that is shown, at a line and column, what is done then, and what has to be on the page before
 * the picture is taken.
 */
const pictures = [
  {
    name: "complaint",
    at: "roadster/diary/2026-08.cotter:33:40",
    prepare: async (page) => {
      await page.waitForSelector(".monaco-editor .squiggly-info, .monaco-editor .squiggly-warning");
      await runCommand(page, "Show or Focus Hover");
      await see(page.locator(".monaco-hover:visible"), "is over its limit");
    },
  },
  {
    name: "as-it-stands",
    at: "roadster/parts/front.cotter:1:1",
    prepare: async (page) => {
      await runCommand(page, "Vehicle: Focus on As it stands View");
      // The arrow of the row, which opens it without leading away to the line.
      const closed = page.locator('.monaco-list-row[aria-level="1"]:visible .monaco-tl-twistie.collapsed');
      await closed.first().click();
      await page.locator('.monaco-list-row[aria-level="2"]:visible').first().waitFor();
      // What stands above the blocks comes a moment later.
      await see(page.locator(".codelens-decoration"), "on since");
      await page.mouse.move(700, 500);
    },
  },
  {
    name: "build-programme",
    at: "roadster/vehicle.cotter:1:1",
    prepare: async (page) => {
      await runCommand(page, "Cotter: Open Build Programme");
      const drawing = page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
      await drawing.locator("svg.programme .link").first().waitFor();
      // The panel alone: the drawing wants its width.
      await runCommand(page, "View: Close Other Editors in Group").catch(() => undefined);
      await runCommand(page, "View: Toggle Maximize Editor Group");
      await drawing.locator("svg.programme .link").first().waitFor();
    },
  },
  {
    name: "completion",
    at: "roadster/diary/2026-11.cotter:9999:1",
    prepare: async (page) => {
      await page.keyboard.type("  measured: front.left.");
      const offered = page.locator(".suggest-widget.visible .monaco-list-row");
      await offered
        .first()
        .waitFor()
        .catch(() => page.keyboard.press("Control+Space"));
      await offered.first().waitFor();
    },
  },
];

/** By the command palette, as a person does. */
async function runCommand(page, title) {
  await page.keyboard.press("F1");
  const palette = page.locator(".quick-input-widget:visible");
  await palette.waitFor();
  await page.keyboard.type(title);
  await see(palette.locator(".monaco-list-row"), title);
  await page.keyboard.press("Enter");
  await palette.waitFor({ state: "hidden" });
}

/** Waits until one of the elements holds the words. */
async function see(elements, words) {
  await elements.filter({ hasText: words }).first().waitFor();
}

/** Nothing in the picture that is not the subject, and nothing that blinks. */
const calm = {
  "editor.minimap.enabled": false,
  "editor.cursorBlinking": "solid",
  "files.hotExit": "off",
  "window.commandCenter": false,
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the editor's own placeholders.
  "window.title": "${activeEditorShort}",
};

const themes = [
  { name: "light", dark: false, settings: { ...calm, "workbench.colorTheme": "Default Light Modern" } },
  { name: "dark", dark: true, settings: { ...calm, "workbench.colorTheme": "Default Dark Modern" } },
];

/** Pictures by name; none for all. */
const wanted = process.argv.slice(2);
const images = path.join(root, "docs/pictures");
await mkdir(images, { recursive: true });
if (wanted.length === 0) await renderIcon();

const scratch = await mkdtemp(path.join(tmpdir(), "cotter-pictures-"));
const extensionsFolder = path.join(scratch, "extensions");
try {
  // For one picture the package that is there will do.
  if (wanted.length === 0 || !existsSync(path.join(root, "cotter.vsix")))
    execFileSync("npm", ["run", "--silent", "package"], {
      cwd: root,
      stdio: ["ignore", "ignore", "inherit"],
    });
  await installExtension({ packageFile: path.join(root, "cotter.vsix"), extensionsFolder });
  const samples = path.join(scratch, "samples");
  await cp(path.join(root, "samples"), samples, { recursive: true });
  for (const theme of themes) await takePictures(theme, samples);
} finally {
  await rm(scratch, { recursive: true, force: true });
}

async function takePictures({ name: theme, dark, settings }, samples) {
  const editor = await startServedEditor({ folder: path.join(scratch, theme), settings, extensionsFolder });
  const { browser, page } = await openBrowser({ dark, viewport: { width: 1200, height: 720 } });
  try {
    for (const { name, at, prepare } of pictures) {
      if (wanted.length > 0 && !wanted.includes(name)) continue;
      const openFile = path.join(samples, at);
      await page.goto(workbenchAddress(editor.origin, samples, { openFile }));
      await page.waitForSelector(".monaco-editor .view-line");
      // The tree of the vehicle, or its status, is there once the build is read.
      await see(page.locator(".statusbar-item"), "open");
      await prepare(page);
      // What moves, such as a list that opens, comes to rest.
      await page.evaluate(() =>
        Promise.all(document.getAnimations().map(({ finished }) => finished.catch(() => undefined))),
      );
      const picture = path.join(images, `${name}-${theme}.png`);
      await page.screenshot({ path: picture, animations: "disabled", caret: "hide" });
      console.log(path.relative(root, picture));
      await page.keyboard.press("Escape");
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
    const picture = PNG.sync.read(await page.screenshot({ omitBackground: true }));
    // Without a filter few colours weigh least.
    const file = PNG.sync.write(picture, { deflateLevel: 9, deflateStrategy: 0, filterType: 0 });
    await writeFile(path.join(root, "media/icon.png"), file);
  } finally {
    await browser.close();
  }
}
