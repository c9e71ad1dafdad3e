/** The records in git of the builds of a session. Git is started only while the user trusts the folders. */
import type { BuildRecord } from "../history/build-record.ts";
import { sayGitFault } from "../history/git-fault.ts";
import type { WrittenFact, WrittenLater } from "../history/written-later.ts";
import type { Host } from "./host.ts";

export class Records {
  trusted: boolean;
  private readonly host: Host;
  private readonly report: (error: unknown) => void;
  private readonly records = new Map<string, Promise<BuildRecord | undefined>>();
  private readonly here = new Map<string, BuildRecord>();
  /** Files that git is being asked about. */
  private readonly asked = new Set<string>();
  /** What has been said of a folder: a hover asks again and again. */
  private readonly said = new Set<string>();

  /** @param report takes what a look in the background fails with */
  constructor(host: Host, trusted: boolean, report: (error: unknown) => void) {
    this.host = host;
    this.trusted = trusted;
    this.report = report;
  }

  /** The record of a build by its folder; undefined without trust, and of a folder that is not on this machine. */
  async of(folder: string): Promise<BuildRecord | undefined> {
    if (!this.trusted) return undefined;
    const known = this.records.get(folder) ?? this.host.recordOf?.(folder) ?? Promise.resolve(undefined);
    this.records.set(folder, known);
    const record = await known;
    if (record !== undefined) this.here.set(folder, record);
    return record;
  }

  /**
   * Whether a fact was written later than its day, as far as that is known at once: git is asked meanwhile, so that
   * the next answer knows it.
   */
  writtenLater(folder: string, fact: WrittenFact): WrittenLater | undefined {
    if (!this.trusted) return undefined;
    void this.lookAt(folder, fact.file).catch(this.report);
    return this.here.get(folder)?.writtenLater.known(fact);
  }

  private async lookAt(folder: string, file: string): Promise<void> {
    const key = `${folder} ${file}`;
    if (this.asked.has(key)) return;
    this.asked.add(key);
    try {
      const fault = await (await this.of(folder))?.writtenLater.lookAt(file);
      if (fault !== undefined) this.sayOnce(folder, sayGitFault(fault));
    } finally {
      this.asked.delete(key);
    }
  }

  private sayOnce(folder: string, words: string): void {
    const key = `${folder} ${words}`;
    if (!this.said.has(key)) this.report(words);
    this.said.add(key);
  }
}
