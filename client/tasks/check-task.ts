/** *cotter: check* among the tasks: the program that comes with the extension, run on a folder that is a build. */
import type { Disposable, TaskDefinition, Uri as UriType, WorkspaceFolder } from "vscode";
import { l10n, ProcessExecution, RelativePattern, Task, TaskGroup, tasks, Uri, workspace } from "vscode";

const TYPE = "cotter";

/** @param extension the folder of the extension */
export function offerCheckTask(extension: UriType): Disposable {
  return tasks.registerTaskProvider(TYPE, {
    provideTasks: async () => {
      const folders = workspace.workspaceFolders ?? [];
      const isBuild = await Promise.all(folders.map(hasLog));
      return folders.filter((_, index) => isBuild[index]).map((folder) => checkTask(extension, folder));
    },
    resolveTask: ({ definition, scope }) => {
      const isFolder = typeof scope === "object" && scope !== null;
      const folder = isFolder ? scope : workspace.workspaceFolders?.[0];
      if (folder === undefined || definition.task !== "check") return undefined;
      return checkTask(extension, folder, definition);
    },
  });
}

/** Logs in the folder itself: complaints name files by their path in the build's folder. */
async function hasLog(folder: WorkspaceFolder): Promise<boolean> {
  if (folder.uri.scheme !== "file") return false;
  return (await workspace.findFiles(new RelativePattern(folder, "*.cotter"), undefined, 1)).length > 0;
}

function checkTask(
  extension: UriType,
  folder: WorkspaceFolder,
  definition: TaskDefinition = { type: TYPE, task: "check" },
): Task {
  const program = Uri.joinPath(extension, "dist/cotter.cjs").fsPath;
  // The editor's own Node, so that none has to be installed.
  const execution = new ProcessExecution(process.execPath, [program, "check", "."], {
    cwd: folder.uri.fsPath,
    env: { ELECTRON_RUN_AS_NODE: "1", NO_COLOR: "1" },
  });
  // No matcher by itself: the server's complaints of the same build are among the problems already.
  const task = new Task(definition, folder, "check", TYPE, execution, []);
  task.detail = l10n.t("Reads the build and lists its complaints");
  task.group = TaskGroup.Test;
  return task;
}
