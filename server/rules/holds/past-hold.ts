import type { Finding } from "../../build/finding.ts";
import { findingRule } from "../rule.ts";

export const pastHold = findingRule<"past-hold">({
  code: "past-hold",
  group: "Order of things",
  severity: "error",
  summary: "Work or running goes on behind a hold point that is shut",
  why: "A hold point is there because what lies behind it can hurt, or cannot be undone, while something before it is open.",
  remedy:
    "Stop, see to what is open (cotter outstanding lists it), and release the hold point; or correct the date if the release was given before.",
  bad: `job shakedown "Up and down the lane"

hold brakes_ok "Brakes, before it moves"
  needs: systems
  stops: shakedown

day 2026-05-02
  started: shakedown
`,
  good: `job shakedown "Up and down the lane"

hold brakes_ok "Brakes, before it moves"
  needs: systems
  stops: shakedown

day 2026-05-02
  released: brakes_ok
  started: shakedown
`,
  message: ({ data }) => {
    const { is, what, hold, title, stoppedBy, unread } = data;
    const done = is === "job" ? `the job ${what} goes on` : `${what} is run`;
    const named = title === undefined ? hold : `${hold} (${title})`;
    const first =
      stoppedBy === undefined ? "which stops it" : `which comes before ${stoppedBy}, which stops it`;
    const follows = unread ? "; this follows from nothing but lines that could not be read" : "";
    return `${done} past the shut hold point ${named}, ${first}: ${whyShut(data)}${follows}`;
  },
});

function whyShut({ lapsed, refused }: Finding<"past-hold">["data"]): string {
  if (refused !== undefined) return `its release on ${refused} was refused`;
  return lapsed === undefined ? "it is not released" : `its release lapsed on ${lapsed}`;
}
