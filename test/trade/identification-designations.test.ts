import { expect, test } from "vitest";
import { designationsIn } from "../../server/trade/identification/designation.ts";

const read = (text: string) => designationsIn(text).map((each) => each.text);

test.each([
  ["6203, 17 x 40 x 12", ["6203"]],
  ["30204 taper roller, 20 x 47 x 15.25", ["30204"]],
  ["bearing 6203-2RS", ["6203"]],
  ["6205ZZ", ["6205"]],
  ["68-series: 6804 bearing", ["61804"]],
  ["3/8-24 UNF bolt", ["3/8-24 UNF"]],
  ["bolt M8x30, a little bent", ["M8"]],
  ["M10x1.25 LH", ["M10x1.25 LH"]],
  ["2 BA screw", ["2 BA"]],
  ["Woodruff No. 404", ["Woodruff No. 404"]],
  ["parallel key 8 × 7", ["parallel key 8 x 7"]],
  ["520 chain", ["520"]],
  ["chain 12B-1", ["ISO 606 12B"]],
  ["O-ring -210", ["AS568-210"]],
  ["circlip DIN 472 47 x 1.75", ["DIN 472 47 x 1.75"]],
  ["AWG 14 wire", ["AWG 14"]],
  ["185/70R13 tyre", ["185/70R13"]],
  ["6203 or 6204 bearing", ["6203", "6204"]],
  ["6203-C3 bearing", ["6203"]],
  ["6203 NR", ["6203"]],
  ["6203.2z bearing", ["6203"]],
  ["06B-3 chain", ["ISO 606 06B"]],
  ["circlip DIN 471 20", ["DIN 471 20 x 1.2"]],
  ["AS568 210", ["AS568-210"]],
  // What is more than a figure says by itself what it is.
  ["DIN 472 47 x 1.75", ["DIN 472 47 x 1.75"]],
  ["marked ISO 606 12B", ["ISO 606 12B"]],
  ["1.5 mm² wire", ["1.5 mm2"]],
  ["bearing 6203?!", ["6203"]],
  ["a Woodruff 1 x 1.4 mm.", ["Woodruff 1 x 1.4 mm"]],
])("%s names %j", (text, expected) => {
  expect(read(text)).toEqual(expected);
});

test.each([
  ["Ostler 1300 saloon, both sides the same"],
  ["off a saloon of 2004"],
  ["frame number 6204"],
  ["shaft with 520 stamped on it"],
  ["hub of the small saloon"],
  ["part -210 of the drawing"],
  ["bearing 6203-C6"],
  ["bearing 6203-x"],
  ["chain DIN 471"],
  [""],
])("%s names nothing that a table knows", (text) => {
  expect(read(text)).toEqual([]);
});

test("a thread is a bolt's or a nut's", () => {
  const [designation] = designationsIn("M10x1");
  expect(designation?.candidates.map(({ family }) => family.name)).toEqual([
    "external thread",
    "internal thread",
  ]);
});
