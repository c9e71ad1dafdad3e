import type { Rule } from "../rule.ts";
import { fitOutOfRange } from "./fit-out-of-range.ts";
import { fittedOutOfLimit } from "./fitted-out-of-limit.ts";
import { gaugeInDoubt } from "./gauge-in-doubt.ts";
import { gaugeOutOfDate } from "./gauge-out-of-date.ts";
import { gaugeOutOfRange } from "./gauge-out-of-range.ts";
import { gaugeTooCoarse } from "./gauge-too-coarse.ts";
import { implausibleValue } from "./implausible-value.ts";
import { limitNotMeasured } from "./limit-not-measured.ts";
import { limitUncertain } from "./limit-uncertain.ts";
import { measuredWithoutLimit } from "./measured-without-limit.ts";
import { nearLimit } from "./near-limit.ts";
import { overLimit } from "./over-limit.ts";
import { pairDiffers } from "./pair-differs.ts";
import { settingOutOfRange } from "./setting-out-of-range.ts";
import { underLimit } from "./under-limit.ts";
import { wearRate } from "./wear-rate.ts";

export const limitRules: readonly Rule[] = [
  fitOutOfRange,
  fittedOutOfLimit,
  gaugeInDoubt,
  gaugeOutOfDate,
  gaugeOutOfRange,
  gaugeTooCoarse,
  implausibleValue,
  limitNotMeasured,
  limitUncertain,
  measuredWithoutLimit,
  nearLimit,
  overLimit,
  pairDiffers,
  settingOutOfRange,
  underLimit,
  wearRate,
];
