/** When a client is told that its views may be out of date. */

import { describe, expect, test } from "vitest";
import type { ClientCapabilities } from "vscode-languageserver";
import { tellOfChanges } from "../../server/language-server/build-changed.ts";
import type { Session } from "../../server/language-server/session.ts";

/** A session with a clock that is set by hand. */
function listening(client: ClientCapabilities) {
  const sent: number[] = [];
  const onChanged = new Set<(by: "typing" | "others") => void>();
  let now = 0;
  let due: { readonly at: number; readonly run: () => void } | undefined;
  const later = (wait: number, run: () => void) => {
    due = { at: now + wait, run };
    return () => {
      due = undefined;
    };
  };
  const sendNotification = () => {
    sent.push(now);
    return Promise.resolve();
  };
  const session = { client, onChanged, host: { now: () => now, later }, connection: { sendNotification } };
  tellOfChanges(session as unknown as Session);
  const passTo = (time: number) => {
    if (due !== undefined && due.at <= time) {
      const { at, run } = due;
      [now, due] = [at, undefined];
      run();
    }
    now = time;
  };
  return {
    sent,
    changeAt: (time: number) => {
      passTo(time);
      for (const listener of onChanged) listener("typing");
    },
    passTo,
  };
}

const ASKS: ClientCapabilities = { experimental: { cotter: { buildChanged: true } } };

describe("a client that asks for it is told", () => {
  test("once things have been quiet for a moment", () => {
    const { sent, changeAt, passTo } = listening(ASKS);
    for (const time of [0, 100, 200]) changeAt(time);
    passTo(10_000);
    expect(sent).toEqual([500]);
  });

  test("now and then while one types without a pause", () => {
    const { sent, changeAt, passTo } = listening(ASKS);
    for (let time = 0; time <= 4000; time += 100) changeAt(time);
    passTo(10_000);
    expect(sent).toEqual([1500, 3000, 4300]);
  });
});

test.each<ClientCapabilities>([
  {},
  { experimental: {} },
  { experimental: { cotter: { buildChanged: "yes" } } },
])("a client that does not is not: %j", (client) => {
  const { sent, changeAt, passTo } = listening(client);
  changeAt(0);
  passTo(10_000);
  expect(sent).toEqual([]);
});
