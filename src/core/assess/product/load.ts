import type { Line } from '../../model/delivery.js';
import type { ProductResult } from '../../model/results.js';

type Load = ProductResult['assumptions']['load'];

const HOUR = 3600;
const DAY = 24 * HOUR;
const PRACTICE = 'common practice, no source';
/**
 * "Influence of place packing or tray packing on the cooling rate of palletized 'Anjou' pears", read in the summary at
 * hortintl.cals.ncsu.edu: from box to box 2.0 to 15.7 days for wrapped, place-packed fruit, 1.7 to 7.4 days on trays.
 */
const PALLETS =
  'the longest measured in tightly stacked pallets of pears (Faubion and Kader, as summarised by NC State University), the shortest common practice, no source';

/**
 * Half-cooling times of product in the moving air of a trailer, from outer cartons that follow the air to the core
 * of a tight pallet. The longest for pallets is measured and published; the others are common practice, no source,
 * and wide on purpose. Uneven lag of a load behind its air is published for trailers too: USDA Marketing Research
 * Report 1132 (Hinsch, Kindya, Rij 1983) found lettuce of one trailer 11 to 19 °F apart on arrival, and NC State
 * Extension ("Forced-air cooling") says that the middle of a pallet may lose heat more slowly than respiration
 * produces it.
 */
const HALF_COOLING: Record<Exclude<Load, 'measured'>, { low: number; high: number; from: string }> = {
  pallets: { low: 4 * HOUR, high: 15.7 * DAY, from: PALLETS },
  'loose-cartons': { low: 2 * HOUR, high: 36 * HOUR, from: PRACTICE },
  'not-stated': { low: 2 * HOUR, high: 15.7 * DAY, from: PALLETS },
};

/** How a line is packed in the trailer, by its facts, and the half-cooling times for that packing, or those that were measured. */
export function packingOf(line: Line): Pick<ProductResult['assumptions'], 'load' | 'halfCoolingSeconds'> {
  if (line.halfCoolingHours !== undefined) {
    const { shortest, longest } = line.halfCoolingHours;
    const measured = { low: shortest * HOUR, high: longest * HOUR, from: 'as stated in delivery.yaml' };
    return { load: 'measured', halfCoolingSeconds: measured };
  }
  const load =
    line.pallets !== undefined ? 'pallets' : line.cartons !== undefined ? 'loose-cartons' : 'not-stated';
  return { load, halfCoolingSeconds: HALF_COOLING[load] };
}
