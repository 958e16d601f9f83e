/** How well a temperature is known, and what that leaves open about a limit. */

/** One cause of doubt about a value, as a half-width to either side, K. */
export interface UncertaintyPart {
  is: 'accuracy' | 'residual' | 'resolution' | 'ice-bath' | 'drift' | 'cartons';
  halfWidthKelvin: number;
  /**
   * `stated`: of the instrument in delivery.yaml. `assumed`: what delivery.yaml assumes. `food-thermometers`: the legal
   * accuracy of food thermometers (Cal. Health & Safety Code 114159(c)). `recorders`: EN 12830 class 1, from memory.
   * `checks`: its checks in ice water. `digits`: the digits that were written. `practice`: common practice, no source.
   */
  from: 'stated' | 'assumed' | 'food-thermometers' | 'recorders' | 'checks' | 'digits' | 'practice';
}

/** Parts of the uncertainty of a value, and the room that they ask for before a limit. */
export interface Uncertainty {
  parts: UncertaintyPart[];
  /** Root of the sum of squares of the parts' standard uncertainties, K (JCGM 100:2008, 5.1.2). */
  standardKelvin: number;
  /** Guard band before a limit, K (JCGM 106:2012, 8): for 95 % to one side. */
  guardKelvin: number;
}

/** What a value with its uncertainty says of a range: beyond it, within it, or too near a limit to tell. */
export type LimitAnswer = 'within' | 'above' | 'below' | 'not-decidable';
/** What a difference with its uncertainty says. */
export type ChangeAnswer = 'rose' | 'fell' | 'not-decidable';

/** A check in ice water. */
export interface IceCheck {
  /** When, or before or after all readings; a check of which neither is known is taken for one before them. */
  at?: number;
  use?: 'before' | 'after';
  /** What it showed, less 0 °C, K. */
  errorKelvin: number;
}

/** What is known of one thermometer or sensor. */
export interface InstrumentRecord {
  /** As readings give it; absent for readings that name none. */
  name?: string;
  serial?: string;
  owner?: string;
  certificate?: string;
  /** Error in ice water at each check, K: shown less 0 °C. */
  checks: IceCheck[];
  /** Change of the error from the first check to the last, K. */
  driftKelvin?: number;
}
