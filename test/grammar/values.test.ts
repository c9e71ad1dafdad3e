import { describe, expect, it } from "vitest";
import { expectMarked, plain, readRecord, recordIn, said } from "./marked-log.ts";

/** The value of `size: s …`, in short. */
function value(text: string): unknown {
  return plain(readRecord("part", `size: s ${text}`).values.get("value"));
}

/** What `limit: l …` says. */
function limits(text: string): unknown {
  return plain(readRecord("part", `limit: l ${text}`).values.get("limits"));
}

/** The first complaint about a line of a part: its code, what it found, and its first fix. */
function refused(line: string, block = "part"): unknown {
  const { faults } = recordIn(block, line);
  const [fault] = faults;
  return (
    fault &&
    [fault.code, fault.found, fault.fixes[0]?.text, fault.fixes[0]?.sure].filter((each) => each !== undefined)
  );
}

describe("numbers", () => {
  it.each([
    "12 mm",
    "-1.5 mm",
    "+0.5 mm",
    "9.12 mm",
    "1e-3 mm",
    "1E3 mm",
    "2.5e+2 mm",
    "3/8 in",
    "1-3/8 in",
    "-3/8 in",
    "0 mm",
    "007 mm",
  ])("%s", (text) => expect(value(text)).toBe(text));

  it("are kept as written", () => {
    expect(value("9.10 mm")).toBe("9.10 mm");
    expect(value("\u22121.5 mm")).toBe("\u22121.5 mm");
  });

  it("are mixed only before an inch or a foot, with a hyphen or a space", () => {
    expect(value("1 3/8 in")).toBe("1 3/8 in");
    expect(value("5 ft 1-3/8 in")).toBe("5 ft 1-3/8 in");
    expect(value("1-1/2 ft")).toBe("1-1/2 ft");
    expect(refused("size: s 1-3/8 mm")).toEqual(["unreadable-value", "1-3/8"]);
    expect(refused("size: s 1-3/8")).toEqual(["unreadable-value", "1-3/8"]);
    expect(refused("size: s 1 3/8 mm")).toEqual(["unreadable-value", "3/8 mm"]);
  });

  it("never divide by nought", () => {
    expect(refused("size: s 3/0 in")).toEqual(["unreadable-value", "3/0"]);
    expect(refused("size: s 1-3/00 in")).toEqual(["unreadable-value", "1-3/00"]);
  });

  it("have a figure before the point", () => {
    expect(refused("size: s .5 mm")).toEqual(["unreadable-value", ".5", "0.5", true]);
    expect(refused("size: s -.5 mm")).toEqual(["unreadable-value", "-.5", "-0.5", true]);
  });
});

describe("commas", () => {
  it("are refused as decimal commas, with a fix", () => {
    expect(refused("size: s 9,12 mm")).toEqual(["decimal-comma", "9,12", "9.12", true]);
    expect(refused("size: s -9,1 mm")).toEqual(["decimal-comma", "-9,1", "-9.1", true]);
  });

  it("with three digits behind them may part thousands: the fix is offered, not sure", () => {
    expect(refused("budget: 1,250 GBP", "vehicle")).toEqual(["decimal-comma", "1,250", "1.250", false]);
    expect(refused("budget: 1,250,000 GBP", "vehicle")).toEqual([
      "decimal-comma",
      "1,250,000",
      "1250000",
      false,
    ]);
  });

  it("make a list, tight between digits, if either side has a point", () => {
    const readings = (text: string) =>
      plain(readRecord("day", `measured: d t ${text}`).values.get("readings"));
    expect(readings("9.12,9.10,9.14 mm")).toEqual(["9.12", "9.10", "9.14 mm"]);
    expect(readings("9.12,9 mm")).toEqual(["9.12", "9 mm"]);
    expect(readings("9,9.12 mm")).toEqual(["9", "9.12 mm"]);
    expect(readings("9, 12 mm")).toEqual(["9", "12 mm"]);
    expect(readings("9 ,12 mm")).toEqual(["9", "12 mm"]);
  });

  it("cost only the reading that has one", () => {
    const record = recordIn("day", "measured: d t 9.1, 9,12, 9.3 mm");
    expect(record.faults.map(({ code }) => code)).toEqual(["decimal-comma"]);
    expect(record.broken).toBe(false);
    expect(plain(record.values.get("readings"))).toEqual(["9.1", "9.3 mm"]);
  });
});

