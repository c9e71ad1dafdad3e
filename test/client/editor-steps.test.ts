/** Steps of the client that depend on what happens meanwhile, tried with a fake seen. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import { restartServer } from "../../client/commands/restart-server.ts";
import { ReportPanels } from "../../client/panels/report-panels.ts";
import { takePhotos } from "../../client/photos/drop-photo.ts";
import { ShownBuild } from "../../client/shown-build.ts";
import { toOrder } from "../../client/views/to-order.ts";
import type { SupplierEntry } from "../../server/language-server/protocol.ts";
import type { WorkspaceEdit } from "./editor-stand-in.ts";
import { EventEmitter, forgetAll, seen, Uri } from "./editor-stand-in.ts";
import { Client, State } from "./server-stand-in.ts";

vi.mock("vscode", async () => await import("./editor-stand-in.ts"));
vi.mock("vscode-languageclient", async () => await import("./server-stand-in.ts"));

beforeEach(forgetAll);

/** What stands in for something of the editor's or the library's own. */
const as = <T>(fake: unknown) => fake as T;

describe("a picture that is dropped into a day", () => {
  const lines = ["day 2026-05-02", "  All dry."];
  const document = {
    uri: Uri.parse("file:///garage/otter/build.cotter"),
    lineCount: lines.length,
    lineAt: (line: number) => ({
      text: lines[line],
      range: { end: { line, character: 0 } },
      isEmptyOrWhitespace: false,
    }),
  };
  /** The other build is the one that the views show. */
  const shown = {
    overview: { folder: "file:///garage/other" },
    isServed: true,
    asLog: String,
    uriOf: ({ uri }: { uri: string }) => Uri.parse(uri),
    askOf: async (log: string) => ({ folder: log.slice(0, log.lastIndexOf("/")) }),
  };

  async function dropped(uris: string, bytes?: string): Promise<WorkspaceEdit | undefined> {
    takePhotos(as(shown), []);
    const items = new Map<string, unknown>([
      ["text/uri-list", { asString: async () => uris, asFile: () => undefined }],
    ]);
    if (bytes !== undefined) items.set("image/png", { asFile: () => ({ name: "disc.png", bytes }) });
    const edit = await seen.drop?.provideDocumentDropEdits(document, { line: 1 }, items);
    return as<{ additionalEdit: WorkspaceEdit } | undefined>(edit)?.additionalEdit;
  }

  test("goes to the build of that diary, whichever is shown", async () => {
    seen.files.add("/pictures/disc.png");
    const edit = await dropped("file:///pictures/disc.png");
    expect(edit?.created).toEqual([
      { path: "/garage/otter/photos/disc.png", contents: "bytes of /pictures/disc.png" },
    ]);
    expect(edit?.texts).toEqual(['\n  photo: "photos/disc.png"']);
  });

  test("from a web page is kept by its bytes, since its address cannot be read", async () => {
    const edit = await dropped("https://pictures.example/disc.png", "seen in the page");
    expect(edit?.created).toEqual([
      { path: "/garage/otter/photos/disc.png", contents: { name: "disc.png", bytes: "seen in the page" } },
    ]);
    expect(await dropped("https://pictures.example/disc.png")).toBeUndefined();
  });
});

describe("a report in a panel", () => {
  const panelOf = (answer: Promise<unknown>) => {
    const changes = new EventEmitter<void>();
    const shown = { onDidChange: changes.event, ask: () => answer, isServed: true };
    new ReportPanels(as(shown), as(Uri.parse("file:///extension"))).open("order");
    changes.fire();
    const [panel] = seen.panels;
    if (panel === undefined) throw new Error("no panel");
    return { panel, changes };
  };

  test("is sent when it is made", async () => {
    const { panel } = panelOf(Promise.resolve({ fragment: "<p>Bolts</p>", spots: [] }));
    await vi.waitFor(() => expect(panel.posted).toMatchObject([{ fragment: "<p>Bolts</p>", name: "order" }]));
  });

  test("is dropped where the panel was closed before it was made, and nobody asks for another", async () => {
    const unhandled: unknown[] = [];
    const hear = (reason: unknown) => unhandled.push(reason);
    process.on("unhandledRejection", hear);
    const report = new EventEmitter<unknown>();
    const { panel, changes } = panelOf(new Promise((resolve) => report.event(resolve)));
    panel.dispose();
    report.fire({ fragment: "<p>Bolts</p>", spots: [] });
    changes.fire();
    await new Promise((resolve) => setTimeout(resolve));
    process.off("unhandledRejection", hear);
    expect([panel.posted, unhandled]).toEqual([[], []]);
  });
});

