/** The photos of a book: from inside the folder only, made smaller, the right way up. */
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import jpeg from "jpeg-js";
import { PNG } from "pngjs";
import { describe, expect, it } from "vitest";
import { readPhotos } from "../../server/workspace/pictures/photos.ts";
import { readPictureHead } from "../../server/workspace/pictures/picture-file.ts";
import type { Pixels } from "../../server/workspace/pictures/scale-picture.ts";
import { scaled, turned } from "../../server/workspace/pictures/scale-picture.ts";
import { folderWith } from "../command-line/program.ts";

/** Opaque pixels, given by their red alone. */
function grey(width: number, reds: readonly number[]): Pixels {
  return {
    width,
    height: reds.length / width,
    data: Uint8Array.from(reds.flatMap((red) => [red, red, red, 255])),
  };
}

function redsOf({ data }: Pixels): readonly number[] {
  return [...data].filter((_, index) => index % 4 === 0);
}

function plainPng(width: number, height: number): Uint8Array {
  return PNG.sync.write({ width, height, data: Buffer.alloc(width * height * 4, 200) });
}

describe("a picture made smaller", () => {
  it("has in each pixel the mean of those it covers", () => {
    expect(redsOf(scaled(grey(4, [0, 100, 200, 200, 100, 0, 200, 200]), 2))).toEqual([50, 200]);
  });

  it("shares a pixel between two new ones by area", () => {
    // Three columns into two: each new one covers one and a half of the old.
    expect(redsOf(scaled(grey(3, [0, 90, 240]), 2))).toEqual([30, 190]);
  });

  it("takes no colour from what cannot be seen through", () => {
    const picture = { width: 2, height: 1, data: Uint8Array.from([200, 0, 0, 255, 0, 99, 99, 0]) };
    expect([...scaled(picture, 1).data]).toEqual([200, 0, 0, 128]);
  });

  it("stays as it is where it is small enough", () => {
    const picture = grey(2, [1, 2]);
    expect(scaled(picture, 2)).toBe(picture);
  });
});

/** Exif (JEITA CP-3451), tag 0112: where the first row and the first column of the stored picture lie when it is shown. */
describe("a picture turned as its orientation asks", () => {
  const stored = grey(3, [1, 2, 3, 4, 5, 6]);
  it.each([
    [1, 3, [1, 2, 3, 4, 5, 6]],
    [2, 3, [3, 2, 1, 6, 5, 4]],
    [3, 3, [6, 5, 4, 3, 2, 1]],
    [4, 3, [4, 5, 6, 1, 2, 3]],
    [5, 2, [1, 4, 2, 5, 3, 6]],
    [6, 2, [4, 1, 5, 2, 6, 3]],
    [7, 2, [6, 3, 5, 2, 4, 1]],
    [8, 2, [3, 6, 2, 5, 1, 4]],
  ])("%i", (orientation, width, reds) => {
    const shown = turned(stored, orientation);
    expect(shown.width).toBe(width);
    expect(redsOf(shown)).toEqual(reds);
  });
});

describe("the photos of a folder", () => {
  it("are given as they are where they are small", async () => {
    const folder = folderWith({});
    const file = plainPng(40, 30);
    writeFileSync(path.join(folder, "small.png"), file);
    const photos = await readPhotos(folder, ["small.png"]);
    expect(photos.get("small.png")).toEqual({
      is: "picture",
      uri: `data:image/png;base64,${Buffer.from(file).toString("base64")}`,
      size: { width: 40, height: 30 },
    });
  });

  it("are made smaller where they are large, as PNG and as JPEG, and turned upright", async () => {
    const folder = folderWith({});
    writeFileSync(path.join(folder, "large.png"), plainPng(3200, 400));
    const { data } = jpeg.encode({ width: 2400, height: 600, data: Buffer.alloc(2400 * 600 * 4, 90) }, 60);
    writeFileSync(path.join(folder, "large.jpg"), withOrientation(data, 6));
    const photos = await readPhotos(folder, ["large.png", "large.jpg"]);
    expect(sizeOf(photos.get("large.png"))).toEqual({ width: 1600, height: 200 });
    expect(sizeOf(photos.get("large.jpg"))).toEqual({ width: 400, height: 1600 });
  });

  it("are not read from outside it, links followed", async () => {
    const outside = folderWith({});
    writeFileSync(path.join(outside, "other.png"), plainPng(2, 2));
    const folder = folderWith({});
    mkdirSync(path.join(folder, "photos"));
    symlinkSync(path.join(outside, "other.png"), path.join(folder, "photos/linked.png"));
    const paths = [
      path.join(outside, "other.png"),
      "../other.png",
      "photos/linked.png",
      "photos",
      "none.png",
    ];
    for (const photo of (await readPhotos(folder, paths)).values())
      expect(photo).toEqual({ is: "missing", why: "there is no such file in the build's folder" });
  });

  it("are told why they cannot be shown", async () => {
    const folder = folderWith({ "text.png": "no picture", "page.svg": "<svg/>" });
    writeFileSync(path.join(folder, "broken.png"), plainPng(2000, 2000).subarray(0, 500));
    const photos = await readPhotos(folder, ["text.png", "page.svg", "broken.png"]);
    expect([...photos.values()]).toEqual([
      { is: "missing", why: "the file is no JPEG, PNG, GIF or WebP picture" },
      { is: "missing", why: "the file is no JPEG, PNG, GIF or WebP picture" },
      { is: "missing", why: "the file cannot be read" },
    ]);
  });
});

function sizeOf(photo: unknown): unknown {
  const { uri } = photo as { readonly uri: string };
  return readPictureHead(Buffer.from(uri.split(",")[1] ?? "", "base64"))?.size;
}

/** The JPEG with an Exif segment behind its first marker that holds the orientation alone. */
function withOrientation(file: Uint8Array, orientation: number): Buffer {
  const tiff = Buffer.from("49492a000800000001001201030001000000000000000000 0000".replace(" ", ""), "hex");
  tiff.writeUInt16LE(orientation, 18);
  const body = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([file.subarray(0, 2), head, body, file.subarray(2)]);
}
