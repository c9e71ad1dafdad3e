/** The figures by which readings, gauges and joints are judged, where no table of the trade has them. */
import { decimal } from "../quantities/decimal.ts";

/** Of a limit's zone: with less left, a reading is near. The vehicle's `near:` says otherwise. */
export const NEAR_SHARE = decimal("0.1");

/** Of a limit's zone: a gauge whose uncertainty is more is coarse for it (common practice, no source). */
export const COARSE_SHARE = 0.1;

/** Of a limit's zone: a gauge whose uncertainty is more hardly measures it (common practice, no source). */
export const COARSEST_SHARE = 0.25;

/** Of a torque's zone: a wrench whose uncertainty is more is coarse for it (common practice, no source). */
export const COARSE_TORQUE_SHARE = 0.25;

/** Of the greatest torque that a wrench reads: below, its accuracy is not stated (ISO 6789-1, from memory). */
export const LEAST_SHARE_OF_RANGE = 0.2;

/** A slip of a decimal is ten; the thing itself may be worn, so anything from this factor counts (common practice, no source). */
export const SLIP_FACTOR = 8;

/** A torque without a tolerance has this one, in percent (common practice, no source). */
export const TORQUE_TOLERANCE = 10;

/** Of a fuse's rating: a steady load above makes it tire (80 % rule, common practice, no source). */
export const FUSE_SHARE = 0.8;

/** Of what a system holds: a filling of less is a topping up, and makes old fluid no younger (common practice, no source). */
export const CHANGE_SHARE = 0.5;
