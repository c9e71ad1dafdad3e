/** The photos of a book: from inside the folder only, made smaller, the right way up. */
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
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
    symlinkSync(outside, path.join(folder, "photos/folder"));
    const paths = [
      path.join(outside, "other.png"),
      `../${path.basename(outside)}/other.png`,
      "photos/linked.png",
      "photos/folder/other.png",
      "photos",
      "none.png",
    ];
    const missing = { is: "missing", why: "there is no such file in the build's folder" };
    expect([...(await readPhotos(folder, paths)).values()]).toEqual(paths.map(() => missing));
  });

  it("are not opened where they are larger than any camera writes: in bytes, or in pixels by their own word", async () => {
    const folder = folderWith({ "heavy.png": "" });
    truncateSync(path.join(folder, "heavy.png"), 64 * 1024 * 1024 + 1);
    const wide = Buffer.from(plainPng(2, 2));
    // The image header (PNG, 11.2.1): width and height are its first eight bytes, behind signature, length and type.
    wide.writeUInt32BE(20_000, 16);
    wide.writeUInt32BE(20_000, 20);
    writeFileSync(path.join(folder, "wide.png"), wide);
    expect([...(await readPhotos(folder, ["heavy.png", "wide.png"])).values()]).toEqual([
      { is: "missing", why: "the file is too large" },
      { is: "missing", why: "the picture has too many pixels" },
    ]);
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

/** Bytes as their formats ask, with a text that must not be in the book wherever a taker can be told by it. */
describe("what a photo says of its taker does not go into the book", () => {
  const SECRET = "51.4778 N 0.0015 W";

  const embedded = async (name: string, file: Uint8Array): Promise<Buffer> => {
    const folder = folderWith({});
    writeFileSync(path.join(folder, name), file);
    const photo = (await readPhotos(folder, [name])).get(name) as { readonly uri: string };
    return Buffer.from(photo.uri.split(",")[1] ?? "", "base64");
  };
  const segment = (marker: number, body: string): Buffer => {
    const head = Buffer.from([0xff, marker, 0, 0]);
    head.writeUInt16BE(body.length + 2, 2);
    return Buffer.concat([head, Buffer.from(body, "latin1")]);
  };
  const plainJpeg = () =>
    Buffer.from(jpeg.encode({ width: 40, height: 30, data: Buffer.alloc(40 * 30 * 4, 90) }, 60).data);

  it("of a JPEG: Exif, XMP, comments, makers' segments, a second picture behind the first; its pixels stay", async () => {
    const plain = plainJpeg();
    const told = Buffer.concat([
      plain.subarray(0, 2),
      segment(0xe1, `Exif\0\0${SECRET}`),
      segment(0xe1, `http://ns.adobe.com/xap/1.0/\0${SECRET}`),
      segment(0xe2, `MPF\0${SECRET}`),
      segment(0xed, `Photoshop 3.0\0${SECRET}`),
      segment(0xfe, SECRET),
      plain.subarray(2),
      Buffer.from(SECRET),
    ]);
    expect(await embedded("told.jpg", told)).toEqual(plain);
  });

  it("of a JPEG: the thumbnail in its JFIF segment", async () => {
    const plain = plainJpeg();
    const [width, height] = [4, 5];
    const head = Buffer.from(plain.subarray(0, 20));
    expect(head.toString("latin1", 6, 10)).toBe("JFIF");
    const thumbnail = Buffer.alloc(3 * width * height, SECRET);
    head.writeUInt16BE(16 + thumbnail.length, 4);
    head.writeUInt8(width, 18);
    head.writeUInt8(height, 19);
    const told = Buffer.concat([head, thumbnail, plain.subarray(20)]);
    expect(jpeg.decode(told).data).toEqual(jpeg.decode(plain).data);
    expect(await embedded("told.jpg", told)).toEqual(plain);
  });

  it("of a JPEG: its colour profile and which way up it is stay", async () => {
    const plain = plainJpeg();
    const profile = segment(0xe2, "ICC_PROFILE\0\x01\x01 colours");
    const turnedPhoto = withOrientation(Buffer.concat([plain.subarray(0, 2), profile, plain.subarray(2)]), 6);
    const told = Buffer.concat([turnedPhoto.subarray(0, 2), segment(0xfe, SECRET), turnedPhoto.subarray(2)]);
    const clean = await embedded("told.jpg", told);
    expect(clean.includes(SECRET)).toBe(false);
    expect(clean.includes(profile)).toBe(true);
    expect(readPictureHead(clean)).toEqual({
      kind: "jpeg",
      size: { width: 40, height: 30 },
      orientation: 6,
    });
    expect(jpeg.decode(clean).data).toEqual(jpeg.decode(plain).data);
  });

  it("of a JPEG that was cut off", async () => {
    const plain = plainJpeg();
    const exif = segment(0xe1, `Exif\0\0${SECRET}`);
    const told = Buffer.concat([plain.subarray(0, 2), exif, plain.subarray(2, -2)]);
    expect(await embedded("cut.jpg", told)).toEqual(plain);
  });

  it("of a PNG: texts, its time, Exif, and what stands behind its end", async () => {
    const plain = Buffer.from(plainPng(40, 30));
    const chunk = (type: string): Buffer => {
      const body = Buffer.from(type + SECRET, "latin1");
      const length = Buffer.alloc(4);
      length.writeUInt32BE(SECRET.length);
      return Buffer.concat([length, body, Buffer.alloc(4)]);
    };
    const told = Buffer.concat([
      plain.subarray(0, 33),
      ...["tEXt", "zTXt", "iTXt", "eXIf", "tIME", "prVt"].map(chunk),
      plain.subarray(33),
      Buffer.from(SECRET),
    ]);
    expect(await embedded("told.png", told)).toEqual(plain);
  });

  it("of a GIF: comments, and applications but for the one that plays it again", async () => {
    const head = Buffer.from("47494638396101000100800000000000ffffff", "hex");
    const picture = Buffer.from("2c000000000100010000020244010 03b".replace(" ", ""), "hex");
    const block = (label: number, ...parts: readonly string[]): Buffer =>
      Buffer.concat([
        Buffer.from([0x21, label]),
        ...parts.map((part) => Buffer.concat([Buffer.from([part.length]), Buffer.from(part, "latin1")])),
        Buffer.from([0]),
      ]);
    const loop = block(0xff, "NETSCAPE2.0", "\x01\0\0");
    const told = [head, block(0xfe, SECRET), loop, block(0xff, "XMP DataXMP", SECRET), picture];
    expect(await embedded("told.gif", Buffer.concat(told))).toEqual(Buffer.concat([head, loop, picture]));
  });

  it("of a WebP: Exif and XMP, and that they were there", async () => {
    const chunk = (type: string, body: Buffer): Buffer => {
      const head = Buffer.from(`${type}\0\0\0\0`, "latin1");
      head.writeUInt32LE(body.length, 4);
      return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
    };
    const webp = (...chunks: readonly Buffer[]): Buffer => {
      const body = Buffer.concat([Buffer.from("WEBP"), ...chunks]);
      return chunk("RIFF", body);
    };
    const extended = (flags: number) => chunk("VP8X", Buffer.from([flags, 0, 0, 0, 0, 0, 0, 0, 0, 0]));
    const picture = chunk("VP8L", Buffer.from("2f00000000", "hex"));
    const told = webp(
      extended(0x1c),
      picture,
      chunk("EXIF", Buffer.from(SECRET)),
      chunk("XMP ", Buffer.from(SECRET)),
    );
    expect(await embedded("told.webp", told)).toEqual(webp(extended(0x10), picture));
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
