import type { Rule } from "../rule.ts";
import { fittedOutOfLimit } from "./fitted-out-of-limit.ts";
import { gaugeOutOfDate } from "./gauge-out-of-date.ts";
import { gaugeOutOfRange } from "./gauge-out-of-range.ts";
import { gaugeTooCoarse } from "./gauge-too-coarse.ts";
import { implausibleValue } from "./implausible-value.ts";
import { limitUncertain } from "./limit-uncertain.ts";
import { measuredWithoutLimit } from "./measured-without-limit.ts";
import { nearLimit } from "./near-limit.ts";
import { overLimit } from "./over-limit.ts";
import { underLimit } from "./under-limit.ts";
import { wearRate } from "./wear-rate.ts";

export const limitRules: readonly Rule[] = [
  fittedOutOfLimit,
  gaugeOutOfDate,
  gaugeOutOfRange,
  gaugeTooCoarse,
  implausibleValue,
  limitUncertain,
  measuredWithoutLimit,
  nearLimit,
  overLimit,
  underLimit,
  wearRate,
];