describe("units", () => {
  it.each([
    "54 N.m",
    "54 N·m",
    "40 lbf.ft",
    "2.5 mm2",
    "2.5 mm^2",
    "2.5 mm²",
    "7850 kg/m3",
    "9.81 m/s2",
    "1 kgf/cm2",
    "30 N/mm",
    "1 imp_gal",
    "2 us_floz",
    "5 °C",
    "5 °",
    "30 '",
    "10 %",
    "4.7 kΩ",
    "3 µm",
    "3 um",
    "5 min",
    "5 in",
    "5 m",
    "3 turn",
    "54 nm",
    "5 mm5",
  ])("%s", (text) => expect(value(text)).toBe(text));

  it("may stand without the space before them", () => {
    expect(value("54N.m")).toBe("54 N.m");
    expect(value("5%")).toBe("5 %");
    expect(value("1°30'")).toBe("1 ° 30 '");
  });

  it("behind a number win over words: min, in and m are units there", () => {
    expect(limits("min 5 min")).toMatchObject({ form: "bounds", lower: "5 min" });
    expect(limits("max 5 min")).toMatchObject({ upper: "5 min" });
    expect(limits("min 3 in max 4 in")).toMatchObject({ lower: "3 in", upper: "4 in" });
    expect(said(readRecord("joint", "nut: tapped 1 in in aluminium"))).toMatchObject({
      value: { form: "tapped", depth: "1 in", material: "aluminium" },
    });
  });

  it("are none where a word of the notation stands behind a bare number", () => {
    expect(said(readRecord("day", 'measured: d t 9.1 with mic25 by "JR"'))).toMatchObject({
      readings: ["9.1"],
      gauge: "mic25",
    });
    expect(said(readRecord("day", "torqued: j 24 on new hardware"))).toMatchObject({
      torque: "24",
      newHardware: true,
    });
    expect(said(readRecord("part", "pack: 50 at 2.00 GBP"))).toMatchObject({
      value: { count: "50", at: "2.00 GBP" },
    });
  });
});

describe("marks behind a number", () => {
  it("a tight quotation mark is inches by another name, and opens no string", () => {
    expect(refused('size: s 3/8"')).toEqual(["unknown-unit", '"', " in", true]);
    expect(refused('size: s 3/8" ')).toEqual(["unknown-unit", '"', " in", true]);
    expectMarked(`
      day 2026-05-02
        measured: d t 3/8" with mic25 "as told"
                         ^ unknown-unit
    `);
  });

  it("apart from the number it opens a string", () => {
    expect(said(readRecord("day", 'measured: d t 0.375 "inches"'))).toEqual({
      what: "d",
      name: "t",
      readings: ["0.375"],
      note: '"inches"',
    });
  });

  it("behind a date or a name it opens a string", () => {
    expect(
      said(readRecord("day", 'fitted: hub2"spare" made 2026-05-02"stamped"'.replace('"spare" ', " "))),
    ).toMatchObject({
      made: "2026-05-02",
      note: '"stamped"',
    });
  });

  it("an apostrophe is minutes of arc; where no angle is due it means feet", () => {
    expect(value("30'")).toBe("30 '");
    expect(refused("grip: 6'", "joint")).toEqual(["unknown-unit", "'", " ft", true]);
    expect(refused("length: 6'", "circuit")).toEqual(["unknown-unit", "'", " ft", true]);
  });

  it("behind minutes of arc a quotation mark may be seconds of arc, which nobody is sure of", () => {
    expect(refused("size: s 1° 30' 15\"")).toEqual(["unknown-unit", '"', " arcsec", false]);
  });
});

describe("compound quantities", () => {
  it.each([
    "1 deg 30 arcmin",
    "1 deg 30 arcmin 15 arcsec",
    "1 ° 30 '",
    "-1 deg 30 arcmin",
    "5 h 30 min",
    "5 h 30 min 10 s",
    "5 ft 6 in",
    "2 lb 3 oz",
    "1 week 2 d 3 h",
    "1 year 6 month",
    "2 years 6 months",
    "1 deg 15 arcsec",
  ])("%s is one value", (text) => expect(value(text)).toBe(text));

  it.each([
    "30 arcmin 1 deg",
    "30 min 5 h",
    "6 in 5 ft",
    "5 mm 3 mm",
    "2 d 30 min",
    "1 month 3 d",
    "1 deg -30 arcmin",
  ])("%s is two values", (text) => {
    const parts = said(readRecord("day", `ran: vehicle ${text}`)).running;
    expect(parts).toHaveLength(2);
  });
});

