/** A photo as the book takes it in: read and made smaller elsewhere, since reports know no files. */
export type BookPhoto =
  | {
      readonly is: "picture";
      /** `data:image/…;base64,…` */
      readonly uri: string;
      /** In pixels; undefined where it is not known. */
      readonly size: { readonly width: number; readonly height: number } | undefined;
    }
  | { readonly is: "missing"; readonly why: string };
