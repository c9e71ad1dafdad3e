// The libraries of the protocol are published as CommonJS, of which a bundler can leave nothing out. They are compiled from
// ES modules by TypeScript, whose output is regular enough to be turned back: then only what is used is kept.
import { readFile } from "node:fs/promises";

/** The packages that are turned back, and the one that is published as ES modules, but with namespaces that never go away. */
const LIBRARIES =
  /[\\/]node_modules[\\/]vscode-(?:jsonrpc|languageclient|languageserver(?:-protocol|-types)?)[\\/]lib[\\/].*\.js$/;

/** What a server can do in the protocol and ours does not: each adds itself to a class, which then has all of them. */
export const NOT_ASKED_FOR = [
  "inlineCompletion",
  "inlineValue",
  "linkedEditingRange",
  "moniker",
  "notebook",
  "textDocumentContent",
  "typeHierarchy",
];
const FEATURES = new RegExp(
  `[\\\\/]vscode-languageserver[\\\\/]lib[\\\\/]common[\\\\/](?:${NOT_ASKED_FOR.join("|")})\\.js$`,
);

export const librariesAsEsModules = {
  name: "libraries as ES modules",
  setup(bundling) {
    bundling.onLoad({ filter: FEATURES }, async ({ path: file }) => ({
      contents: withoutFeature(asEsModule(await readFile(file, "utf8"), file), file),
      loader: "js",
    }));
    bundling.onLoad({ filter: LIBRARIES }, async ({ path: file }) => ({
      contents: asEsModule(await readFile(file, "utf8"), file),
      loader: "js",
    }));
  },
};

/**
 * A module whose feature adds nothing to the class that it is given.
 *
 * @throws {Error} where it is not written as features are: another release may be otherwise
 */
export function withoutFeature(text, file) {
  const feature = /^const (\w+Feature) = \(Base\) => \{\n[\s\S]*?^\};\n/gm;
  if ([...text.matchAll(feature)].length !== 1) throw new Error(`${file} has not one feature, as expected`);
  return text.replace(feature, "const $1 = (Base) => Base;\n");
}

/**
 * What TypeScript compiled to CommonJS, as an ES module again. Its namespaces become values without an effect on others, which
 * a bundler leaves out where nobody uses them.
 *
 * @throws {Error} where something is left that only CommonJS knows: another release of a library may be compiled otherwise
 */
export function asEsModule(text, file) {
  const imported = new Map();
  const values = [];
  const result = text
    .replace(
      /^var __\w+ = \(this && this\.__\w+\) \|\| [\s\S]*?^(?=Object\.defineProperty\(exports, "__esModule")/m,
      "",
    )
    .replace(/^Object\.defineProperty\(exports, "__esModule", \{ value: true \}\);\n/m, "")
    .replace(/^(?:exports\.\w+ = )+void 0;\n/gm, "")
    .replace(/^(?:const|var) (\w+) = (?:__import\w+\()?require\("([^"]+)"\)\)?;$/gm, (_, name, from) => {
      imported.set(name, from);
      // Of the packages that are used, this one alone is a function.
      return from.startsWith("semver/")
        ? `import ${name} from "${from}";`
        : `import * as ${name} from "${from}";`;
    })
    .replace(/^__exportStar\(require\("([^"]+)"\), exports\);$/gm, 'export * from "$1";')
    .replace(
      /^Object\.defineProperty\(exports, "(\w+)", \{ enumerable: true, get: function \(\) \{ return (\w+)\.(\w+); \} \}\);$/gm,
      (_, name, module, inner) => `export { ${inner} as ${name} } from "${imported.get(module)}";`,
    )
    .replace(
      /^(export )?(?:var|let) (\w+);\n\(function \(\2\) \{\n([\s\S]*?)^\}\)\(\2 \|\| \((exports\.\2 = )?\2 = \{\}\)\);$/gm,
      (_, declared, name, body, exported) =>
        `${declared || exported ? "export " : ""}var ${name} = /* @__PURE__ */ (function (${name}) {\n${body}return ${name};\n})({});`,
    )
    // A namespace that belongs to a function or a class.
    .replace(/^\}\)\((\w+) \|\| \((exports\.\1 = )?\1 = \{\}\)\);$/gm, "})($1);")
    .replace(/^exports\.(\w+) = (\w+);$/gm, "export { $2 as $1 };")
    .replace(
      /^exports\.(\w+) = (\w+)\.default;$/gm,
      (_, name, module) => `export { default as ${name} } from "${imported.get(module)}";`,
    )
    .replace(/^exports\.(\w+) = /gm, (_, name) => {
      values.push(name);
      return `export const ${name} = `;
    })
    .replace(/\bexports\.(\w+)/g, (used, name) => (values.includes(name) ? name : used));
  const left = /^.*(?:\bexports\b|\brequire\(").*$/m.exec(result);
  if (left !== null) throw new Error(`${file} cannot be turned into an ES module: ${left[0].trim()}`);
  return result;
}
