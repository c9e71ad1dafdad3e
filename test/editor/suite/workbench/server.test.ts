import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { complaintsWhen, eventually, openDiary } from "../diary.ts";

suite("The server", () => {
  test("comes back after it was killed, and goes on complaining", async function () {
    if (process.platform === "win32") this.skip();
    const { document } = await openDiary(
      "killed",
      'vehicle "Halvorsen Sprint"\n  yaer: 1960\n  past: unknown\n',
    );
    await complaintsWhen(document.uri, (found) => found.length === 1);
    const [server, another] = servers();
    assert.ok(server !== undefined && another === undefined, "there is one server");
    process.kill(server, "SIGKILL");
    await eventually(servers, ([now]) => now !== undefined && now !== server, "another server has started");
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, new vscode.Range(1, 2, 1, 6), "year");
    await vscode.workspace.applyEdit(edit);
    await complaintsWhen(document.uri, (found) => found.length === 0);
    const worse = new vscode.WorkspaceEdit();
    worse.replace(document.uri, new vscode.Range(1, 2, 1, 6), "yaer");
    await vscode.workspace.applyEdit(worse);
    await complaintsWhen(document.uri, (found) => found.length === 1);
  });
});

/** The processes that this extension host has started with the server's program. */
function servers(): readonly number[] {
  return execFileSync("ps", ["-A", "-o", "pid=,ppid=,args="], { encoding: "utf8" })
    .split("\n")
    .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line))
    .filter((found) => Number(found?.[2]) === process.pid && found?.[3]?.includes("server.cjs"))
    .map((found) => Number(found?.[1]));
}
