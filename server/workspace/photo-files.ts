/**
 * Which photos are there. A build asks at once, the file port answers later: a photo counts as there until the answer
 * has come, and the builds that asked are then read again.
 */
import type { FileStore } from "./file-store.ts";

export class PhotoFiles {
  private readonly files: FileStore;
  private readonly onMissing: () => void;
  private answers = new Map<string, boolean>();
  private lookups = new Map<string, (photo: string) => boolean>();

  constructor(files: FileStore, onMissing: () => void) {
    this.files = files;
    this.onMissing = onMissing;
  }

  /** Whether a photo, by its path relative to a folder, is a file within it. The same function until an answer changes. */
  within(folder: string): (photo: string) => boolean {
    const known = this.lookups.get(folder);
    if (known !== undefined) return known;
    const lookup = (photo: string) => this.isThere(folder, photo);
    this.lookups.set(folder, lookup);
    return lookup;
  }

  /** Files have come or gone: everything is asked again. */
  forget(): void {
    this.answers = new Map();
    this.lookups = new Map();
    this.onMissing();
  }

  private isThere(folder: string, photo: string): boolean {
    const key = `${folder}\n${photo}`;
    const answer = this.answers.get(key);
    if (answer !== undefined) return answer;
    this.answers.set(key, true);
    void this.ask(folder, photo, key);
    return true;
  }

  private async ask(folder: string, photo: string, key: string): Promise<void> {
    const answers = this.answers;
    const there = await this.files.isFileWithin(folder, photo).catch(() => false);
    // Files may have come or gone since the question.
    if (there || answers !== this.answers) return;
    answers.set(key, false);
    this.lookups.delete(folder);
    this.onMissing();
  }
}
