// Prints the processor time (ms) that loading the client's late part takes, with something in the editor's place that is
// everything that is asked of it.
//
//   node load-client.mjs PART
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const Module = require("node:module");
const anything = new Proxy(class {}, {
  get: (target, key) => (key === "prototype" ? target.prototype : anything),
  apply: () => anything,
});
const { _load: load } = Module;
Module._load = (name, ...others) => (name === "vscode" ? anything : load(name, ...others));

const before = process.cpuUsage();
require(process.argv[2]);
const { user, system } = process.cpuUsage(before);
console.log((user + system) / 1000);
