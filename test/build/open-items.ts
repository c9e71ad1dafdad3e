/** The open items of a hold point in a log, one line for each: `part-off seat: off since 2026-05-02`. */
import type { Build } from "../../server/build/build.ts";
import type { NamedDefinition } from "../../server/build/definitions.ts";
import { sayOpenItemByName } from "../../server/build/open-item.ts";
import { openItems } from "../../server/build/openness.ts";
import type { HoldState } from "../../server/build/states.ts";

export function holdAt({ standing }: Build, name: string): HoldState {
  const state = standing.holds.get(definitionAt({ standing }, name));
  if (state === undefined) throw new Error(`no state for ${name}`);
  return state;
}

export function openFor(build: Build, name: string): string[] {
  return openItems(build.standing, definitionAt(build, name)).map(
    (item) => `${item.code} ${sayOpenItemByName(item)}`,
  );
}

function definitionAt({ standing }: Pick<Build, "standing">, name: string): NamedDefinition {
  const definition = standing.names.named("hold", name);
  if (definition === undefined) throw new Error(`no hold point ${name}`);
  return definition;
}
