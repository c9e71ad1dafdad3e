import { isCritical } from "./criticality.ts";
import type { Finding, FindingCode, FindingExtras } from "./finding.ts";
import { finding } from "./finding.ts";
import type { FindingData } from "./finding-data.ts";
import type { LostLine } from "./lost-lines.ts";
import { lostReasons } from "./lost-reasons.ts";
import type { Place } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/**
 * A finding about one thing: it knows whether the thing can hurt, and the lines that could not be read and may be why.
 *
 * @param linesAbout finds the lines that may be about the thing
 */
export function subjectFinding<C extends FindingCode>(
  standing: Pick<Standing, "definitions" | "names">,
  linesAbout: (node: TreeNode) => readonly LostLine[],
  subject: TreeNode,
  code: C,
  place: Place,
  data: FindingData[C],
  extras: FindingExtras,
): Finding {
  const reasons = lostReasons(code, () => linesAbout(subject));
  const seeAlso = [...(extras.seeAlso ?? []), ...reasons];
  return finding(code, place, data, { subject, critical: isCritical(standing, subject), ...extras, seeAlso });
}
