import type { Rule } from "../rule.ts";
import { clearedUnknownSnag } from "./cleared-unknown-snag.ts";
import { jobOutOfOrder } from "./job-out-of-order.ts";
import { pastHold } from "./past-hold.ts";
import { releaseLapsed } from "./release-lapsed.ts";
import { releasedWithOpenItems } from "./released-with-open-items.ts";

export const holdRules: readonly Rule[] = [
  clearedUnknownSnag,
  jobOutOfOrder,
  pastHold,
  releaseLapsed,
  releasedWithOpenItems,
];
