import { exp, log } from '../../model/exponential.js';

/** Energy of activation, J/mol: the customary value of mean kinetic temperature (USP <1079>, for medicines). */
const ACTIVATION_ENERGY = 83_144;
/** Molar gas constant, J/(mol·K): SI 2019. */
const GAS_CONSTANT = 8.314462618;
const RATIO = ACTIVATION_ENERGY / GAS_CONSTANT;
const ZERO_CELSIUS = 273.15;

/**
 * Segments that change by no more than this are integrated with two points, kelvin: the error is below 1e-11 of the
 * sum.
 */
const NEARLY_LEVEL = 0.1;
/** Longer segments are cut to this and integrated with four points, kelvin: the error is below 1e-13. */
const CUT = 2;
/** Air between −80 and 85 °C needs no more parts; the bound keeps a hostile log from taking long. */
const MOST_PARTS = 100;
// Gauss–Legendre points and weights on 0 to 1.
const TWO = 0.5 - Math.sqrt(1 / 12);
const INNER = Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5)) / 2;
const OUTER = Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5)) / 2;
const HEAVY = (18 + Math.sqrt(30)) / 72;
const LIGHT = (18 - Math.sqrt(30)) / 72;
const FOUR = [
  [0.5 - OUTER, LIGHT],
  [0.5 - INNER, HEAVY],
  [0.5 + INNER, HEAVY],
  [0.5 + OUTER, LIGHT],
] as const;

/** exp(−ΔH/RT) relative to 0 °C, so that sums stay near one. */
const rate = (celsius: number) => exp(RATIO / ZERO_CELSIUS - RATIO / (celsius + ZERO_CELSIUS));

/** Mean of the Arrhenius rate over a straight segment from v0 to v1, °C. */
export function meanRate(v0: number, v1: number): number {
  const change = v1 - v0;
  if (change === 0) return rate(v0);
  if (Math.abs(change) <= NEARLY_LEVEL) return (rate(v0 + TWO * change) + rate(v1 - TWO * change)) / 2;
  const parts = Math.min(MOST_PARTS, Math.ceil(Math.abs(change) / CUT));
  let sum = 0;
  for (let i = 0; i < parts; i++)
    for (const [at, weight] of FOUR) sum += weight * rate(v0 + (change * (i + at)) / parts);
  return sum / parts;
}

/** The constant temperature, °C, with the same mean rate: T = (ΔH/R) / −ln(mean of exp(−ΔH/RT)). */
export function kineticCelsius(mean: number): number {
  return RATIO / (RATIO / ZERO_CELSIUS - log(mean)) - ZERO_CELSIUS;
}

/**
 * Mean kinetic temperature of temperatures that were each held for a time: T = (ΔH/R) / −ln(Σ tᵢ exp(−ΔH/RTᵢ) / Σ
 * tᵢ). Temperatures in °C, times in any one unit. It weighs warmth more than cold and can hide chilling and
 * freezing: it is shown, and never used to clear an excursion.
 */
export function meanKineticTemperature(held: readonly { celsius: number; time: number }[]): number {
  const total = held.reduce((sum, one) => sum + one.time, 0);
  return kineticCelsius(held.reduce((sum, one) => sum + one.time * rate(one.celsius), 0) / total);
}
