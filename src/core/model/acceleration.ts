import { z } from 'zod';

const accelerationUnit = z.enum(['g', 'm/s²', 'ft/s²', 'mph/s', 'km/h/s']);
/** Standard gravity, metres or feet per second squared, or a change of speed in a second. */
export type AccelerationUnit = z.infer<typeof accelerationUnit>;

/** An acceleration as stated, with its unit; `inGravities()` computes. Braking may be written as negative. */
export const acceleration = z.strictObject({
  value: z.number().min(-10_000).max(10_000),
  unit: accelerationUnit,
});
/** An acceleration as stated, with its unit. */
export type Acceleration = z.infer<typeof acceleration>;

/** m/s² in one of each. Standard gravity: 9.80665 m/s² (3rd CGPM, 1901). 1 mph = 0.44704 m/s, 1 ft = 0.3048 m (1959). */
const METRES_PER_SECOND_SQUARED: Record<AccelerationUnit, number> = {
  g: 9.806_65,
  'm/s²': 1,
  'ft/s²': 0.3048,
  'mph/s': 0.447_04,
  'km/h/s': 1 / 3.6,
};

/** The size of an acceleration, whichever way it points. */
function metresPerSecondSquared({ value, unit }: Acceleration): number {
  return Math.abs(value) * METRES_PER_SECOND_SQUARED[unit];
}

/** In units of standard gravity. */
export const inGravities = (one: Acceleration): number =>
  metresPerSecondSquared(one) / METRES_PER_SECOND_SQUARED.g;

/** No recorder in a load measures more than this, in units of standard gravity. Common practice, no source. */
const MOST_GRAVITIES = 500;

const UNITS: readonly (readonly [RegExp, AccelerationUnit])[] = [
  [/^g(?:n|-?force|'?s|ravit\w*)?$/, 'g'],
  [/^m\/s(?:2|²|\^2|\/s)$|^m\s?s-2$/, 'm/s²'],
  [/^ft\/s(?:2|²|\^2|\/s)$|^fps(?:2|²|\^2|\/s)$/, 'ft/s²'],
  [/^mph\/s(?:ec)?$|^mi\/h\/s$/, 'mph/s'],
  [/^k(?:m\/h|ph|mh)\/s(?:ec)?$/, 'km/h/s'],
];

/** The unit that a word stands for. */
export function accelerationUnitNamed(word: string): AccelerationUnit | undefined {
  const plain = word.trim().toLowerCase();
  return UNITS.find(([pattern]) => pattern.test(plain))?.[1];
}

/** Reads `5.2g`, `51 m/s²`, `-8.5 mph/s`; undefined for anything else. */
export function parseAcceleration(text: string): Acceleration | undefined {
  const [, digits = '', word = ''] = /^\s*([+\-−]?\d+(?:[.,]\d+)?)\s*([a-z].*)$/i.exec(text) ?? [];
  const unit = accelerationUnitNamed(word);
  const value = Number(digits.replace('−', '-').replace(',', '.'));
  if (unit === undefined || Number.isNaN(value) || value === 0) return undefined;
  return inGravities({ value, unit }) > MOST_GRAVITIES ? undefined : { value, unit };
}
