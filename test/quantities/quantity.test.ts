import { describe, expect, test } from "vitest";
import { coherentFloat } from "../../server/quantities/coherent.ts";
import { power, squareRoot } from "../../server/quantities/powers.ts";
import {
  absolute,
  add,
  compare,
  computedQuantity,
  convert,
  divide,
  equal,
  floatIn,
  formatQuantity,
  hasDimension,
  meanOf,
  multiply,
  negate,
  quantity,
  quantityOf,
  subtract,
} from "../../server/quantities/quantity.ts";
import { NO_UNIT, unit } from "../../server/quantities/unit.ts";
import { ok, q, rise, shown } from "./written.ts";

describe("sums", () => {
  test("are exact, and keep the unit of the first and the decimals written", () => {
    expect(shown(add(q("0.1 in"), q("0.2 in")))).toBe("0.3 in");
    expect(shown(add(q("10.05 mm"), q("0.002 mm")))).toBe("10.052 mm");
    expect(shown(add(q("9.10 mm"), q("0.9 mm")))).toBe("10.00 mm");
    expect(shown(add(q("54 mm"), q("0.001 in")))).toBe("54.0254 mm");
    expect(shown(subtract(q("1 in"), q("25.4 mm")))).toBe("0 in");
  });

  test("of unlike dimensions name both", () => {
    expect(shown(add(q("1 N.m"), q("1 mm")))).toBe(
      "cannot add unlike dimensions: torque (N.m) and length (mm)",
    );
    expect(add(q("1 N.m"), q("1 mm"))).toMatchObject({
      fault: "dimension",
      operation: "add",
      left: { dimension: "torque", unit: "N.m" },
      right: { dimension: "length", unit: "mm" },
    });
    expect(shown(add(q("1 deg"), q("1 mm")))).toBe(
      "cannot add unlike dimensions: angle (deg) and length (mm)",
    );
    expect(shown(add(q("1 mm"), q("1")))).toBe("cannot add unlike dimensions: length (mm) and plain number");
  });

  test("of counts add only to themselves", () => {
    expect(shown(add(q("2 turn"), q("1.5 turn")))).toBe("3.5 turn");
    expect(shown(subtract(q("2 turn"), q("1 click")))).toBe(
      "cannot subtract unlike dimensions: count of turns (turn) less count of clicks (click)",
    );
  });
});

describe("conversions", () => {
  test.each([
    ["40 lbf.ft", "N.m", "54.2 N.m"],
    ["3/8 in", "mm", "9.525 mm"],
    ["1-3/16 in", "mm", "30.1625 mm"],
    ["1/3 ft", "in", "4 in"],
    ["12 in", "mm", "304.8 mm"],
    ["22 psi", "bar", "1.52 bar"],
    ["2.0 bar", "psi", "29.0 psi"],
    ["5 kgf.m", "N.m", "49.0 N.m"],
    ["90 arcmin", "deg", "1.5 deg"],
    ["50 %", "", "0.5"],
    ["24 month", "year", "2 year"],
    ["-40 degC", "degF", "-40 degF"],
    ["212 °F", "°C", "100 °C"],
    ["300 K", "degC", "26.85 degC"],
    ["60 rpm", "Hz", "1 Hz"],
  ])("%s in %s is %s", (text, to, result) => {
    expect(shown(convert(q(text), ok(quantity(1, to)).unit))).toBe(result);
  });

  test("a month has no fixed number of days", () => {
    expect(shown(convert(q("12 month"), unit("d")))).toBe(
      "cannot convert month to d: a month and a year have no fixed number of days; count them from a date",
    );
  });

  test("nor have days a number of months", () => {
    expect(convert(q("30 d"), unit("month"))).toMatchObject({ fault: "calendar", operation: "convert" });
    expect(convert(q("30 d"), unit("mm"))).toMatchObject({ fault: "dimension", operation: "convert" });
    expect(convert(q("3 month"), unit("mm"))).toMatchObject({ fault: "dimension" });
  });

  test("of unlike dimensions name both", () => {
    expect(shown(convert(q("3 mm"), unit("kg")))).toBe(
      "cannot convert unlike dimensions: length (mm) to mass (kg)",
    );
  });
});

