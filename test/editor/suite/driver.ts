/** The driver of a served editor (driver.mjs): keys and eyes outside the extension host. A desktop VS Code has none. */
const address = process.env.EDITOR_DRIVER;

export interface Judged {
  readonly title: string;
  /** How many of axe's rules were checked and kept. */
  readonly passes: number;
  readonly violations: readonly string[];
}

/** To be called first in a test that needs the driver: without one the test is skipped. */
export function needsDriver(test: Mocha.Context): void {
  // biome-ignore lint/suspicious/noSkippedTests: on a desktop nobody presses the keys; the report says what was skipped.
  if (address === undefined) test.skip();
}

export async function type(words: string): Promise<void> {
  await ask("/type", { words });
}

/** @param key a key by its name in the DOM, such as `Enter` */
export async function press(key: string): Promise<void> {
  await ask("/press", { key });
}

/** Resolves once the words are on the screen, in the workbench or in a webview. */
export async function see(words: string): Promise<void> {
  await ask("/see", { words });
}

/** Resolves once the words are nowhere on the screen. */
export async function gone(words: string): Promise<void> {
  await ask("/gone", { words });
}

/** Clicks the first link to a line of a log in the webview that is seen. */
export async function followFirstLink(): Promise<void> {
  await ask("/follow", {});
}

/** What axe says of each webview that is seen. */
export async function judgeWebviews(): Promise<readonly Judged[]> {
  return (await ask("/axe", {})) as readonly Judged[];
}

async function ask(deed: string, params: object): Promise<unknown> {
  const response = await fetch(`${address}${deed}`, { method: "POST", body: JSON.stringify(params) });
  const answer = await response.text();
  if (!response.ok) throw new Error(answer);
  return JSON.parse(answer);
}
