/** Mocha where there is no Node: its file for browsers leaves everything in a global. */
import "../../../../node_modules/mocha/mocha.js";

const { Mocha } = globalThis as unknown as { Mocha: typeof import("mocha") };

export const suite: Mocha.SuiteFunction = Mocha.suite;
export const test: Mocha.TestFunction = Mocha.test;

// biome-ignore lint/style/noDefaultExport: the package is imported by this name.
export default Mocha;
