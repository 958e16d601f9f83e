import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Band, Custody, TimeRange } from '../../model/results.js';
import { custodyBetween } from '../custody.js';
import { type Leg, legsOf } from '../legs.js';
import type { Milestones } from '../milestones.js';

/** A leg with its custody from doors closed to doors opened, and the ranges of the lines aboard. */
export interface LegInCustody extends Leg {
  custody: Custody;
  bands: Band[];
}

/**
 * Legs of a delivery with more than two stops, from the doors closed at each stop to the doors opened at the next.
 * Missing events are replaced as for custody; a leg between stops without any event is left out, and so is an empty
 * leg.
 */
export function legsInCustody(
  milestones: Milestones,
  lines: readonly Line[],
  bands: readonly Band[],
  log: TimeRange | undefined,
): LegInCustody[] {
  const { stops } = milestones;
  if (stops.length < 3) return [];
  return legsOf(stops, lines).flatMap((leg) => {
    const ends = {
      ...omitUndefined({
        from: leg.leg === 1 && log !== undefined ? log.from : undefined,
        to: leg.leg === stops.length - 1 && log !== undefined ? log.to : undefined,
      }),
    };
    const custody = custodyBetween(milestones, leg.from, leg.to, ends);
    if (custody === undefined) return [];
    const aboard = new Set(leg.lines.map(({ id }) => id));
    const held = bands
      .map((band) => ({ ...band, lines: band.lines.filter((line) => aboard.has(line)) }))
      .filter((band) => band.lines.length > 0);
    return [{ ...leg, custody, bands: held }];
  });
}
