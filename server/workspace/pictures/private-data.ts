/**
 * A picture without what it says of its taker: place, time, camera, thumbnails, comments. Nothing is encoded anew; what
 * the picture needs to look as it does stays, its orientation among it.
 */
import type { PictureHead } from "./picture-file.ts";

/** Undefined where the file is not built as its kind asks, so that nobody can tell what is in it. */
export function withoutPrivateData(file: Buffer, { kind, orientation }: PictureHead): Buffer | undefined {
  try {
    switch (kind) {
      case "jpeg":
        return cleanJpeg(file, orientation);
      case "png":
        return cleanPng(file);
      case "gif":
        return cleanGif(file);
      case "webp":
        return cleanWebp(file);
    }
  } catch (error) {
    // A length that leads beyond the end of the file.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;

/** Segments as ITU-T T.81, annex B, has them; what stands behind the end of the image is left out. */
function cleanJpeg(file: Buffer, orientation: number): Buffer | undefined {
  const kept = [file.subarray(0, 2), ...(orientation === 1 ? [] : [orientationSegment(orientation)])];
  const whole = () => Buffer.concat([...kept, Buffer.from([0xff, END_OF_IMAGE])]);
  let scanned = false;
  for (let at = 2; at < file.length; ) {
    const marker = file[at + 1];
    if (file[at] !== 0xff || marker === undefined) return undefined;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === END_OF_IMAGE) return whole();
    let end = at + 2 + file.readUInt16BE(at + 2);
    if (end > file.length) return undefined;
    if (marker === START_OF_SCAN) {
      end = endOfScan(file, end);
      scanned = true;
    }
    const [segment, body] = [file.subarray(at, end), file.subarray(at + 4, end)];
    if (isPartOfPicture(marker, body)) kept.push(isJfif(marker, body) ? jfifAlone(segment) : segment);
    at = end;
  }
  // Cut off, as a copy that was broken off is: what there is of it can be seen.
  return scanned ? whole() : undefined;
}

/** The next marker behind compressed data: no stuffed byte and no restart. */
function endOfScan(file: Buffer, start: number): number {
  for (let at = file.indexOf(0xff, start); at >= 0; at = file.indexOf(0xff, at + 1)) {
    const next = file[at + 1] ?? 0;
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return file.length;
}

/** Of the application segments only those that say how the colours are meant: JFIF, ICC profile, Adobe. */
function isPartOfPicture(marker: number, body: Buffer): boolean {
  if (marker === 0xfe) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  const name = body.toString("latin1", 0, 12);
  return (
    isJfif(marker, body) ||
    (marker === 0xe2 && name.startsWith("ICC_PROFILE\0")) ||
    (marker === 0xee && name.startsWith("Adobe"))
  );
}

function isJfif(marker: number, body: Buffer): boolean {
  return marker === 0xe0 && body.toString("latin1", 0, 5) === "JFIF\0";
}

/** Bytes of a JFIF segment (ITU-T T.871) up to its thumbnail, marker and length included; the last two are its size. */
const JFIF_LENGTH = 18;

/** The segment without its thumbnail, which may show what was cut away from the picture. */
function jfifAlone(whole: Buffer): Buffer {
  if (whole.length < JFIF_LENGTH) return whole;
  const segment = Buffer.from(whole.subarray(0, JFIF_LENGTH));
  segment.writeUInt16BE(JFIF_LENGTH - 2, 2);
  segment.writeUInt16BE(0, JFIF_LENGTH - 2);
  return segment;
}

/** An Exif segment (JEITA CP-3451) that holds the orientation alone. */
function orientationSegment(orientation: number): Buffer {
  const head = Buffer.from("ffe10022457869660000", "hex");
  const tiff = Buffer.from("4d4d002a00000008000101120003000000010000000000000000", "hex");
  tiff.writeUInt16BE(orientation, 18);
  return Buffer.concat([head, tiff]);
}

/** Chunks that the picture needs (PNG specification, third edition); the others are texts, times, Exif and the like. */
const PNG_CHUNKS: ReadonlySet<string> = new Set(
  "IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI bKGD hIST pHYs sPLT acTL fcTL fdAT".split(
    " ",
  ),
);

function cleanPng(file: Buffer): Buffer | undefined {
  const kept = [file.subarray(0, 8)];
  for (let at = 8; at < file.length; ) {
    const end = at + 12 + file.readUInt32BE(at);
    if (end > file.length) return undefined;
    const type = file.toString("latin1", at + 4, at + 8);
    if (PNG_CHUNKS.has(type)) kept.push(file.subarray(at, end));
    if (type === "IEND") return Buffer.concat(kept);
    at = end;
  }
  return undefined;
}

/** Blocks as GIF89a has them: comments and applications go, but for the one that makes it play again. */
function cleanGif(file: Buffer): Buffer | undefined {
  const first = 13 + colourTable(file.readUInt8(10));
  const kept = [file.subarray(0, first)];
  for (let at = first; at < file.length; ) {
    const introducer = file[at];
    if (introducer === 0x3b) return Buffer.concat([...kept, file.subarray(at, at + 1)]);
    if (introducer === 0x2c) {
      const end = endOfSubBlocks(file, at + 11 + colourTable(file.readUInt8(at + 9)));
      kept.push(file.subarray(at, end));
      at = end;
    } else if (introducer === 0x21) {
      const end = endOfSubBlocks(file, at + 2);
      const label = file[at + 1];
      const plays = label === 0xff && file.toString("latin1", at + 3, at + 14) === "NETSCAPE2.0";
      if (label === 0xf9 || plays) kept.push(file.subarray(at, end));
      at = end;
    } else return undefined;
  }
  return undefined;
}

function colourTable(flags: number): number {
  return (flags & 0x80) === 0 ? 0 : 3 * 2 ** ((flags & 7) + 1);
}

function endOfSubBlocks(file: Buffer, start: number): number {
  let at = start;
  for (let length = file.readUInt8(at); length > 0; length = file.readUInt8(at)) at += 1 + length;
  return at + 1;
}

const WEBP_CHUNKS: ReadonlySet<string> = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"]);
/** Bits of the extended header that announce Exif and XMP. */
const ANNOUNCED = 0x0c;

/** Chunks as RFC 9649 has them. */
function cleanWebp(file: Buffer): Buffer | undefined {
  const kept: Buffer[] = [];
  const whole = Math.min(file.length, 8 + file.readUInt32LE(4));
  for (let at = 12; at + 8 <= whole; ) {
    const length = file.readUInt32LE(at + 4);
    const end = at + 8 + length + (length % 2);
    if (at + 8 + length > file.length) return undefined;
    const type = file.toString("latin1", at, at + 4);
    const chunk = Buffer.from(file.subarray(at, end));
    if (type === "VP8X") chunk.writeUInt8(chunk.readUInt8(8) & ~ANNOUNCED, 8);
    if (WEBP_CHUNKS.has(type)) kept.push(chunk);
    at = end;
  }
  if (kept.length === 0) return undefined;
  const head = Buffer.from(file.subarray(0, 12));
  const body = Buffer.concat(kept);
  head.writeUInt32LE(4 + body.length, 4);
  return Buffer.concat([head, body]);
}