describe("torque and energy", () => {
  test("are different, whatever the base units say", () => {
    expect(shown(add(q("1 N.m"), q("1 J")))).toBe(
      "cannot add unlike dimensions: torque (N.m) and energy (J)",
    );
    expect(shown(convert(q("54 N.m"), unit("J")))).toBe(
      "cannot convert unlike dimensions: torque (N.m) to energy (J)",
    );
    expect(compare(q("1 N.m"), q("1 J"))).toMatchObject({ fault: "dimension" });
  });

  test("a product of force and length may be either; it is joules only when asked", () => {
    const product = ok(multiply(q("216 N"), q("250 mm")));
    expect(product.dimension.name).toBe("torque_or_energy");
    expect(shown(product)).toBe("54000 N.mm");
    expect(shown(convert(product, unit("N.m")))).toBe("54 N.m");
    expect(shown(convert(product, unit("J")))).toBe("54 J");
    expect(ok(add(q("1 N.m"), product)).dimension.name).toBe("torque");
    expect(ok(add(product, q("1 J"))).dimension.name).toBe("energy");
    expect(ok(subtract(product, q("1 J"))).dimension.name).toBe("energy");
    expect(ok(subtract(q("100 N.m"), product)).dimension.name).toBe("torque");
    expect(hasDimension(product, "torque") && hasDimension(product, "energy")).toBe(true);
  });

  test("once read as a torque it is no energy any more", () => {
    const torque = ok(convert(ok(multiply(q("100 N"), q("1 m"))), unit("N.m")));
    expect(shown(convert(torque, unit("J")))).toBe(
      "cannot convert unlike dimensions: torque (N.m) to energy (J)",
    );
  });

  test("a torque times a bare number is a torque", () => {
    expect(ok(multiply(q("2"), q("54 N.m"))).dimension.name).toBe("torque");
    expect(ok(divide(q("54 N.m"), q("2"))).dimension.name).toBe("torque");
    expect(ok(multiply(q("10 %"), q("54 N.m"))).dimension.name).toBe("torque");
  });
});

describe("temperatures", () => {
  test("a difference of two readings is a difference", () => {
    const difference = ok(subtract(q("78 degC"), q("20 degC")));
    expect(difference.dimension.name).toBe("temperature_difference");
    expect(shown(difference)).toBe("58 K");
    expect(shown(subtract(q("212 degF"), q("32 degF")))).toBe("180 degF");
    expect(shown(subtract(q("20 degC"), q("68 degF")))).toBe("0 K");
  });

  test("two readings do not add; a reading and a difference do, in the scale of the reading", () => {
    expect(shown(add(q("20 degC"), q("5 degC")))).toBe(
      "cannot add two temperature readings: temperature (degC) and temperature (degC); a difference is written in K",
    );
    expect(shown(add(q("20 degC"), q("5 K")))).toBe("25 degC");
    expect(shown(add(q("5 K"), q("20 degC")))).toBe("25 degC");
    expect(shown(subtract(q("20 degC"), q("5 K")))).toBe("15 degC");
    expect(shown(add(q("68 degF"), q("10 K")))).toBe("86 degF");
    expect(subtract(rise("5 degC"), q("20 degC"))).toMatchObject({
      fault: "dimension",
      operation: "subtract",
    });
    expect(add(q("20 degC"), q("5 degC"))).toMatchObject({ fault: "temperature-readings", operation: "add" });
    expect(add(q("20 degC"), q("5 mm"))).toMatchObject({ fault: "dimension" });
    expect(hasDimension(q("20 degC"), "temperature")).toBe(true);
    expect(hasDimension(q("300 K"), "temperature")).toBe(true);
    expect(hasDimension(rise("20 degC"), "temperature")).toBe(false);
    expect(hasDimension(rise("20 degC"), "temperature_difference")).toBe(true);
    expect(hasDimension(q("20 mm"), "temperature")).toBe(false);
  });

  test("a difference converts without the offset of the scale", () => {
    expect(shown(convert(rise("10 degC"), unit("degF")))).toBe("18 degF");
    expect(shown(convert(ok(subtract(q("78 degC"), q("20 degC"))), unit("degC")))).toBe("58 degC");
  });

  test("a reading is neither multiplied nor divided", () => {
    expect(multiply(q("20 degC"), q("2"))).toEqual({
      fault: "temperature-readings",
      operation: "multiply",
      message: "a temperature reading (degC) cannot be multiplied; a temperature difference is written in K",
    });
    expect(divide(q("1"), q("20 degF"))).toEqual({
      fault: "temperature-readings",
      operation: "divide",
      message: "a temperature reading (degF) cannot be divided; a temperature difference is written in K",
    });
    expect(shown(multiply(q("1.2e-5 1/K"), q("50 K")))).toBe("0.0006");
  });

  test("readings compare and average, also across scales", () => {
    expect(equal(q("100 degC"), q("212 degF"))).toBe(true);
    expect(compare(q("20 degC"), q("300 K"))).toBe(-1);
    expect(compare(q("373.15 K"), q("100 degC"))).toBe(0);
    expect(compare(rise("10 degC"), rise("18 degF"))).toBe(0);
    expect(compare(rise("20 degC"), q("300 degC"))).toMatchObject({ fault: "dimension" });
    expect(shown(meanOf([q("20 degC"), q("22 degC"), q("24 degC")]))).toBe("22 degC");
    expect(shown(meanOf([q("20 degC"), q("70 degF")]))).toBe("20.6 degC");
    expect(meanOf([q("20 mm"), q("1 kg")])).toMatchObject({ fault: "dimension", operation: "subtract" });
  });

  test("a sign before a reading is below zero of its scale", () => {
    expect(shown(negate(q("5 degC")))).toBe("-5 degC");
  });
});

