/** The neutral form of a report that people print: renderers make it text, Markdown, CSV or HTML. */

export interface Column {
  readonly key: string;
  readonly heading: string;
  /** Figures stand to the right. */
  readonly align: "left" | "right";
}

/** A cell: its text, and where it leads to or how it is told apart; a bare string is plain text. */
export type Cell =
  | string
  | {
      readonly text: string;
      /** `good` what is done, `open` what is not, `bad` what is wrong: renderers find the look. */
      readonly tone?: "good" | "open" | "bad" | "faint";
      /** A box to tick on paper. */
      readonly box?: true;
      /** On a page a picture beside the text: SVG that is safe. */
      readonly drawing?: string;
    };

export interface TableRow {
  readonly cells: Readonly<Record<string, Cell>>;
  /** Lines under the row: why, and where that stands in the log. */
  readonly remarks?: readonly string[];
}

/** Rows that belong together, under a heading of their own. */
export interface TableSection {
  readonly heading: string;
  readonly rows: readonly TableRow[];
  /** A sum or remark under the section. */
  readonly foot?: readonly string[];
}

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly sections: readonly TableSection[];
  /** What stands under the whole: totals, explanations. */
  readonly notes: readonly string[];
  /** What a reader must be told: estimates, safety. Always shown. */
  readonly cautions: readonly string[];
}

export const column = (key: string, heading: string, align: Column["align"] = "left"): Column => ({
  key,
  heading,
  align,
});

export function textOf(cell: Cell | undefined): string {
  return cell === undefined ? "" : typeof cell === "string" ? cell : cell.text;
}

/** Of computed torques, limits and preloads (rules of the trade: the maker's figure comes first). */
export const ESTIMATES_CAUTION =
  "Computed torques, preloads and limits are estimates: the maker's figure comes first, then local rules and a licensed practitioner.";
