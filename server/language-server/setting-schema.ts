/** The settings of the extension as its manifest declares them, each with its default and a short description. */
import { severitySetting } from "../rules/severity-setting.ts";
import { DEFAULT_SETTINGS } from "./settings.ts";

const HINTS: Readonly<Record<keyof typeof DEFAULT_SETTINGS.inlayHints, string>> = {
  computed: "Show the value of a calc: behind its line.",
  converted: "Show a value in the unit of its limit, or of the other system.",
  verdicts: "Show what a reading proves about its limit, and how much is left.",
  running: "Show the running hours so far behind ran:.",
};

/** `contributes.configuration` of the manifest. */
export function settingSchema(): object {
  const hints = Object.entries(HINTS).map(([name, description]) => {
    const byDefault = DEFAULT_SETTINGS.inlayHints[name as keyof typeof DEFAULT_SETTINGS.inlayHints];
    return [`cotter.inlayHints.${name}`, { type: "boolean", default: byDefault, description }];
  });
  return {
    title: "Cotter",
    properties: {
      ...Object.fromEntries(hints),
      "cotter.codeLens": {
        type: "boolean",
        default: DEFAULT_SETTINGS.codeLens,
        description: "Show the state of parts, joints and hold points above their blocks.",
      },
      "cotter.writtenLater": {
        type: "boolean",
        default: DEFAULT_SETTINGS.writtenLater,
        description:
          "Say in a hover when a fact was written later than its day. Git is asked, in a trusted folder only.",
      },
      ...severitySetting(),
    },
  };
}
