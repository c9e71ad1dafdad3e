import { describe, expect, test } from "vitest";
import { dimensionNames } from "../../server/quantities/dimension.ts";
import { adviseUnit, allUnits, isUnitFault, readUnit, unit, unitsOf } from "../../server/quantities/unit.ts";

/** The units named in the notation, by dimension. */
const NOTATION: Readonly<Record<string, string>> = {
  length: "m mm µm um km cm dm Mm Gm in thou mil ft yd mile",
  torque: "N.m Nm lbf.ft ft.lbf lbf.in in.lbf ozf.in kgf.m kgf.cm kN.m N·m lbf·ft",
  force: "N kN mN µN MN GN lbf kgf ozf",
  pressure: "bar mbar kbar psi Pa kPa MPa GPa ksi inHg kgf/cm2 N/mm2 lbf/in2",
  temperature: "degC degF K °C °F",
  angle: "deg arcmin arcsec ° '",
  mass: "g kg mg µg lb oz",
  volume: "ml cc l cl dl imp_gal us_gal imp_pt us_pt imp_floz us_floz mm3 in3 mm^3 mm³ L mL",
  stiffness: "N/mm lbf/in kgf/mm",
  power: "W kW MW mW hp PS",
  frequency: "rpm Hz kHz",
  speed: "km/h mph m/s",
  current: "A mA µA",
  voltage: "V mV kV",
  resistance: "ohm Mohm kohm mohm Ω kΩ",
  charge: "Ah mAh A.h",
  energy: "J kJ MJ W.h kW.h",
  time: "s ms min mins h hours d days week weeks minutes seconds",
  calendar: "month months year years",
  ratio: "%",
  area: "mm2 cm2 in2 mm² mm^2",
  volume_flow: "l/min",
  expansion: "1/K",
  turn: "turn",
  click: "click",
  flat: "flat",
  slot: "slot",
  run: "run",
  link: "link",
};

describe("units of the notation", () => {
  test.each(
    Object.entries(NOTATION).flatMap(([dimension, units]) =>
      units.split(" ").map((text) => [text, dimension]),
    ),
  )("%s is a unit of %s", (text, dimension) => {
    const read = readUnit(text ?? "");
    expect(isUnitFault(read) ? read : read.dimension.name).toBe(dimension);
  });

  test("the same text gives the same object, so that reading it again is one look-up", () => {
    expect(readUnit("lbf.ft")).toBe(readUnit("lbf.ft"));
    expect(readUnit("nonsense")).toBe(readUnit("nonsense"));
  });

  test("spellings with one meaning have one factor, and each prints as it was written", () => {
    expect(unit("ft.lbf").factor).toEqual(unit("lbf.ft").factor);
    expect(unit("Nm").factor).toEqual(unit("N.m").factor);
    expect(unit("Nm").symbol).toBe("Nm");
    expect(unit("°C").symbol).toBe("°C");
    expect(unit("lbf·ft").symbol).toBe("lbf.ft");
    expect(unit("mm^2").symbol).toBe("mm2");
    expect(unit("um").symbol).toBe("µm");
    expect(unit("\u03bcm").symbol).toBe(unit("\u00b5m").symbol);
    expect(unit("weeks").symbol).toBe("week");
    expect(unit("mm²").symbol).toBe("mm2");
    expect(unit("mm³").symbol).toBe("mm3");
    expect(unit("mm⁴").symbol).toBe("mm4");
    expect(unit(" mm ").symbol).toBe("mm");
    expect(unit("\u2103").factor).toEqual(unit("degC").factor);
    expect(unit("\u2109").factor).toEqual(unit("degF").factor);
    expect(unit("k\u2126").symbol).toBe(unit("kohm").symbol);
    expect(unit("\u2032").factor).toEqual(unit("arcmin").factor);
    expect(unit("mL").symbol).toBe("ml");
    expect(readUnit("xmL")).toHaveProperty("fault");
  });

  test("prefixes stand only where they are listed", () => {
    for (const text of ["kin", "mlbf", "dg", "cN", "kpsi", "nm", "pF", "mmin", "kK", "mdeg"]) {
      expect(readUnit(text), text).toHaveProperty("fault");
    }
  });

  test("min is the minute, never a thousandth of an inch", () => {
    expect(unit("min").dimension.name).toBe("time");
  });

  test("are imperial where one of their parts is, metric where one is and none is imperial", () => {
    const systems = ["lbf.ft", "N/in", "in/s", "N.m", "mm/s", "deg/s", "1/s", "%"].map(
      (text) => unit(text).system,
    );
    expect(systems).toEqual([
      "imperial",
      "imperial",
      "imperial",
      "metric",
      "metric",
      unit("deg").system,
      unit("s").system,
      unit("%").system,
    ]);
  });

  test("of a force and a length are a torque, of a power and a time an energy, of no more and no less", () => {
    const names = ["N.m", "m.N", "kW.h", "J.%", "N.m.%", "N.m2/m", "J"].map(
      (text) => unit(text).dimension.name,
    );
    expect(names).toEqual(["torque", "torque", "energy", "energy", "torque", "torque_or_energy", "energy"]);
  });

  test("have sixty letters and eight parts at most", () => {
    const sixty = [...new Array(5).fill("imp_floz"), "imp_gal", "imp_gal"].join(".");
    expect(sixty).toHaveLength(60);
    expect(readUnit(sixty)).not.toHaveProperty("fault");
    expect(readUnit(new Array(8).fill("m").join("."))).not.toHaveProperty("fault");
    expect(readUnit(new Array(9).fill("m").join("."))).toMatchObject({ fault: "unknown-unit" });
    const more = [...new Array(6).fill("imp_floz"), "imp_gal"].join(".");
    expect(more).toHaveLength(61);
    expect(readUnit(more)).toMatchObject({ fault: "unknown-unit", nearest: [] });
  });

  test("are remembered by their text, but not without end", () => {
    const text = (spaces: number) => `mm${" ".repeat(spaces)}`;
    const first = readUnit(text(1));
    expect(readUnit(text(1))).toBe(first);
    for (let spaces = 2; spaces < 4100; spaces++) readUnit(text(spaces));
    expect(readUnit(text(1))).not.toBe(first);
    expect(readUnit(text(1))).toEqual(first);
  });

  test("a text fixed in the program that is no unit is a mistake of the program", () => {
    expect(() => unit("furlong")).toThrow("no such unit");
  });
});

