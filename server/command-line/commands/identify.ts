import type { Build } from "../../build/build.ts";
import type { KnownDimension } from "../../build/identification.ts";
import { dimensionsOfPart, donorsOf } from "../../build/identification.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import type { Identified } from "../../reports/identify.ts";
import { dimensionsReport, dimensionsTable, identifyReport, identifyTable } from "../../reports/identify.ts";
import { plainName } from "../../trade/identification/family.ts";
import { identify as identifyBy } from "../../trade/identification.ts";
import type { Call, Command } from "../command.ts";
import { Failure } from "../command.ts";
import { isDimensionWord, readDimensionWord } from "../dimension-words.ts";
import { partNamed } from "../part-operand.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const identify: Command = {
  name: "identify",
  operands: "NAME=VALUE … | PART [NAME=VALUE …]",
  summary: "what an unknown part can be, from a few of its dimensions, best first",
  options: [
    { name: "names", help: "the dimensions that each kind of part can be told by, with their other names" },
    ...PRINTABLE_OPTIONS,
  ],
  examples: [
    "cotter identify major=9.47mm pitch=1.06mm",
    'cotter identify bore=20mm outside=47mm "width=14.0 mm ± 0.1 mm"',
    "cotter identify major=0.373in tpi=24",
    "cotter identify front.left.inner_bearing --build samples/roadster",
  ],
  run: async (call) => {
    if (call.options.has("names")) return print(call, { report: dimensionsReport, table: dimensionsTable });
    const identified = await identifyCalled(call);
    return print(call, {
      report: () => identifyReport(identified),
      table: () => identifyTable(identified),
    });
  },
};

async function identifyCalled(call: Call): Promise<Identified> {
  const words = call.operands.filter(isDimensionWord);
  const [reference, ...others] = call.operands.filter((operand) => !isDimensionWord(operand));
  const nameless = call.operands.find((operand) => /^[-+]?\d/.test(operand));
  if (nameless !== undefined)
    throw new Failure(`${nameless} has no name: write one such as major=9.47mm, without spaces around =`);
  if (others.length > 0) throw new Failure(`one part at a time: ${reference} or ${others.join(" or ")}`);
  if (words.length === 0 && reference === undefined)
    throw new Failure(
      "say what was measured, such as cotter identify major=9.47mm pitch=1.06mm, or name a part; cotter identify --names lists the dimensions",
    );
  const build = (reference === undefined ? await call.findBuild() : await call.openBuild())?.build;
  const donors = build === undefined ? [] : donorsOf(build.standing.gathered);
  const donorNames = donors.flatMap(({ dimensions }) => [...dimensions.keys()]);
  const asked = words.map((word) => readDimensionWord(word, donorNames));
  requireEachOnce(asked);
  const node = reference === undefined || build === undefined ? undefined : partNamed(build, reference);
  const dimensions = [...asked, ...knownOfPart(build, node, asked)];
  if (node !== undefined && dimensions.length === 0)
    throw new Failure(
      `${node.path} has neither a size: nor a measurement: measure it, or say what was measured, such as cotter identify ${node.path} bore=20mm`,
    );
  const identification = identifyBy(
    dimensions.map(({ given }) => given),
    donors,
  );
  return { node, dimensions, identification };
}

/** What the log knows of a part, where the call does not say otherwise. */
function knownOfPart(
  build: Build | undefined,
  node: TreeNode | undefined,
  asked: readonly KnownDimension[],
): readonly KnownDimension[] {
  if (build === undefined || node === undefined) return [];
  const said = new Set(asked.map(({ given }) => plainName(given.name)));
  return dimensionsOfPart(build.standing, node).filter(({ given }) => !said.has(plainName(given.name)));
}

function requireEachOnce(asked: readonly KnownDimension[]): void {
  const names = asked.map(({ given }) => plainName(given.name));
  const twice = names.find((name, place) => names.indexOf(name) !== place);
  if (twice !== undefined) throw new Failure(`${twice} is given twice`);
}
