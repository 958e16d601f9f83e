import { power } from '../../model/exponential.js';
import { timeConstant } from './cooling.js';
import { uniformNumbers } from './seeded.js';

/** Cases drawn: a tail of 2.5 % is then known to 0.35 % (one standard error). */
export const DRAWS = 2000;

/** Spread of what is not known of a line in its air. */
export interface Priors {
  /** Half-cooling time, seconds: any ratio between the two is as likely (log-uniform). */
  halfCoolingSeconds: { low: number; high: number };
  /** Accuracy of the sensors, and distance of the air at a place from the logged air, K to either side. */
  sensorKelvin: number;
  airAtPlaceKelvin: number;
}

/** What is drawn for each case: all uniform, in the order of the fields. */
export interface Draws {
  /** Time constant, seconds. */
  tau: Float64Array;
  /** Share of the first channel in the air at the place; the rest is of the second. */
  mix: Float64Array;
  /** Air at the place less the logged air, K. */
  offset: Float64Array;
  /** Share of the highest published respiration. */
  respiration: Float64Array;
  /** From 0 to 1: where in the instructed range, which loading pulp, and errors of thermometers and cartons at either end. */
  instructed: Float64Array;
  pick: Float64Array;
  firstError: Float64Array;
  secondError: Float64Array;
  firstCarton: Float64Array;
  secondCarton: Float64Array;
}

/** The same cases at each run. */
export function drawCases({ halfCoolingSeconds, sensorKelvin, airAtPlaceKelvin }: Priors): Draws {
  const next = uniformNumbers();
  const column = () => new Float64Array(DRAWS);
  const draws: Draws = {
    tau: column(),
    mix: column(),
    offset: column(),
    respiration: column(),
    instructed: column(),
    pick: column(),
    firstError: column(),
    secondError: column(),
    firstCarton: column(),
    secondCarton: column(),
  };
  const { low, high } = halfCoolingSeconds;
  for (let i = 0; i < DRAWS; i += 1) {
    draws.tau[i] = timeConstant(low * power(high / low, next()));
    draws.mix[i] = next();
    draws.offset[i] = (2 * next() - 1) * airAtPlaceKelvin + (2 * next() - 1) * sensorKelvin;
    draws.respiration[i] = next();
    draws.instructed[i] = next();
    draws.pick[i] = next();
    draws.firstError[i] = 2 * next() - 1;
    draws.secondError[i] = 2 * next() - 1;
    draws.firstCarton[i] = 2 * next() - 1;
    draws.secondCarton[i] = 2 * next() - 1;
  }
  return draws;
}
