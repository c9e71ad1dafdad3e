import { describe, expect, it } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { currentComplaints, inOneLine, readLog, withVehicle } from "./read-log.ts";

/** The one example whose point is that there is no vehicle. */
const asWritten = (code: string, text: string) => (code === "no-vehicle" ? text : withVehicle(text));

describe.each([...catalogue.values()])("the examples of $code", ({ code, bad, good }) => {
  it("bring exactly this one complaint where they are bad", () => {
    const complaints = currentComplaints(readLog(asWritten(code, bad)));
    expect(complaints.map(inOneLine)).toEqual([expect.stringContaining(` ${code}: `)]);
  });

  it("bring none where they are good", () => {
    expect(currentComplaints(readLog(asWritten(code, good))).map(inOneLine)).toEqual([]);
  });
});
