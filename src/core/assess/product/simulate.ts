import { exp } from '../../model/exponential.js';
import type { Draws } from './draws.js';
import { type Heating, heatAt } from './heating.js';

/** Air of a line on its way: mean of each cell by one or two channels, °C. */
export interface AirOnTheWay {
  seconds: number;
  first: Float64Array;
  /** Absent where one channel is known. */
  second?: Float64Array;
}

/**
 * Temperatures of products after some number of cells, °C: for each product one of each case. In a cell with steady air
 * A and heat h Newton's law is exact: T = A + hτ + (T₀ − A − hτ) e^(−seconds/τ); heat is taken at the cell's start.
 * @param starts for each product its temperature in each case
 */
export function simulate(
  { seconds, first, second }: AirOnTheWay,
  draws: Pick<Draws, 'tau' | 'mix' | 'offset' | 'respiration'>,
  heating: Heating,
  starts: readonly Float64Array[],
  cells = first.length,
): Float64Array[] {
  return starts.map((start) =>
    start.map((celsius, i) => {
      const tau = draws.tau[i] ?? 1;
      const decay = exp(-seconds / tau);
      const mix = second === undefined ? 1 : (draws.mix[i] ?? 1);
      const offset = draws.offset[i] ?? 0;
      const share = (draws.respiration[i] ?? 0) * tau;
      let product = celsius;
      for (let cell = 0; cell < cells; cell += 1) {
        const one = first[cell] ?? 0;
        const air = offset + (second === undefined ? one : mix * one + (1 - mix) * (second[cell] ?? 0));
        const end = heating === undefined ? air : air + share * heatAt(heating, product);
        product = end + (product - end) * decay;
      }
      return product;
    }),
  );
}