describe("the build that is shown", () => {
  const contexts = () => seen.commands.map(([, name, value]) => `${name} ${value}`);

  test("is asked for once the server is up", async () => {
    const client = new Client();
    const shown = new ShownBuild(as(client), []);
    client.becomes(State.Starting);
    const asked = shown.ask("cotter/overview", {});
    await new Promise((resolve) => setTimeout(resolve));
    expect([client.asked, contexts()]).toEqual([[], []]);
    client.becomes(State.Running);
    expect(await asked).toMatchObject({ name: "The Sprint" });
    shown.dispose();
  });

  test("is forgotten only where the server stays away", async () => {
    vi.useFakeTimers();
    try {
      const client = new Client();
      const shown = new ShownBuild(as(client), []);
      client.becomes(State.Running);
      await vi.advanceTimersByTimeAsync(0);
      expect(contexts()).toEqual(["cotter.server answers", "cotter.hasBuild true"]);
      client.becomes(State.Running);
      // Ended before it has answered.
      client.becomes(State.Stopped);
      await vi.advanceTimersByTimeAsync(0);
      client.becomes(State.Running);
      await vi.advanceTimersByTimeAsync(60_000);
      expect(contexts()).not.toContain("cotter.hasBuild false");
      expect(contexts()).not.toContain("cotter.server gone");
      client.becomes(State.Stopped);
      await vi.advanceTimersByTimeAsync(60_000);
      expect(contexts().slice(-2)).toEqual(["cotter.server gone", "cotter.hasBuild false"]);
      forgetAll();
      client.becomes(State.Starting);
      client.becomes(State.StartFailed);
      await vi.advanceTimersByTimeAsync(60_000);
      expect(contexts()).toEqual(["cotter.server gone", "cotter.hasBuild false"]);
      forgetAll();
      client.becomes(State.Stopped);
      shown.dispose();
      await vi.advanceTimersByTimeAsync(60_000);
      expect(contexts()).toEqual([]);
    } finally {
      vi.useRealTimers();
    }
  });
});

describe("the server is started again", () => {
  test("after it was stopped, and once however often one asks", async () => {
    const client = new Client();
    client.becomes(State.Running);
    await Promise.all([restartServer(as(client)), restartServer(as(client))]);
    expect(client.deeds).toEqual(["stop", "start"]);
    await restartServer(as(client));
    expect(client.deeds).toEqual(["stop", "start", "stop", "start"]);
  });

  test("after it has come up, where it was on its way", async () => {
    const client = new Client();
    client.becomes(State.Starting);
    const restarted = restartServer(as(client));
    client.becomes(State.Running);
    await restarted;
    expect(client.deeds).toEqual(["start", "stop", "start"]);
  });
});

test("suppliers and their lines have ids of their own, whatever they are called", async () => {
  const supplier = (ref: string | null): SupplierEntry => ({
    ref,
    title: ref === null ? null : "The shop on the corner",
    goods: ["62.00 GBP"],
    carriage: null,
    unpriced: 0,
    short: null,
    spot: null,
    lines: [
      {
        ref: "front.disc",
        title: "Brake disc",
        number: null,
        quantity: 1,
        total: null,
        needBy: null,
        orderBy: "2026-05-23",
        late: false,
        why: [],
        spot: null,
      },
    ],
  });
  const shown = {
    overview: { today: "2026-05-16", name: "The Sprint" },
    onDidChange: new EventEmitter<void>().event,
    ask: async () => ["one", "two", null].map(supplier),
  };
  const tree = toOrder(as(shown));
  const suppliers = await tree.getChildren();
  const lines = await Promise.all(suppliers.map((row) => tree.getChildren(row)));
  const rows = [...suppliers, ...lines.flat()];
  expect(new Set(rows.map(({ id }) => id)).size).toBe(6);
  expect(suppliers.map(({ label, description }) => `${label} ${description}`)).toEqual([
    "The shop on the… 62.00 GBP",
    "The shop on the… 62.00 GBP",
    "No supplier named 62.00 GBP",
  ]);
  expect(lines[0]?.map(({ label, description }) => `${label} ${description}`)).toEqual([
    "1 × Brake disc by 23 May",
  ]);
});
