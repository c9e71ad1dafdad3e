import type { Rule } from "../rule.ts";
import { circuitUntested } from "./circuit-untested.ts";
import { fluidChangeDue } from "./fluid-change-due.ts";
import { fuseOverWire } from "./fuse-over-wire.ts";
import { fuseUnderLoad } from "./fuse-under-load.ts";
import { notProved } from "./not-proved.ts";
import { openedNotBled } from "./opened-not-bled.ts";
import { overfilled } from "./overfilled.ts";
import { provedWhileOpen } from "./proved-while-open.ts";
import { voltageDrop } from "./voltage-drop.ts";
import { wrongFluid } from "./wrong-fluid.ts";

export const systemRules: readonly Rule[] = [
  circuitUntested,
  fluidChangeDue,
  fuseOverWire,
  fuseUnderLoad,
  notProved,
  openedNotBled,
  overfilled,
  provedWhileOpen,
  voltageDrop,
  wrongFluid,
];