describe("limits", () => {
  it.each([
    ["min 8.4 mm", { form: "bounds", lower: "8.4 mm" }],
    ["max 0.10 mm", { form: "bounds", upper: "0.10 mm" }],
    ["min 8 mm max 9 mm", { form: "bounds", lower: "8 mm", upper: "9 mm" }],
    ["max 9 mm min 8 mm", { form: "bounds", lower: "8 mm", upper: "9 mm" }],
    ["54.00..54.05 mm", { form: "bounds", lower: "54.00", upper: "54.05 mm" }],
    ["54 mm .. 54.05 mm", { form: "bounds", lower: "54 mm", upper: "54.05 mm" }],
    ["-1.5..-0.5 deg", { form: "bounds", lower: "-1.5", upper: "-0.5 deg" }],
    ["54 mm ± 0.05", { form: "tolerance", nominal: "54 mm", tolerance: "0.05" }],
    ["54 mm ±0.05 mm", { form: "tolerance", nominal: "54 mm", tolerance: "0.05 mm" }],
    ["54 mm +- 0.05", { form: "tolerance", nominal: "54 mm", tolerance: "0.05" }],
    ["54 mm +/- 0.05", { form: "tolerance", nominal: "54 mm", tolerance: "0.05" }],
    ["54 ± 0.05 mm", { form: "tolerance", nominal: "54", tolerance: "0.05 mm" }],
    ["54 mm ± 5 %", { form: "tolerance", nominal: "54 mm", tolerance: "5 %" }],
    ["54 mm +0.05/-0.00", { form: "asymmetric", nominal: "54 mm", above: "+0.05", below: "-0.00" }],
    ["54 mm +0.05 / -0.02", { form: "asymmetric", nominal: "54 mm", above: "+0.05", below: "-0.02" }],
    ["54 mm -0.01/-0.03", { form: "asymmetric", nominal: "54 mm", above: "-0.01", below: "-0.03" }],
    ["54 mm +0.05/0", { form: "asymmetric", nominal: "54 mm", above: "+0.05", below: "0" }],
    ["54 mm 0/-0.02", { form: "asymmetric", nominal: "54 mm", above: "0", below: "-0.02" }],
    ["54 +0.05/-0.00 mm", { form: "asymmetric", nominal: "54", above: "+0.05", below: "-0.00", unit: "mm" }],
    ["25 h6", { form: "iso286", size: "25", toleranceClass: "h6" }],
    ["52 H7", { form: "iso286", size: "52", toleranceClass: "H7" }],
    ["52H7", { form: "iso286", size: "52", toleranceClass: "H7" }],
    ["12.5 js11", { form: "iso286", size: "12.5", toleranceClass: "js11" }],
    ["25 m6", { form: "iso286", size: "25", toleranceClass: "m6" }],
    ["25 m2", { form: "iso286", size: "25", toleranceClass: "m2" }],
    [
      "1 deg 30 arcmin ± 15 arcmin",
      { form: "tolerance", nominal: "1 deg 30 arcmin", tolerance: "15 arcmin" },
    ],
    ["3/8..7/16 in", { form: "bounds", lower: "3/8", upper: "7/16 in" }],
  ])("%s", (text, expected) => {
    expect(limits(text)).toEqual(expected);
    expect(limits(`${text} new 9.5 mm`)).toEqual({ ...expected, fresh: "9.5 mm" });
  });

  it.each([
    ["limit: t 8.4 mm", ["unreadable-value", "8.4 mm", "min ", false]],
    ["limit: t", ["missing-value", ""]],
    ["limit: t 5..", ["missing-value", ""]],
    ["limit: t ..5 mm", ["unreadable-value", ".."]],
    ["limit: t min", ["missing-value", ""]],
    ["limit: t 54 mm ±", ["missing-value", ""]],
    ["limit: t 54 mm ± 0,05", ["decimal-comma", "0,05", "0.05", true]],
    ["limit: min 8.4 mm", ["unreadable-value", "8.4 mm", "min ", false]],
    ["limit: t min 8.4 mm max", ["missing-value", ""]],
    ["limit: t min 8.4 mm nwe 9.5 mm", ["unreadable-value", "nwe 9.5 mm"]],
    ["limit: t 25 h19", ["unreadable-value", "25 h19", "min ", false]],
  ])("%s is refused", (line, expected) => expect(refused(line)).toEqual(expected));

  it("of a setting may be the value alone; `each` is said of one side", () => {
    expect(said(readRecord("assembly", "setting: toe 1.5 mm"))).toEqual({
      name: "toe",
      limits: { form: "nominal", nominal: "1.5 mm" },
    });
    expect(said(readRecord("assembly", "setting: toe 1.5 mm each ± 0.5 mm"))).toEqual({
      name: "toe",
      limits: { form: "tolerance", nominal: "1.5 mm each", tolerance: "0.5 mm" },
    });
    expect(said(readRecord("assembly", "setting: toe 0 each ± 0.5 mm"))).toMatchObject({
      limits: { nominal: "0 each" },
    });
  });
});

