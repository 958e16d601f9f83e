import type { Line } from '../../model/delivery.js';
import type { Band, TransitWindow } from '../../model/results.js';
import { type Leg, legsOf } from '../legs.js';
import type { Milestones } from '../milestones.js';
import { transitWindowBetween } from '../transit-window.js';

/** A leg with its custody from doors closed to doors opened, and the ranges of the lines aboard. */
export interface LegInCustody extends Leg {
  custody: TransitWindow;
  bands: Band[];
}

/**
 * The legs of a delivery with more than two stops, from the doors closed at each stop to the doors opened at the
 * next. Ends without an event stand in as for the whole; a leg between stops of which nothing is known or planned is left out, and so is
 * one with nothing aboard.
 */
export function legsInCustody(
  milestones: Milestones,
  lines: readonly Line[],
  bands: readonly Band[],
): LegInCustody[] {
  const { stops } = milestones;
  if (stops.length < 3) return [];
  return legsOf(stops, lines).flatMap((leg) => {
    const custody = transitWindowBetween(milestones, leg.from, leg.to);
    if (custody === undefined) return [];
    const aboard = new Set(leg.lines.map(({ id }) => id));
    const held = bands
      .map((band) => ({ ...band, lines: band.lines.filter((line) => aboard.has(line)) }))
      .filter((band) => band.lines.length > 0);
    return [{ ...leg, custody, bands: held }];
  });
}
