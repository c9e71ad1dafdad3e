// Opens the workbench of a served editor in Debian's Chromium (or the one that CHROMIUM names).
import { chromium } from "playwright-core";

/**
 * @param {object} [options]
 * @param {{width: number, height: number}} [options.viewport]
 * @param {boolean} [options.dark] what the system is said to prefer
 * @param {boolean} [options.bypassCSP] whether pages may load from addresses that their policy does not name
 * @param {number} [options.scale] device pixels for each pixel of the page
 */
export async function openBrowser({
  viewport = { width: 1280, height: 800 },
  dark = false,
  scale = 1,
  bypassCSP = false,
} = {}) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  const context = await browser.newContext({
    viewport,
    deviceScaleFactor: scale,
    colorScheme: dark ? "dark" : "light",
    bypassCSP,
    locale: "en-GB",
    permissions: ["clipboard-read", "clipboard-write"],
  });
  return { browser, page: await context.newPage() };
}

/**
 * The address that opens a folder in a served editor.
 * @param {string} origin of the server
 * @param {string} folder absolute
 * @param {object} [extension]
 * @param {string} [extension.developmentPath] the extension to run from its source folder
 * @param {string} [extension.testsPath] the script whose `run` is called in the extension host
 * @param {string} [extension.openFile] the file to show, absolute; `:LINE` may follow
 */
export function workbenchAddress(origin, folder, { developmentPath, testsPath, openFile } = {}) {
  const remote = (file) => `vscode-remote://${new URL(origin).host}${file}`;
  const payload = [["skipWelcome", "true"]];
  if (developmentPath !== undefined) payload.push(["extensionDevelopmentPath", remote(developmentPath)]);
  if (testsPath !== undefined) payload.push(["extensionTestsPath", remote(testsPath)]);
  if (openFile !== undefined) payload.push(["gotoLineMode", "true"], ["openFile", remote(openFile)]);
  return `${origin}/?${new URLSearchParams({ folder, payload: JSON.stringify(payload) })}`;
}
