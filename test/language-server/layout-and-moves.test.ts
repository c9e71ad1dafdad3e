/** Layout, whole and in part; and photos that keep their place when files move. */
import { expect, test } from "vitest";
import { format } from "../../grammar/printer.ts";
import {
  formatted,
  formattedBehind,
  formattedRange,
} from "../../server/language-server/features/formatting.ts";
import { photosMoved } from "../../server/language-server/features/moved-files.ts";
import { edited, marked } from "./marked-build.ts";

const UNTIDY = "part disc\n    limit:   thickness   min 8.4 mm\n  price:  12.00 GBP\n";

test("a whole file is laid out as `cotter format` does it", () => {
  const { view, text } = marked(UNTIDY);
  expect(edited(text, formatted(view.document))).toBe(format(text));
  expect(format(text)).not.toBe(text);
});

test("lines alone are laid out alone", () => {
  const { view, text } = marked(UNTIDY);
  const range = { start: { line: 2, character: 0 }, end: { line: 3, character: 0 } };
  expect(edited(text, formattedRange(view.document, range))).toBe(
    "part disc\n    limit:   thickness   min 8.4 mm\n  price: 12.00 GBP\n",
  );
});

test("a line is laid out when it has been ended", () => {
  const { view, text, position } = marked("part disc\n    limit:   thickness   min 8.4 mm\n⁞\n");
  expect(edited(text, formattedBehind(view.document, position))).toBe(
    "part disc\n  limit: thickness min 8.4 mm\n\n",
  );
});

const WITH_PHOTOS = `=== log.cotter
vehicle "V"
=== diary/may.cotter
day 2026-05-02
  photo: "photos/a b.png" "lip"
  photo: "photos/c.png"
`;
const AT = "file:///garage/sprint";

function after(moves: { from: string; to: string }[]): string {
  const { snapshot, viewOf } = marked(WITH_PHOTOS);
  const { file } = viewOf("diary/may.cotter");
  return edited(file.document.text, photosMoved(snapshot, moves).get(file) ?? []);
}

test("a photo that moves within the folder is found at its new place", () => {
  const text = after([{ from: `${AT}/photos/a%20b.png`, to: `${AT}/photos/front%20disc.png` }]);
  expect(text).toContain('photo: "photos/front disc.png" "lip"\n  photo: "photos/c.png"');
});

test("so are those in a folder that is renamed", () => {
  const text = after([{ from: `${AT}/photos`, to: `${AT}/pictures/2026` }]);
  expect(text).toContain('"pictures/2026/a b.png"');
  expect(text).toContain('"pictures/2026/c.png"');
});

test("a photo that leaves the folder, or a log that moves, changes no path", () => {
  expect(after([{ from: `${AT}/photos/c.png`, to: "file:///elsewhere/c.png" }])).toContain('"photos/c.png"');
  expect(after([{ from: `${AT}/diary/may.cotter`, to: `${AT}/2026/may.cotter` }])).toContain(
    '"photos/c.png"',
  );
});
