// The floors of the house (DEVELOPERS.md): each imports only those below it, and none in a circle.
// `npm run check:structure` runs this; it is part of `npm test`.

/** The floors, lowest first. */
const floors = [
  "grammar",
  "server/quantities",
  "server/trade",
  "server/expressions",
  "server/build",
  "server/plan",
  "server/rules",
  "server/reports",
  "server/workspace",
  "server/history",
  "server/language-server",
  "server/command-line",
];

/** The floors that know no file, clock, process or protocol, and run in a browser's worker too. */
const core = floors.slice(0, floors.indexOf("server/workspace"));

/** Matches the files of any of these folders. */
function within(folders) {
  return folders.map((folder) => `^${folder}/`);
}

const upward = floors.slice(0, -1).map((floor, index) => ({
  name: `${floor.replace("server/", "")}-imports-no-floor-above`,
  comment: `${floor} is below ${floors.slice(index + 1).join(", ")}, and may not import from there.`,
  severity: "error",
  from: { path: within([floor]) },
  to: { path: within(floors.slice(index + 1)) },
}));

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...upward,
    {
      name: "no-circle",
      comment: "A circle of imports has no order in which it can be understood.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "floors-only",
      comment:
        "What is shipped imports from the floors and from packages: not from tests, samples or scripts.",
      severity: "error",
      from: { path: within(["client", ...floors]) },
      to: { pathNot: [...within(["client", ...floors]), "node_modules"], dependencyTypesNot: ["core"] },
    },
    {
      name: "no-floor-imports-the-client",
      comment: "The server knows its clients only through the protocol.",
      severity: "error",
      from: { path: within(floors) },
      to: { path: within(["client"]) },
    },
    {
      name: "client-knows-only-the-protocol",
      comment:
        "The client speaks to the server through the protocol, whose additions protocol.ts declares. Of the notation it knows how a text is quoted, for the lines that it writes.",
      severity: "error",
      from: { path: within(["client"]) },
      to: { path: within(floors), pathNot: "^(server/language-server/protocol|grammar/quoted)\\.ts$" },
    },
    {
      name: "protocol-is-types-only-for-the-client",
      comment:
        "protocol.ts is shared by both sides, so it imports nothing that either side would have to carry.",
      severity: "error",
      from: { path: "^server/language-server/protocol\\.ts$" },
      to: { path: within(floors), dependencyTypesNot: ["type-only"] },
    },
    {
      name: "core-knows-no-node",
      comment: "The core reads no file and starts no process: what it needs comes in as arguments.",
      severity: "error",
      from: { path: within(core) },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-knows-no-editor",
      comment: "The core does not know the editor or its protocol.",
      severity: "error",
      from: { path: within(core) },
      to: { path: ["^vscode", "node_modules/vscode"] },
    },
    {
      name: "only-the-client-knows-the-editor",
      comment: "The server works in any editor that speaks the protocol.",
      severity: "error",
      from: { path: within(floors) },
      to: { path: ["^vscode$", "node_modules/@types/vscode/"] },
    },
    {
      name: "no-unresolved-import",
      comment: "The imported file or package is not there.",
      severity: "error",
      from: {},
      to: { couldNotResolve: true, pathNot: "^vscode$" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    // Counts `import type` as an import: a type from a floor above would be an upward import too.
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "types", "default"],
      mainFields: ["module", "main", "types"],
    },
    skipAnalysisNotInRules: true,
  },
};