describe("dates", () => {
  it.each(["2026-05-02", "2024-02-29", "2000-02-29", "0001-01-01"])("%s", (text) => {
    expect(said(readRecord("part", `expires: ${text}`))).toEqual({ value: text });
  });

  it.each([
    ["expires: 2026-02-29", ["bad-date", "2026-02-29"]],
    ["expires: 1900-02-29", ["bad-date", "1900-02-29"]],
    ["expires: 2026-13-01", ["bad-date", "2026-13-01"]],
    ["expires: 2026-04-31", ["bad-date", "2026-04-31"]],
    ["expires: 2026-5-2", ["bad-date", "2026-5-2", "2026-05-02", true]],
    ["expires: 2.5.2026", ["bad-date", "2.5.2026", "2026-05-02", false]],
    ["expires: 2/5/26", ["bad-date", "2/5/26"]],
    ["expires: 2026", ["bad-date", "2026"]],
    ["expires: soon", ["bad-date", "soon"]],
    ["expires: 2026-05-02T10:00", ["bad-date", "2026-05-02T10:00", "2026-05-02", true]],
    ["expires:", ["missing-value", ""]],
  ])("%s is refused", (line, expected) => expect(refused(line)).toEqual(expected));

  it("may make a period", () => {
    expect(said(readRecord("vehicle", "closed: 2026-08-01..2026-08-14"))).toEqual({
      value: { from: "2026-08-01", to: "2026-08-14" },
    });
    expect(said(readRecord("vehicle", "closed: 2026-08-01"))).toEqual({ value: "2026-08-01" });
    expect(refused("closed: 2026-08-01..2026-8-14", "vehicle")).toEqual([
      "bad-date",
      "2026-8-14",
      "2026-08-14",
      true,
    ]);
    expect(refused("closed: 2026-08-01, 2026-08-14", "vehicle")).toEqual([
      "unreadable-value",
      ", 2026-08-14",
    ]);
  });
});

describe("strings", () => {
  it.each([
    ['"plain"', '"plain"'],
    ['"a \\"quoted\\" word"', '"a \\"quoted\\" word"'],
    ['"back\\\\slash"', '"back\\\\slash"'],
    ['"photos\\disc.png"', '"photos\\\\disc.png"'],
    ['""', '""'],
    ['"ends in \\\\"', '"ends in \\\\"'],
    ['"# no comment  # here"', '"# no comment  # here"'],
  ])("%s", (text, expected) => {
    expect(said(readRecord("part", `maker: ${text}`))).toEqual({ value: expected });
  });

  it("end with their line when they are not closed", () => {
    const record = recordIn("part", 'maker: "Halvorsen  ');
    expect(record.faults.map(({ code }) => code)).toEqual(["unclosed-string"]);
    expect(record.broken).toBe(false);
    expect(said(record)).toEqual({ value: '"Halvorsen"' });
  });

  it("are not closed by an escaped mark", () => {
    expect(refused('maker: "Halvorsen\\"')).toEqual(["unclosed-string", '"Halvorsen\\"', '"', false]);
  });

  it("take with them what stands behind the missing mark", () => {
    const record = recordIn("day", 'tagged: hub "left by "JR"');
    expect(record.faults.map(({ code }) => code)).toEqual(["unreadable-value", "unclosed-string"]);
  });
});

describe("money", () => {
  it("is a number and a code", () => {
    expect(said(readRecord("part", "price: 62.00 GBP"))).toEqual({ value: "62.00 GBP" });
    expect(said(readRecord("part", "price: 62.00GBP"))).toEqual({ value: "62.00 GBP" });
    expect(said(readRecord("vehicle", "labour: 40 GBP/h"))).toEqual({ value: "40 GBP/h" });
    expect(said(readRecord("vehicle", "rate: 1 EUR = 0.86 GBP"))).toEqual({
      value: { from: "1 EUR", to: "0.86 GBP" },
    });
  });

  it.each([
    ["price: 62.00", ["missing-value", ""]],
    ["price: 62.00 gbp", ["unreadable-value", "gbp", "GBP", true]],
    ["price: 62.00 pounds", ["unreadable-value", "pounds"]],
    ["price: GBP 62.00", ["unreadable-value", "GBP"]],
    ["price: £62.00", ["unreadable-value", "£"]],
    ["price: 62,00 GBP", ["decimal-comma", "62,00", "62.00", true]],
  ])("%s is refused", (line, expected) => expect(refused(line)).toEqual(expected));
});
