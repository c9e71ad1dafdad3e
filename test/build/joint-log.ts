import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { Securing } from "../../server/build/securing.ts";
import { securing } from "../../server/build/securing.ts";
import { lineOf, textAt } from "../../server/build/source.ts";
import type { JointState } from "../../server/build/states.ts";
import type { TreeNode } from "../../server/build/tree/node.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

const TODAY = "2026-06-01" as IsoDate;

/** A log as one file, read as of 2026-06-01. */
export function readJoints(text: string): JointLog {
  return new JointLog(readBuild([{ path: "log.cotter", document: Document.read(text) }], { clock: TODAY }));
}

/** A build asked about its joints by their paths. */
export class JointLog {
  readonly build: Build;

  constructor(build: Build) {
    this.build = build;
  }

  state(path: string): JointState {
    const state = this.build.standing.joints.get(this.node(path));
    if (state === undefined) throw new Error(`${path} is no joint`);
    return state;
  }

  stage(path: string): string {
    return this.state(path).stage;
  }

  securing(path: string): Securing {
    return securing(this.build.standing, this.node(path));
  }

  /** The codes of what a joint wants; those of its specification by their own. */
  wants(path: string): readonly string[] {
    return this.securing(path).wanting.map((want) =>
      want.code === "joint-wrong" ? want.fault.code : want.code,
    );
  }

  /** Findings of the codes, each as `code: the text that it stands at`. */
  found(...codes: readonly string[]): readonly string[] {
    return this.build.findings
      .filter(({ code }) => codes.length === 0 || codes.includes(code))
      .map(({ code, place, standing }) => `${standing === "past" ? "past " : ""}${code}: ${textAt(place)}`);
  }

  /** Every code found, with its line. */
  codes(): readonly string[] {
    return this.build.findings.map(({ code, place }) => `${lineOf(place)} ${code}`);
  }

  inHand(path: string): number {
    return this.build.standing.supply.get(this.node(path))?.inHand ?? 0;
  }

  private node(path: string): TreeNode {
    const node = this.build.standing.gathered.tree.at(path);
    if (node === undefined) throw new Error(`nothing is called ${path}`);
    return node;
  }
}
