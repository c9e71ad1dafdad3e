// `npm run sbom`: what goes into the programs as a bill of materials (CycloneDX 1.6, JSON), from the notices of the last
// build and the lock file. Written to standard output.
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./figures.mjs";

/** Terms under which anything may be bundled: permissive, and met by the notices that are shipped. */
export const ALLOWED = ["Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "BlueOak-1.0.0", "ISC", "MIT"];

/** Everything that the last build bundled: name, version and licence, by the notices that are shipped with it. */
export function bundled() {
  const notices = readFileSync(path.join(root, "dist/THIRD-PARTY-NOTICES.txt"), "utf8");
  return [...notices.matchAll(/^(\S+) (\d+\.\d+\.\d+\S*) \((.+)\)\n-{5,}$/gm)].map(
    ([, name, version, licence]) => ({
      name,
      version,
      licence,
    }),
  );
}

export function billOfMaterials() {
  const read = (file) => JSON.parse(readFileSync(path.join(root, file), "utf8"));
  const { name, version, license } = read("package.json");
  const locked = Object.entries(read("package-lock.json").packages);
  const components = bundled().map((part) => {
    const lock = locked.find(
      ([at, { version: own }]) => at.endsWith(`node_modules/${part.name}`) && own === part.version,
    );
    if (lock === undefined) throw new Error(`${part.name} ${part.version} is bundled but not locked`);
    const [algorithm, digest] = (lock[1].integrity ?? "").split("-");
    const purl = `pkg:npm/${part.name.replace("@", "%40")}@${part.version}`;
    return {
      type: "library",
      "bom-ref": purl,
      name: part.name,
      version: part.version,
      purl,
      licenses: [{ license: { id: part.licence } }],
      ...(algorithm === "sha512"
        ? { hashes: [{ alg: "SHA-512", content: Buffer.from(digest, "base64").toString("hex") }] }
        : {}),
    };
  });
  const component = { type: "application", name, version, licenses: [{ license: { id: license } }] };
  return { bomFormat: "CycloneDX", specVersion: "1.6", version: 1, metadata: { component }, components };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  process.stdout.write(`${JSON.stringify(billOfMaterials(), undefined, 2)}\n`);
