import type { Rule } from "../rule.ts";
import { backNeverSent } from "./back-never-sent.ts";
import { dayOrder } from "./day-order.ts";
import { doneBeforeStarted } from "./done-before-started.ts";
import { fittedCondemned } from "./fitted-condemned.ts";
import { fittedNotInHand } from "./fitted-not-in-hand.ts";
import { fittedNotInspected } from "./fitted-not-inspected.ts";
import { fittedTwice } from "./fitted-twice.ts";
import { fittedWhileAway } from "./fitted-while-away.ts";
import { futureDay } from "./future-day.ts";
import { hoursOverDay } from "./hours-over-day.ts";
import { lockedBeforeTorqued } from "./locked-before-torqued.ts";
import { markedBeforeTorqued } from "./marked-before-torqued.ts";
import { notSeen } from "./not-seen.ts";
import { receivedOverOrder } from "./received-over-order.ts";
import { removedTwice } from "./removed-twice.ts";
import { seenBySame } from "./seen-by-same.ts";
import { torquedBeforeFitted } from "./torqued-before-fitted.ts";

export const orderRules: readonly Rule[] = [
  backNeverSent,
  dayOrder,
  doneBeforeStarted,
  fittedCondemned,
  fittedNotInHand,
  fittedNotInspected,
  fittedTwice,
  fittedWhileAway,
  futureDay,
  hoursOverDay,
  lockedBeforeTorqued,
  markedBeforeTorqued,
  notSeen,
  receivedOverOrder,
  removedTwice,
  seenBySame,
  torquedBeforeFitted,
];