describe("products and quotients take the unit a practitioner would choose", () => {
  test.each([
    ["10 mm", "2.5 mm", "25 mm2"],
    ["10 mm", "2.5 m", "25000 mm2"],
    ["100 N", "250 mm", "25000 N.mm"],
    ["100 psi", "2 in2", "200 lbf"],
    ["100 bar", "2000 mm2", "20000 N"],
    ["30 mph", "2 h", "60 mile"],
    ["12 V", "5 A", "60 W"],
    ["5 A", "2 ohm", "10 V"],
    ["20 N/mm", "25 mm", "500 N"],
    ["5 %", "100 N", "5 N"],
    ["4", "1.25 mm", "5 mm"],
    ["90 km/h", "0.5 h", "45 km"],
    ["250 mm", "100 N", "25000 mm.N"],
    ["10 A", "2 s", "20 A.s"],
    ["4 mm", "50 %", "2 mm"],
    // A horsepower is 550 lbf.ft/s; inches, feet and pounds on either side make the result imperial.
    ["10 lbf", "2 ft/s", "0.0364 hp"],
    ["10 lbf", "2 m/s", "0.119 hp"],
    ["10 N", "2 ft/s", "0.00817 hp"],
    ["1 kg", "1 m/s2", "1 N"],
    ["1 lb", "1 ft/s2", "0.0311 lbf"],
  ])("%s times %s is %s", (a, b, result) => {
    expect(shown(multiply(q(a), q(b)))).toBe(result);
  });

  test.each([
    ["55 W", "12 V", "4.58 A"],
    ["54 N.m", "300 mm", "180 N"],
    ["60 Ah", "5 A", "12 h"],
    ["12 V", "5 A", "2.4 ohm"],
    ["12 mm", "5 mm", "2.4"],
    ["1 in", "1 mm", "25.4"],
    ["500 N", "25 mm", "20 N/mm"],
    ["500 N", "25 mm2", "20 N/mm2"],
    ["300 lbf", "2 in2", "150 lbf/in2"],
    ["10 km", "2 h", "5 km/h"],
    ["1 mm", "4 mm3", "0.25 1/mm2"],
    ["1", "2 mm", "0.5 1/mm"],
    ["10 W", "5 m/s", "2 N"],
    ["10 hp", "5 mph", "750 lbf"],
    ["10 lbf", "2 in", "5 lbf/in"],
    ["10 kg", "2 l", "5 kg/l"],
    ["10 l", "2 min", "5 l/min"],
    ["4 mm", "50 %", "8 mm"],
  ])("%s over %s is %s", (a, b, result) => {
    expect(shown(divide(q(a), q(b)))).toBe(result);
  });

  test("nothing is divided by zero", () => {
    const byZero = { fault: "division-by-zero", message: "division by zero" };
    expect(divide(q("1 mm"), q("0 s"))).toEqual({ ...byZero, operation: "divide" });
    expect(power(q("0"), -1)).toEqual({ ...byZero, operation: "power" });
    expect(shown(power(q("0"), 2))).toBe("0");
    expect(power(q("0 mm"), -1)).toMatchObject({ fault: "division-by-zero" });
  });

  test("powers and roots", () => {
    expect(shown(power(q("12 mm"), 3))).toBe("1728 mm3");
    expect(shown(power(q("2 s"), -2))).toBe("0.25 1/s2");
    expect(shown(power(q("12 mm"), 0))).toBe("1");
    expect(shown(power(q("2"), 0.5))).toBe("1.41");
    expect(shown(squareRoot(q("144 mm2")))).toBe("12 mm");
    expect(shown(squareRoot(ok(divide(q("20.0 N/mm"), q("250 kg")))))).toBe("8.94 1/s");
    expect(shown(power(q("144 mm2"), 0.5))).toBe("12 mm");
    expect(shown(power(q("12 mm"), 1.5))).toBe(
      "a quantity with a unit takes a whole power of at most 12, not 1.5",
    );
    expect(shown(power(q("2 mm"), 5))).toBe("32 mm^5");
    expect(shown(power(q("4"), 0.5))).toBe("2.00");
    expect(shown(power(q("2"), -1))).toBe("0.500");
    expect(shown(squareRoot(q("-0 mm2")))).toBe("0 mm");
    expect(shown(squareRoot(q("2 mm2")))).toBe("1.41 mm");
    expect(squareRoot(q("20 mm3"))).toEqual({
      fault: "power",
      operation: "power",
      message: "volume (mm3) has no square root: it is not the square of a dimension",
    });
    expect(shown(squareRoot(q("-4 mm2")))).toBe("a negative value has no square root");
    expect(shown(power(q("-8"), 0.3))).toBe("a negative number has no such power");
  });

  test("what grows beyond any workshop is a fault, not an endless number", () => {
    expect(power(q("10"), 1000)).toEqual({
      fault: "magnitude",
      operation: "power",
      message: "the result is beyond 1e300",
    });
    expect(shown(power(q("10"), 1e9))).toBe("a power beyond 1000 is out of reach");
    expect(power(q("1"), 1000)).not.toHaveProperty("fault");
    expect(power(q("1e99 mm"), 4)).toMatchObject({ fault: "magnitude", operation: "multiply" });
    expect(power(q("10 mm"), 13)).toMatchObject({ fault: "power" });
    const large = ok(power(q("10"), 299));
    expect(multiply(large, large)).toMatchObject({ fault: "magnitude" });
    expect(multiply(large, q("10"))).not.toHaveProperty("fault");
    expect(multiply(large, q("100"))).toMatchObject({ fault: "magnitude", operation: "multiply" });
    const twelfth = ok(power(q("1 mm"), 12));
    expect(shown(multiply(twelfth, q("1 mm")))).toBe("a dimension with a power above 12 is out of reach");
    expect(divide(ok(divide(q("1"), twelfth)), q("1 mm"))).toMatchObject({ fault: "power" });
  });
});

