// Offers the extension to an editor that runs it in workers of the browser, as a site for editors in the browser does:
// its files come over HTTP, and the page of the editor names their address.

import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import path from "node:path";

const types = { ".js": "text/javascript", ".json": "application/json", ".svg": "image/svg+xml" };

/**
 * Serves the files of a folder on this machine's own address, to pages of any origin.
 * @param {string} folder
 * @returns {Promise<{authority: string, stop: () => Promise<void>}>}
 */
export async function serveFolder(folder) {
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url, "http://127.0.0.1");
    const file = path.join(folder, path.posix.normalize(decodeURIComponent(pathname)));
    const content = await readFile(file).catch(() => undefined);
    response.writeHead(content === undefined ? 404 : 200, {
      "Access-Control-Allow-Origin": "*",
      "Access-Control-Allow-Headers": "*",
      "Content-Type": types[path.extname(file)] ?? "application/octet-stream",
    });
    response.end(content);
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    authority: `127.0.0.1:${server.address().port}`,
    stop: () =>
      new Promise((resolve) => {
        server.close(resolve);
        server.closeAllConnections();
      }),
  };
}

/**
 * Has the page of a served editor develop an extension that comes over HTTP.
 * @param {import("playwright-core").Page} page
 * @param {object} extension
 * @param {string} extension.authority of the server of its files
 * @param {string} extension.testsPath below the served folder
 */
export async function developInBrowser(page, { authority, testsPath }) {
  const uri = (file) => ({ scheme: "http", authority, path: file });
  const developmentOptions = { extensions: [uri("/")], extensionTestsPath: uri(testsPath) };
  // The page carries its options in an element, which is read once the page is complete.
  await page.addInitScript((added) => {
    const observer = new MutationObserver(() => {
      const element = document.getElementById("vscode-workbench-web-configuration");
      if (element === null) return;
      observer.disconnect();
      const options = { ...JSON.parse(element.dataset.settings), developmentOptions: added };
      element.dataset.settings = JSON.stringify(options);
    });
    observer.observe(document, { childList: true, subtree: true });
  }, developmentOptions);
}
