/** A row of a view: what it says, how it looks, and the line that it leads to. */
import type { MarkdownString, ThemeIcon } from "vscode";
import type { Spot } from "../../server/language-server/protocol.ts";

export interface Row {
  /** Unlike that of every other row of the view, and the same after a change. */
  readonly id: string;
  /** The name in full; the view cuts it where it is long. */
  readonly label: string;
  /** The short fact behind it. */
  readonly description: string;
  readonly icon: ThemeIcon;
  /** The row in full, for those who hear it. */
  readonly spoken: string;
  /** Undefined where it is worked out when it is wanted. */
  readonly tooltip?: string | MarkdownString;
  readonly spot: Spot | null;
  /** The rows below it; undefined where it has none. */
  readonly below?: () => Promise<readonly Row[]>;
  /** Whether those are shown at first. */
  readonly open?: boolean;
}