describe("comparison is exact across units", () => {
  test("an inch is 25.4 mm, neither more nor less", () => {
    expect(compare(q("1 in"), q("25.4 mm"))).toBe(0);
    expect(compare(q("1 in"), q(`25.4${"0".repeat(28)}1 mm`))).toBe(-1);
    expect(compare(q("60 arcmin"), q("1 deg"))).toBe(0);
  });

  test("unlike dimensions have no order and are never equal", () => {
    expect(compare(q("1 mm"), q("1 kg"))).toMatchObject({ fault: "dimension", operation: "compare" });
    expect(equal(q("1 mm"), q("1 kg"))).toBe(false);
  });
});

describe("printing", () => {
  test("a value as written keeps its zeros and its unit", () => {
    expect(formatQuantity(q("9.10 mm"))).toBe("9.10 mm");
    expect(formatQuantity(q("1.5 °"))).toBe("1.5°");
    expect(formatQuantity(q("5 %"))).toBe("5 %");
    expect(formatQuantity(q("24 Nm"))).toBe("24 Nm");
  });

  test("an inexact result has the figures of its least precise input, at least three", () => {
    expect(shown(convert(q("40 lbf.ft"), unit("N.m")))).toBe("54.2 N.m");
    expect(shown(convert(q("40.000 lbf.ft"), unit("N.m")))).toBe("54.233 N.m");
    expect(shown(divide(q("10.000 mm"), q("3.00 s")))).toBe("3.33 mm/s");
    expect(shown(multiply(q("12.345 mm"), q("6.7891 mm")))).toBe("83.811 mm2");
  });

  test("an exact one is in full, up to three figures more than its input has", () => {
    expect(shown(convert(q("9.99 in"), unit("mm")))).toBe("253.746 mm");
    expect(shown(convert(q("123456.789 in"), unit("mm")))).toBe("3135802.4406 mm");
    expect(shown(convert(q("0.0001 in"), unit("mm")))).toBe("0.00254 mm");
    expect(shown(add(q("1.50 mm"), quantityOf("0.5", unit("mm"))))).toBe("2.00 mm");
  });

  test("what was computed stays inexact, whatever is done with it", () => {
    const [length, warm] = [computedQuantity(2, unit("m"), 3), computedQuantity(20, unit("degC"), 3)];
    const area = computedQuantity(4, unit("mm2"), 3);
    const results = [
      convert(length, unit("mm")),
      convert(warm, unit("degF")),
      add(q("1 mm"), length),
      add(length, q("1 m")),
      add(q("1 m"), length),
      multiply(length, q("3")),
      multiply(q("3"), length),
      squareRoot(area),
      power(computedQuantity(2, NO_UNIT, 3), 2),
    ];
    expect(results.map((result) => ok(result).exact)).toEqual(results.map(() => false));
    expect(ok(add(q("1e30 mm"), q("1e-10 mm"))).exact).toBe(false);
  });

  test("a number as written is exact to 33 digits, and a fraction where its division ends", () => {
    expect(q(`0.${"3".repeat(33)} mm`).exact).toBe(true);
    expect(q(`0.${"3".repeat(34)} mm`).exact).toBe(false);
    expect(q("3/8 in")).toMatchObject({ exact: true });
    expect(q("3/8 in")).not.toHaveProperty("fraction");
    expect(q("1/3 ft").exact).toBe(false);
    expect(shown(convert(negate(q("1/3 ft")), unit("in")))).toBe("-4 in");
    expect(shown(convert(absolute(q("-1/3 ft")), unit("in")))).toBe("4 in");
  });

  test("with the figures asked for", () => {
    expect(formatQuantity(q("54.2327 N.m"), { figures: 2 })).toBe("54 N.m");
    expect(formatQuantity(computedQuantity(27_012.3, unit("N"), 3))).toBe("27000 N");
  });
});

