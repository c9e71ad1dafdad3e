/** Makes a picture smaller, in JavaScript alone; loaded late, since the codecs are large. */
import jpeg from "jpeg-js";
import { PNG } from "pngjs";

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opacity of each pixel, a byte each. */
  readonly data: Uint8Array;
}

/** Of 100: little is seen of what is lost above this. */
const JPEG_QUALITY = 82;

/**
 * The file with its longer side at most `longest` pixels, turned as its orientation asks; throws where it cannot be read.
 * @param orientation 1 to 8, as Exif numbers it
 */
export function scaleFile(
  file: Uint8Array,
  kind: "jpeg" | "png",
  orientation: number,
  longest: number,
): { readonly file: Uint8Array; readonly width: number; readonly height: number } {
  const read = kind === "png" ? PNG.sync.read(file) : jpeg.decode(file, { useTArray: true });
  const { data, ...size } = turned(scaled(read, longest), orientation);
  const written =
    kind === "png"
      ? PNG.sync.write({ data, ...size })
      : jpeg.encode({ data: Buffer.from(data), ...size }, JPEG_QUALITY).data;
  return { file: written, ...size };
}

/** Each new pixel is the mean of those it covers, by area and opacity. A picture that is small enough stays as it is. */
export function scaled(picture: Pixels, longest: number): Pixels {
  const scale = Math.max(picture.width, picture.height) / longest;
  if (scale <= 1) return picture;
  const width = Math.max(1, Math.round(picture.width / scale));
  const height = Math.max(1, Math.round(picture.height / scale));
  const columns = shares(picture.width, width);
  const rows = shares(picture.height, height);
  const data = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      writeMean(picture, rows[y] ?? [], columns[x] ?? [], data, (y * width + x) * 4);
  return { width, height, data };
}

/** For each new pixel along one side: the old ones that it covers, and how much of each. */
function shares(from: number, to: number): (readonly [number, number])[][] {
  const step = from / to;
  return Array.from({ length: to }, (_, index) => {
    const [start, end] = [index * step, Math.min(from, (index + 1) * step)];
    const covered: (readonly [number, number])[] = [];
    for (let at = Math.floor(start); at < end; at++)
      covered.push([at, Math.min(end, at + 1) - Math.max(start, at)]);
    return covered;
  });
}

function writeMean(
  { width, data }: Pixels,
  rows: readonly (readonly [number, number])[],
  columns: readonly (readonly [number, number])[],
  into: Uint8Array,
  at: number,
): void {
  let [red, green, blue, opacity, area] = [0, 0, 0, 0, 0];
  for (const [y, high] of rows)
    for (const [x, wide] of columns) {
      const from = (y * width + x) * 4;
      const weight = high * wide;
      const opaque = weight * (data[from + 3] ?? 0);
      red += opaque * (data[from] ?? 0);
      green += opaque * (data[from + 1] ?? 0);
      blue += opaque * (data[from + 2] ?? 0);
      opacity += opaque;
      area += weight;
    }
  if (opacity === 0) return;
  into[at] = Math.round(red / opacity);
  into[at + 1] = Math.round(green / opacity);
  into[at + 2] = Math.round(blue / opacity);
  into[at + 3] = Math.round(opacity / area);
}

/** The picture as it is shown, by its Exif orientation: 2 to 4 mirrored or upside down, 5 to 8 with sides exchanged too. */
export function turned({ width, height, data }: Pixels, orientation: number): Pixels {
  if (orientation === 1) return { width, height, data };
  const exchanged = orientation >= 5;
  const size = exchanged ? { width: height, height: width } : { width, height };
  const mirroredAcross = [2, 3, 7, 8].includes(orientation);
  const mirroredDown = [3, 4, 6, 7].includes(orientation);
  const into = new Uint8Array(data.length);
  for (let y = 0; y < size.height; y++)
    for (let x = 0; x < size.width; x++) {
      const [column, row] = exchanged ? [y, x] : [x, y];
      const oldX = mirroredAcross ? width - 1 - column : column;
      const oldY = mirroredDown ? height - 1 - row : row;
      const from = (oldY * width + oldX) * 4;
      into.set(data.subarray(from, from + 4), (y * size.width + x) * 4);
    }
  return { ...size, data: into };
}
