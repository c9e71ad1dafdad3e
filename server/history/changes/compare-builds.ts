/** Two revisions of a build compared as builds. Pure: a function of what both are on the same day. */
import type { Build } from "../../build/build.ts";
import { planOf } from "../../plan/plan.ts";
import type { Change } from "./change.ts";
import { complaintChanges } from "./complaint-changes.ts";
import { definitionChanges } from "./definition-changes.ts";
import { diaryOf } from "./diary.ts";
import type { Lookup } from "./diary-changes.ts";
import { diaryChanges } from "./diary-changes.ts";
import { planChanges } from "./plan-changes.ts";
import { stateChanges } from "./state-changes.ts";
import { thingChanges } from "./thing-changes.ts";
import { pairThings } from "./things.ts";
import { Wording } from "./wording.ts";

export function compareBuilds(before: Build, after: Build): readonly Change[] {
  const things = pairThings(before, after);
  const { renames } = things;
  const wording = {
    before: new Wording(before, (what, ref) => renames.of(what, ref)),
    after: new Wording(after, (_, ref) => ref),
  };
  return [
    ...diaryChanges(diaryOf(before, wording.before), diaryOf(after, wording.after), lookupIn(after, before)),
    ...thingChanges(things),
    ...definitionChanges(
      { build: before, wording: wording.before },
      { build: after, wording: wording.after },
      things,
    ),
    ...stateChanges(before, after, things),
    ...planChanges({ build: before, plan: planOf(before) }, { build: after, plan: planOf(after) }, renames),
    ...complaintChanges(before, after),
  ];
}

/** What is known of a path or name, by the first of the builds that knows it. */
function lookupIn(...builds: readonly Build[]): Lookup {
  return (ref) => {
    for (const { standing } of builds) {
      const node = standing.gathered.tree.at(ref);
      if (node !== undefined) return { what: node.kind, title: node.title };
      for (const ofKind of standing.gathered.named.values()) {
        const named = ofKind.get(ref);
        if (named !== undefined) return { what: named.kind, title: named.title };
      }
    }
    return { what: "build", title: undefined };
  };
}
