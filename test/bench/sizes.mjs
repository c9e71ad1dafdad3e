// Sizes of what is shipped (KB).
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

export function measureSizes(dist, vsix) {
  const kilobytes = (file) => statSync(file).size / 1024;
  const sum = (files) => [...files].reduce((all, file) => all + kilobytes(file), 0);
  const [server, client] = ["server.cjs", "client.cjs"].map((name) => path.join(dist, name));
  return [
    { name: "the server as it starts, all its parts", size: sum(reachable(server, false)) },
    { name: "the same with what it loads late", size: sum(reachable(server, true)) },
    { name: "the client in the editor, with what it loads late", size: sum(reachable(client, true)) },
    { name: "the server for an editor in a browser", size: kilobytes(path.join(dist, "browser/server.js")) },
    { name: "the package, cotter.vsix", size: existsSync(vsix) ? kilobytes(vsix) : undefined },
  ];
}

/** A file and all that it requires; what is required within a promise is loaded late. */
function reachable(file, withLate, known = new Set()) {
  if (known.has(file)) return known;
  known.add(file);
  const code = readFileSync(file, "utf8");
  for (const { 1: late, 2: part } of code.matchAll(
    /(then\(\(\)\s*=>[^;]{0,40}?)?\brequire\(\s*["'](\.[^"']+)["']\s*\)/g,
  ))
    if (withLate || late === undefined) reachable(path.join(path.dirname(file), part), withLate, known);
  return known;
}
