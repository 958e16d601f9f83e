import {
  type Respiration,
  rateInStretch,
  rateStretches,
  wattsPerKilogram,
} from '../../reference/respiration.js';

/** Heat of respiration in K/s, tabled by temperature; undefined for goods without a published rate. */
export type Heating = Float64Array | undefined;

const LOWEST = -80;
const HIGHEST = 120;
/** Between lines a quarter of a kelvin apart a rate that doubles over 5 K is off by less than 0.02 %. */
const PER_KELVIN = 4;

/** Highest published respiration at each temperature, as heating of the product. */
export function heatingOf(respiration: Respiration | undefined, joulesPerKilogramKelvin: number): Heating {
  if (respiration === undefined) return undefined;
  const stretches = rateStretches(respiration, 'high');
  return Float64Array.from({ length: (HIGHEST - LOWEST) * PER_KELVIN + 1 }, (_, i) => {
    const celsius = LOWEST + i / PER_KELVIN;
    const stretch = stretches.find(({ to }) => celsius <= to) ?? stretches.at(-1);
    const rate = stretch === undefined ? 0 : rateInStretch(stretch, celsius);
    return wattsPerKilogram(rate, respiration.unit) / joulesPerKilogramKelvin;
  });
}

/** The heat at a temperature, K/s, along the straight line between lines of the table. */
export function heatAt(heating: Float64Array, celsius: number): number {
  const at = Math.min(HIGHEST - 1, Math.max(LOWEST, celsius));
  const place = (at - LOWEST) * PER_KELVIN;
  const line = Math.floor(place);
  const below = heating[line] ?? 0;
  return below + ((heating[line + 1] ?? below) - below) * (place - line);
}
