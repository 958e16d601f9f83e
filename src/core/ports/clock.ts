/**
 * Says what time it is. The contract: each call gives a Date of its own that is valid, of a year from 1970 to 9999;
 * it never throws. It may stand still or go back, as clocks do.
 */
export type Clock = () => Date;
