import type { Line } from '../../model/delivery.js';
import type { ProductResult } from '../../model/results.js';

type Load = ProductResult['assumptions']['load'];

const HOUR = 3600;
const PRACTICE = 'common practice, no source';

/**
 * Half-cooling times of product in the moving air of a trailer, from the outer cartons that follow the air to the
 * heart of a tight pallet. Common practice, no source; wide on purpose. That a load lags behind its air so unevenly is
 * published: USDA Marketing Research Report 1132 (Hinsch, Kindya, Rij 1983) found lettuce of one trailer 11 to 19 °F
 * apart on arrival, and NC State Extension ("Forced-air cooling") that the middle of a pallet may lose heat more slowly
 * than respiration makes it.
 */
const HALF_COOLING: Record<Load, { low: number; high: number }> = {
  pallets: { low: 4 * HOUR, high: 72 * HOUR },
  'loose-cartons': { low: 2 * HOUR, high: 36 * HOUR },
  'not-stated': { low: 2 * HOUR, high: 72 * HOUR },
};

/** How a line stands in the trailer, as far as its facts say, and the half-cooling times that go with it. */
export function loadOf(line: Line): Pick<ProductResult['assumptions'], 'load' | 'halfCoolingSeconds'> {
  const load: Load =
    line.pallets !== undefined ? 'pallets' : line.cartons !== undefined ? 'loose-cartons' : 'not-stated';
  return { load, halfCoolingSeconds: { ...HALF_COOLING[load], from: PRACTICE } };
}
