/** Which mends are offered of a log in several files, and where they would write what. */
import { describe, expect, it } from "vitest";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";

/** `diary.cotter +12: part hub "Hub"`: the file, the place in it, and the text, for each mend of a code. */
function offered(logs: Readonly<Record<string, string>>, code: string): readonly string[] {
  const build = readLogs(Object.entries(logs).map(([path, text]) => ({ path, text })));
  const { complaints } = complaintsOf(build);
  return complaints
    .filter((complaint) => complaint.code === code)
    .flatMap((complaint) => complaint.fixes(build))
    .map(({ title, edits }) => {
      const written = edits.map(({ place: { site, start, end }, text }) => {
        const { path, document } = site.file;
        const offset = document.offsets[site.index] ?? 0;
        const at =
          offset + end === document.text.length ? "end" : document.text.slice(offset + start, offset + end);
        return `${path}, ${JSON.stringify(at)}: ${JSON.stringify(text)}`;
      });
      return [title, ...written].join("; ");
    });
}

const VEHICLE = 'vehicle "Example"\n  past: known\n';
const DIARY = "day 2026-05-02\n  removed: ";

describe("what an unknown reference names is defined", () => {
  it("in the file that defines what its path has most in common with, whichever comes first", () => {
    const files = {
      "a.cotter": 'part front.left.disc "Disc"\n\npart front.left.bell "Bell"\n',
      "b.cotter": 'part front.right.disc "Disc"\n\nday 2026-05-01\n  Rain.\n',
      "diary.cotter": `${VEHICLE}\n${DIARY}front.left.pads, front.right.pads, front.hub\n`,
    };
    expect(offered(files, "unknown-reference")).toEqual([
      'Define the part front.left.pads; a.cotter, "end": "\\npart front.left.pads \\"Pads\\"\\n"',
      'Define the part front.right.pads; b.cotter, "end": "\\npart front.right.pads \\"Pads\\"\\n"',
      // Of several with as much in common the last.
      'Define the part front.hub; b.cotter, "end": "\\npart front.hub \\"Hub\\"\\n"',
    ]);
  });

  it("where nothing is in common, beside one of its kind", () => {
    const files = {
      "gauges.cotter": 'gauge dti "Dial gauge"\n',
      "parts.cotter": 'part hub "Hub"\n  limit: bore max 54 mm\n',
      "z.cotter": `${VEHICLE}\nday 2026-05-02\n  measured: hub bore 53.9 mm with bore_gauge\n`,
    };
    expect(offered(files, "unknown-reference")).toEqual([
      'Define the gauge bore_gauge; gauges.cotter, "end": "\\ngauge bore_gauge \\"Bore gauge\\"\\n"',
    ]);
  });

  it("where nothing is defined at all, at the end of the block that names it", () => {
    expect(offered({ "a.cotter": `${DIARY}hub\n\nday 2026-05-03\n  Rain.\n` }, "unknown-reference")).toEqual([
      'Define the part hub; a.cotter, "": "part hub \\"Hub\\"\\n"',
    ]);
  });

  it("with one empty line before it, however the file ends", () => {
    const behind = (end: string) =>
      offered({ "a.cotter": `${VEHICLE}\n${DIARY}disk${end}`, "z.cotter": "" }, "unknown-reference").map(
        (each) => each.split(": ").at(-1),
      );
    expect(behind("")).toEqual(['"\\n\\npart disk \\"Disk\\"\\n"']);
    expect(behind("\n")).toEqual(['"\\npart disk \\"Disk\\"\\n"']);
    expect(behind("\n\n")).toEqual(['"part disk \\"Disk\\"\\n"']);
  });

  it("as each kind that its place takes, but never as a snag, which a fact makes", () => {
    const titles = (log: string) =>
      offered({ "a.cotter": `${VEHICLE}\n${log}` }, "unknown-reference").map((each) => each.split(";")[0]);
    expect(titles("day 2026-05-02\n  cleared: rattle\n")).toEqual([]);
    expect(titles("day 2026-05-02\n  torqued: column 24 N.m\n")).toEqual(["Define the joint column"]);
    // Everything below something is no name.
    expect(titles("day 2026-05-02\n  torqued: column.* 24 N.m\n")).toEqual([]);
    expect(titles('day 2026-05-02\n  photo: "p.png" of column\n')).toEqual(["Define the part column"]);
    expect(titles("day 2026-05-02\n  found: column worn\n")).toEqual([
      "Define the part column",
      "Define the gauge column",
    ]);
  });
});

describe("another name is offered for a characteristic that has no limit", () => {
  const log = (measured: string) => ({
    "a.cotter": `${VEHICLE}\npart disc "Disc"\n  limit: thickness min 8.4 mm\n\nday 2026-05-02\n  Rain.\n  measured: ${measured}\n`,
  });

  it("where it stands, apart or in the reference", () => {
    expect(offered(log("disc thicknes 9.2 mm"), "measured-without-limit")).toEqual([
      'Write thickness; a.cotter, "thicknes": "thickness"',
    ]);
    expect(offered(log("disc.thicknes 9.2 mm"), "measured-without-limit")).toEqual([
      'Write thickness; a.cotter, "thicknes": "thickness"',
    ]);
  });

  it("but none that is nothing like it", () => {
    expect(offered(log("disc runout 9.2 mm"), "measured-without-limit")).toEqual([]);
  });
});

describe("a lock that was not written down", () => {
  const log = (locked: string) => ({
    "a.cotter": `${VEHICLE}\nhold road "Road"\n  needs: joints\n  planned: 2026-06-05\n\njoint flange "Flange"\n  torque: 24 N.m\n  lock: split_pin\n\nday 2026-05-02\n  loosened: flange\n  torqued: flange 24 N.m\n${locked}`,
  });

  it("is offered behind the tightening", () => {
    expect(offered(log(""), "lock-missing")).toEqual([
      'It was done: write locked: flange with split_pin; a.cotter, "": "\\n  locked: flange with split_pin"',
    ]);
  });

  it("but not where another was written", () => {
    expect(offered(log("  locked: flange with tab_washer\n"), "lock-missing")).toEqual([]);
  });
});

describe("what the dimensions of a part say it is", () => {
  const log = (identified: string) => ({
    "a.cotter": `${VEHICLE}\npart bearing "Bearing"\n  size: bore 17 mm\n  size: outside 47 mm\n  size: width 14 mm\n\nday 2026-05-02\n  identified: ${identified}\n`,
  });

  it("is offered instead of what it was identified as, in place of the words that said so", () => {
    expect(offered(log('bearing as "6203"'), "identity-contradicted")).toEqual([
      'Write that it is 6303; a.cotter, "as \\"6203\\"": "as \\"6303\\""',
    ]);
  });

  it("with the donor that it was said to be from", () => {
    const donor = 'donor van "Van"\n  size: bore 15 mm\n\n';
    const [file] = Object.values(log('bearing from van as "as on the van"'));
    const text = file?.replace("day", `${donor}day`) ?? "";
    expect(offered({ "a.cotter": text }, "identity-contradicted")).toEqual([
      'Write that it is 6303; a.cotter, "from van as \\"as on the van\\"": "as \\"6303\\""',
    ]);
  });

  it("but not of one that is gone: nobody can look at it any more", () => {
    const gone =
      "  removed: bearing\n  decided: bearing renew\n  bought: 1 x bearing at 7 GBP\n  fitted: bearing\n";
    expect(offered(log(`bearing as "6203"\n${gone}`), "identity-contradicted")).toEqual([]);
  });
});
