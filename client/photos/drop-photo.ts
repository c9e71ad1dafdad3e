/** A picture that is dropped or pasted into a day becomes a `photo:` of it. */
import type {
  DataTransfer,
  DataTransferFile,
  Disposable,
  DocumentDropEditProvider,
  DocumentPasteEditProvider,
  DocumentSelector,
  Position,
  TextDocument,
  Uri as UriType,
} from "vscode";
import {
  DocumentDropEdit,
  DocumentDropOrPasteEditKind,
  DocumentPasteEdit,
  l10n,
  languages,
  Uri,
  WorkspaceEdit,
  workspace,
} from "vscode";
import type { ShownBuild } from "../shown-build.ts";
import { indentAt, isInDay, lastLineOfRecord } from "./day-lines.ts";
import { linesOf } from "./insert-photo.ts";
import { freePath, pathInside, photoHome } from "./keep-photo.ts";
import { isPhoto, photoFact } from "./photo-names.ts";

const KIND = DocumentDropOrPasteEditKind.Empty.append("cotter", "photo");
const MIME_TYPES = ["text/uri-list", "image/*"];

export function takePhotos(shown: ShownBuild, selector: DocumentSelector): Disposable {
  const dropping: DocumentDropEditProvider = {
    provideDocumentDropEdits: async (document, position, data) => {
      const edit = await editFor(shown, document, position, data);
      return edit && Object.assign(new DocumentDropEdit("", title(), KIND), { additionalEdit: edit });
    },
  };
  const pasting: DocumentPasteEditProvider = {
    provideDocumentPasteEdits: async (document, ranges, data) => {
      const [range] = ranges;
      if (range === undefined || ranges.length > 1) return undefined;
      const edit = await editFor(shown, document, range.start, data);
      return edit && [Object.assign(new DocumentPasteEdit("", title(), KIND), { additionalEdit: edit })];
    },
  };
  const drops = languages.registerDocumentDropEditProvider(selector, dropping, {
    providedDropEditKinds: [KIND],
    dropMimeTypes: MIME_TYPES,
  });
  const pastes = languages.registerDocumentPasteEditProvider(selector, pasting, {
    providedPasteEditKinds: [KIND],
    pasteMimeTypes: MIME_TYPES,
  });
  return { dispose: () => [drops, pastes].map((each) => each.dispose()) };
}

function title(): string {
  return l10n.t("Insert as a photo of the day");
}

/**
 * Writes the facts, and the pictures that come from outside: only when it is carried out, and undone with it. Undefined
 * where the place is in no day, or nothing that came is a picture.
 */
async function editFor(
  shown: ShownBuild,
  document: TextDocument,
  { line }: Position,
  data: DataTransfer,
): Promise<WorkspaceEdit | undefined> {
  const lines = linesOf(document);
  const pictures = await picturesIn(data);
  if (pictures.length === 0 || !isInDay(lines, line)) return undefined;
  const home = await photoHome(shown, document.uri);
  if (home === undefined) return undefined;
  const edit = new WorkspaceEdit();
  const paths = new Set<string>();
  for (const picture of pictures) paths.add(await keptBy(edit, home, picture, paths));
  const facts = [...paths].map((path) => `${indentAt(lines, line)}${photoFact(path, "")}`).join("\n");
  const { range, isEmptyOrWhitespace } = document.lineAt(line);
  if (isEmptyOrWhitespace) edit.replace(document.uri, range, facts);
  else edit.insert(document.uri, document.lineAt(lastLineOfRecord(lines, line)).range.end, `\n${facts}`);
  return edit;
}

/** A file by its address, or a picture that is in no file that can be reached. */
type Picture = { readonly uri: UriType } | { readonly name: string; readonly file: DataTransferFile };

/** The path of a picture in the log; one from outside is created by the edit. */
async function keptBy(
  edit: WorkspaceEdit,
  home: UriType,
  picture: Picture,
  taken: ReadonlySet<string>,
): Promise<string> {
  const inside = "uri" in picture ? pathInside(home, picture.uri) : undefined;
  if (inside !== undefined) return inside;
  const path = await freePath(home, "uri" in picture ? picture.uri.path : picture.name, taken);
  const contents = "uri" in picture ? await workspace.fs.readFile(picture.uri) : picture.file;
  edit.createFile(Uri.joinPath(home, path), { contents, overwrite: false });
  return path;
}

/** Not so the address of a web page, or a file of another machine: what is dropped from there brings its bytes along. */
async function ifReadable(file: UriType): Promise<UriType | undefined> {
  return await workspace.fs.stat(file).then(
    () => file,
    () => undefined,
  );
}

async function picturesIn(data: DataTransfer): Promise<readonly Picture[]> {
  const list = (await data.get("text/uri-list")?.asString()) ?? "";
  const files = list.split(/\r?\n/).filter((line) => line !== "" && !line.startsWith("#"));
  const named = files.map((file) => Uri.parse(file)).filter(({ path }) => isPhoto(path));
  const photos = (await Promise.all(named.map(ifReadable))).filter((photo) => photo !== undefined);
  if (photos.length > 0) return photos.map((uri) => ({ uri }));
  return [...data].flatMap(([type, item]): Picture[] => {
    const [, ending] = /^image\/(png|jpeg|webp|gif|avif|heic)$/.exec(type) ?? [];
    const file = item.asFile();
    if (ending === undefined || file === undefined) return [];
    return [{ name: isPhoto(file.name) ? file.name : `photo.${ending === "jpeg" ? "jpg" : ending}`, file }];
  });
}
