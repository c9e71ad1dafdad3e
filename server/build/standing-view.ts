import type { Standing } from "./standing.ts";

/** A standing that looks everything up in another one, when it is asked. */
export class StandingView implements Standing {
  protected readonly standing: Standing;

  constructor(standing: Standing) {
    this.standing = standing;
  }

  get gathered(): Standing["gathered"] {
    return this.standing.gathered;
  }
  get names(): Standing["names"] {
    return this.standing.names;
  }
  get definitions(): Standing["definitions"] {
    return this.standing.definitions;
  }
  get date(): Standing["date"] {
    return this.standing.date;
  }
  get parts(): Standing["parts"] {
    return this.standing.parts;
  }
  get joints(): Standing["joints"] {
    return this.standing.joints;
  }
  get readings(): Standing["readings"] {
    return this.standing.readings;
  }
  get systems(): Standing["systems"] {
    return this.standing.systems;
  }
  get settings(): Standing["settings"] {
    return this.standing.settings;
  }
  get tests(): Standing["tests"] {
    return this.standing.tests;
  }
  get holdTests(): Standing["holdTests"] {
    return this.standing.holdTests;
  }
  get snags(): Standing["snags"] {
    return this.standing.snags;
  }
  get jobs(): Standing["jobs"] {
    return this.standing.jobs;
  }
  get holds(): Standing["holds"] {
    return this.standing.holds;
  }
  get gauges(): Standing["gauges"] {
    return this.standing.gauges;
  }
  get supply(): Standing["supply"] {
    return this.standing.supply;
  }
  get calculated(): Standing["calculated"] {
    return this.standing.calculated;
  }
  get disturbed(): Standing["disturbed"] {
    return this.standing.disturbed;
  }
  get lost(): Standing["lost"] {
    return this.standing.lost;
  }
}
