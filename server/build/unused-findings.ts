import type { NamedDefinition } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import type { Names } from "./names.ts";
import { Remembered } from "./remembered.ts";
import type { SourceFile } from "./source.ts";
import type { Written } from "./tree/written.ts";

/**
 * Kinds that exist only to be referred to. A job or hold point does its work without, a part is on the vehicle, and a
 * donor is compared with whatever is to be identified.
 */
const REFERRED_TO = ["supplier", "gauge", "setup"] as const;

/** Suppliers, gauges and setups that nothing refers to. */
export function unusedDefinitions(
  names: Names,
  written: Written,
  files: readonly SourceFile[],
): readonly Finding[] {
  return REFERRED_TO.flatMap((kind) => [...names.every(kind)])
    .filter((definition) => !files.some((file) => names.uses(file, definition, written)))
    .map((unused) => remembered.of(unused, [], () => complaintOf(unused)));
}

const remembered = new Remembered<NamedDefinition, Finding>();

function complaintOf({ kind, name, header }: NamedDefinition): Finding {
  return finding("unused-definition", header, { kind, name });
}