describe("for formulas", () => {
  test("a binary float in a unit asked for, or in SI", () => {
    expect(floatIn(q("1 in"), "mm")).toBe(25.4);
    expect(() => floatIn(q("1 in"), "kg")).toThrow("length (in) to mass (kg)");
    expect(coherentFloat(q("54 mm"))).toBe(0.054);
    expect(coherentFloat(q("180 deg"))).toBe(Math.PI);
    expect(coherentFloat(q("20 degC"))).toBe(293.15);
    expect(coherentFloat(rise("20 degC"))).toBe(20);
    expect(coherentFloat(q("5 %"))).toBe(0.05);
    expect(coherentFloat(q("1 bar"))).toBe(100_000);
    expect(coherentFloat(q("3000 rpm"))).toBe(50);
    expect(coherentFloat(quantityOf(2))).toBe(2);
    // Of several units the angle alone becomes one in radians.
    expect(coherentFloat(q("90 deg/s"))).toBeCloseTo(Math.PI / 2, 12);
    expect(coherentFloat(q("6 N.m/deg"))).toBeCloseTo(6 * (180 / Math.PI), 10);
  });
});

describe("what cannot be read", () => {
  test("is the fault of its number or of its unit", () => {
    expect(quantity("9,12", "mm")).toMatchObject({ fault: "decimal-comma" });
    expect(quantity("9.12", "nm")).toMatchObject({ fault: "unknown-unit", nearest: ["N.m"] });
  });
});
