import { exp, log } from '../../model/exponential.js';

/**
 * Newton's law of cooling with a source of heat: dT/dt = −(T − A)/τ + h, with the air A in a straight line from
 * `air0` to `air1` over `seconds`. Exact: with s = (air1 − air0)/seconds,
 * T = air1 + (h − s)τ + (T₀ − air0 − (h − s)τ) e^(−seconds/τ).
 * Temperatures in °C, τ in seconds, heating h in K/s. `decay` is e^(−seconds/τ), for callers that know it.
 */
export function productAfter(
  start: number,
  air0: number,
  air1: number,
  seconds: number,
  tau: number,
  heating: number,
  decay = exp(-seconds / tau),
): number {
  const lead = (heating - (air1 - air0) / seconds) * tau;
  return air1 + lead + (start - air0 - lead) * decay;
}

/** τ of a half-cooling time: Z = τ ln 2, for then the difference to the air has halved. Any one unit of time. */
export function timeConstant(halfCoolingTime: number): number {
  return halfCoolingTime / Math.LN2;
}

/** The time after which one eighth of the difference remains: ln 8 τ, three half-cooling times. */
export function sevenEighthsTime(halfCoolingTime: number): number {
  return timeConstant(halfCoolingTime) * log(8);
}
