/** What the tests use of Node's `assert/strict`, where there is no Node. Values are compared as JSON. */

function fail(message: unknown, words: string): never {
  throw message instanceof Error
    ? message
    : new Error(message === undefined ? words : `${message}: ${words}`);
}

function shown(value: unknown): string {
  return JSON.stringify(value, undefined, 2) ?? String(value);
}

const assert = {
  ok(value: unknown, message?: unknown): void {
    if (!value) fail(message, `${shown(value)} is not true`);
  },
  equal(found: unknown, expected: unknown, message?: unknown): void {
    if (!Object.is(found, expected)) fail(message, `${shown(found)} is not ${shown(expected)}`);
  },
  deepEqual(found: unknown, expected: unknown, message?: unknown): void {
    if (shown(found) !== shown(expected)) fail(message, `${shown(found)} is not ${shown(expected)}`);
  },
  match(found: string, pattern: RegExp, message?: unknown): void {
    if (!pattern.test(found)) fail(message, `${shown(found)} does not match ${pattern}`);
  },
  doesNotMatch(found: string, pattern: RegExp, message?: unknown): void {
    if (pattern.test(found)) fail(message, `${shown(found)} matches ${pattern}`);
  },
};

// biome-ignore lint/style/noDefaultExport: Node's module is imported by this name.
export default assert;
