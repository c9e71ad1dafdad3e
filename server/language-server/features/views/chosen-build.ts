/** The build that a view shows, with what the views share: its plan, and the places in it as a client finds them. */
import type { Build } from "../../../build/build.ts";
import type { Place, SourceFile } from "../../../build/source.ts";
import type { Plan } from "../../../plan/plan.ts";
import { planOf } from "../../../plan/plan.ts";
import type { BuildSnapshot } from "../../../workspace/build-snapshot.ts";
import type { Spot } from "../../protocol.ts";
import { rangeOf } from "../../to-protocol.ts";

export class ChosenBuild {
  readonly snapshot: BuildSnapshot;
  private readonly spell: (path: string) => string;

  /** @param spell the URI by which the client knows a path */
  constructor(snapshot: BuildSnapshot, spell: (path: string) => string = (path) => path) {
    this.snapshot = snapshot;
    this.spell = spell;
  }

  get build(): Build {
    return this.snapshot.build;
  }

  /** Made once for each build, however many views ask for it. */
  get plan(): Plan {
    return planOf(this.build);
  }

  /** The vehicle's name; without a vehicle, that of the file. */
  get name(): string {
    const [first] = this.snapshot.logs;
    return this.build.standing.gathered.vehicle.title ?? first?.file.path ?? "";
  }

  uriOf(file: SourceFile): string {
    return this.spell(this.snapshot.logOf(file).path);
  }

  spotOf(place: Place): Spot {
    return { uri: this.uriOf(place.site.file), ...rangeOf(place).start };
  }
}

/** The build of a log; of a log of none, or without one, the first that has a vehicle. */
export function chooseBuild(
  builds: readonly BuildSnapshot[],
  ofLog: BuildSnapshot | undefined,
): BuildSnapshot | undefined {
  return ofLog ?? builds.find(({ hasVehicle }) => hasVehicle) ?? builds[0];
}
