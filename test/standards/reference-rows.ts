/** Reads the tables of published values in `data/`, each row with its source. */

import { readFileSync } from "node:fs";

export interface ReferenceRow {
  readonly id: string;
  readonly topic: string;
  readonly quantity: string;
  readonly inputs: string;
  /** One value, or several in the order of `quantity`, separated by ` / `. */
  readonly expected: string;
  readonly unit: string;
  /** Absolute, in the unit of `expected`. */
  readonly tolerance: string;
  readonly source: string;
  /** `read` in a document, `recomputed` from a formula, or from `memory`. */
  readonly evidence: string;
  readonly notes: string;
}

const columns = [
  "id",
  "topic",
  "quantity",
  "inputs",
  "expected",
  "unit",
  "tolerance",
  "source",
  "evidence",
  "notes",
] as const;

/** The rows of one table, as in `referenceRows("02_metric_threads")`. */
export function referenceRows(table: string): readonly ReferenceRow[] {
  const text = readFileSync(new URL(`./data/${table}.csv`, import.meta.url), "utf8");
  const [header, ...records] = csvRecords(text);
  if (header?.join() !== columns.join()) throw new Error(`${table}.csv has other columns: ${header?.join()}`);
  return records.map((fields) => {
    if (fields.length !== columns.length) throw new Error(`${table}.csv has a broken row: ${fields.join()}`);
    return Object.fromEntries(
      columns.map((column, place) => [column, fields[place]]),
    ) as unknown as ReferenceRow;
  });
}

/** Records of quoted fields, in which `""` stands for a quotation mark (RFC 4180). */
function csvRecords(text: string): string[][] {
  const records: string[][] = [];
  let record: string[] = [];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/g)) {
    if (end === "" && quoted === undefined && plain === "" && record.length === 0) break;
    record.push(quoted === undefined ? (plain ?? "") : quoted.replaceAll('""', '"'));
    if (end !== ",") {
      records.push(record);
      record = [];
    }
  }
  return records;
}
