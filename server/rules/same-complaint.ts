/** Whether two complaints of one rule say the same, of the same place, with the same mends. */
import type { Build } from "../build/build.ts";
import type { Place } from "../build/source.ts";
import type { Complaint } from "./complaint.ts";
import type { Fix } from "./rule.ts";

/** @param build the build of the second one */
export function isSameComplaint(one: Complaint, other: Complaint, build: Build): boolean {
  return (
    one.message === other.message &&
    one.severity === other.severity &&
    one.waivable === other.waivable &&
    isSamePlace(one.place, other.place) &&
    areSame(one.seeAlso, other.seeAlso, isSameRelated) &&
    areSame(one.fixes(build), other.fixes(build), isSameFix)
  );
}

function areSame<T>(one: readonly T[], other: readonly T[], isSame: (a: T, b: T) => boolean): boolean {
  return one.length === other.length && one.every((value, index) => isSame(value, other[index] as T));
}

function isSamePlace(one: Place, other: Place): boolean {
  return one.site === other.site && one.start === other.start && one.end === other.end;
}

type Related = Complaint["seeAlso"][number];

function isSameRelated(one: Related, other: Related): boolean {
  return one.message === other.message && isSamePlace(one.place, other.place);
}

type Edit = Fix["edits"][number];

function isSameFix(one: Fix, other: Fix): boolean {
  return one.title === other.title && one.sure === other.sure && areSame(one.edits, other.edits, isSameEdit);
}

function isSameEdit(one: Edit, other: Edit): boolean {
  return one.text === other.text && isSamePlace(one.place, other.place);
}