describe("what is no unit is answered with the likely one", () => {
  test.each([
    ["nm", "N.m", "nm is nanometre; a torque needs N.m"],
    ["nM", "N.m", "case matters in units: a torque is in N.m"],
    ["NM", "N.m", "case matters in units: a torque is in N.m"],
    ["MM", "mm", "case matters in units: mm"],
    ["Bar", "bar", "case matters in units: bar"],
    ["KW", "kW", "case matters in units: kW"],
    ["PSI", "psi", "case matters in units: psi"],
    ["mpa", "MPa", "case matters in units: MPa"],
    ["RPM", "rpm", "case matters in units: rpm"],
    ["ft lbs", "ft.lbf", "lb is a mass; a torque needs the force lbf"],
    ["ftlb", "ft.lbf", "lb is a mass; a torque needs the force lbf"],
    ["ft-lb", "ft.lbf", "lb is a mass; a torque needs the force lbf"],
    ["lb ft", "lbf.ft", "lb is a mass; a torque needs the force lbf"],
    ["lb.ft", "lbf.ft", "lb is a mass; a torque needs the force lbf"],
    ["kgm", "kgf.m", "kg is a mass; a torque needs the force kgf"],
    ["N m", "N.m", "written N.m"],
    ["N-m", "N.m", "written N.m"],
    ["kNm", "kN.m", "written kN.m"],
    ["inches", "in", "written in"],
    ["C", "degC", "C is the coulomb; a temperature needs degC"],
    ["F", "degF", "F is the farad; a temperature needs degF"],
    ["degc", "degC", "case matters in units: degC"],
    ["kph", "km/h", "written km/h"],
    ["clicks", "click", "written click"],
  ])("%s: %s (%s)", (text, fix, reason) => {
    expect(readUnit(text)).toMatchObject({ nearest: [fix], reason, sure: true });
  });

  test("where two are as likely, both are named and neither is sure", () => {
    expect(readUnit("lbs")).toMatchObject({ nearest: ["lb", "lbf"], sure: false });
    expect(readUnit('"')).toMatchObject({ nearest: ["in", "arcsec"], sure: false });
    expect(readUnit("gallons")).toMatchObject({ nearest: ["imp_gal", "us_gal"], sure: false });
    expect(readUnit("mw")).toMatchObject({ nearest: ["mW", "MW"], sure: false });
  });

  test("a slip of the finger finds the nearest spellings", () => {
    expect(readUnit("arcmim")).toMatchObject({ nearest: ["arcmin"], sure: false });
    expect(readUnit("thuo")).toMatchObject({ nearest: expect.arrayContaining(["thou"]) });
  });

  test.each([
    "",
    " ",
    "constructor",
    "__proto__",
    "toString",
    "N..m",
    ".m",
    "m/",
    "/m",
    "m^99",
    "mm5",
    "1/",
    "N.m.",
    "(m)",
  ])("%o is no unit and breaks nothing", (text) => {
    expect(readUnit(text)).toMatchObject({ fault: "unknown-unit", text });
  });

  test("a long text is refused at once", () => {
    expect(readUnit("N.m".repeat(10_000))).toMatchObject({ fault: "unknown-unit", nearest: [] });
    expect(readUnit(new Array(12).fill("m").join("."))).toMatchObject({ fault: "unknown-unit" });
  });
});

describe("a unit of another dimension than the one due", () => {
  test("a mass where a force is due", () => {
    expect(adviseUnit(unit("kg/cm2"), "pressure")).toEqual({
      nearest: ["kgf/cm2"],
      reason: "kg is a mass; a pressure needs the force kgf",
      sure: true,
    });
    expect(adviseUnit(unit("lb/in"), "stiffness")).toMatchObject({ nearest: ["lbf/in"], sure: true });
    expect(adviseUnit(unit("lb"), "force")).toMatchObject({ nearest: ["lbf"], sure: true });
  });

  test("else the customary units, none of them sure", () => {
    expect(adviseUnit(unit("N.m"), "length")).toEqual({ nearest: ["mm", "in", "thou", "µm"], sure: false });
  });
});

describe("units to offer", () => {
  test("every one offered reads back, in the dimension it is offered for", () => {
    for (const dimension of dimensionNames) {
      for (const text of unitsOf(dimension)) {
        const read = unit(text);
        const family = { torque_or_energy: ["torque", "energy"], temperature_difference: ["temperature"] }[
          dimension as string
        ] ?? [dimension];
        expect(family, text).toContain(read.dimension.name);
      }
    }
    for (const text of allUnits()) expect(readUnit(text), text).not.toHaveProperty("fault");
  });

  test("the customary ones come first and none twice", () => {
    expect(unitsOf("length")[0]).toBe("mm");
    expect(unitsOf("torque").slice(0, 2)).toEqual(["N.m", "lbf.ft"]);
    expect(new Set(allUnits()).size).toBe(allUnits().length);
  });
});
