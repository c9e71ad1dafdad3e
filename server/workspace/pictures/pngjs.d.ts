/** The part of pngjs that photos are read and written with; the package brings no types of its own. */
declare module "pngjs" {
  interface Pixels {
    readonly width: number;
    readonly height: number;
    /** Red, green, blue and opacity of each pixel, a byte each, whatever the file holds. */
    readonly data: Uint8Array;
  }

  export const PNG: {
    readonly sync: {
      readonly read: (file: Uint8Array) => Pixels;
      readonly write: (picture: Pixels) => Uint8Array;
    };
  };
}
