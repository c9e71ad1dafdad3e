/** What the first bytes of a picture file say: its kind, its size in pixels, and how it was held. */

export type PictureKind = "jpeg" | "png" | "gif" | "webp";

export interface PictureHead {
  readonly kind: PictureKind;
  /** In pixels, as stored; undefined where the file does not say it in a form that is read here. */
  readonly size: { readonly width: number; readonly height: number } | undefined;
  /** How the picture is turned for showing: 1 as it is, to 8, as Exif (JEITA CP-3451) numbers it. */
  readonly orientation: number;
}

/** Undefined where the bytes are no picture of a kind that a browser shows. */
export function readPictureHead(file: Buffer): PictureHead | undefined {
  if (file.subarray(0, 8).equals(PNG_SIGNATURE) && file.length >= 24)
    return upright("png", { width: file.readUInt32BE(16), height: file.readUInt32BE(20) });
  const start = file.toString("latin1", 0, 12);
  if (/^GIF8[79]a/.test(start) && file.length >= 10)
    return upright("gif", { width: file.readUInt16LE(6), height: file.readUInt16LE(8) });
  if (/^RIFF.{4}WEBP$/s.test(start)) return upright("webp", undefined);
  return file.length >= 4 && file.readUInt16BE(0) === 0xffd8 ? readJpegHead(file) : undefined;
}

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

function upright(kind: PictureKind, size: PictureHead["size"]): PictureHead {
  return { kind, size, orientation: 1 };
}

/** Walks the segments of a JPEG (ITU-T T.81, annex B) up to the frame header, which holds the size. */
function readJpegHead(file: Buffer): PictureHead {
  let orientation = 1;
  for (let at = 2; at + 9 < file.length && file[at] === 0xff; ) {
    const marker = file[at + 1] ?? 0;
    const length = file.readUInt16BE(at + 2);
    if (isFrame(marker)) {
      const size = { height: file.readUInt16BE(at + 5), width: file.readUInt16BE(at + 7) };
      return { kind: "jpeg", size, orientation };
    }
    if (marker === 0xe1) orientation = readOrientation(file.subarray(at + 4, at + 2 + length)) ?? orientation;
    at += 2 + length;
  }
  return { kind: "jpeg", size: undefined, orientation };
}

/** Start of frame: C0 to CF, but for the tables C4 and CC and the reserved C8. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

const ORIENTATION_TAG = 0x0112;

/** From the first directory of an Exif segment, whose bytes are those of a TIFF file. */
function readOrientation(segment: Buffer): number | undefined {
  if (segment.toString("latin1", 0, 6) !== "Exif\0\0") return undefined;
  const tiff = segment.subarray(6);
  if (tiff.length < 14) return undefined;
  const little = tiff.toString("latin1", 0, 2) === "II";
  const short = (at: number) => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const directory = little ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (directory + 2 > tiff.length) return undefined;
  for (let entry = 0; entry < short(directory); entry++) {
    const at = directory + 2 + entry * 12;
    if (at + 12 > tiff.length) return undefined;
    if (short(at) !== ORIENTATION_TAG) continue;
    const value = short(at + 8);
    return value >= 1 && value <= 8 ? value : undefined;
  }
  return undefined;
}
