import { env } from "vscode";
import type { ShownBuild } from "../shown-build.ts";
import { dayInBrief } from "./in-brief.ts";

/** Says a day as a narrow view has room for it. */
export type InBrief = (day: string) => string;

/** Days in brief beside the day on which the build stands, in the editor's language. */
export function daysInBrief(shown: ShownBuild): InBrief {
  return (day) => dayInBrief(day, shown.overview?.today ?? day, env.language);
}
