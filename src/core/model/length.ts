import { z } from 'zod';

const lengthUnit = z.enum(['m', 'cm', 'mm', 'ft', 'in']);
/** Metric, or feet and inches. */
export type LengthUnit = z.infer<typeof lengthUnit>;

/** A length as stated, with its unit; `metres()` computes. */
export interface Length {
  value: number;
  unit: LengthUnit;
}

/** Exact by the international yard and pound agreement of 1959: 1 in = 0.0254 m, 1 ft = 0.3048 m. */
const METRES: Record<LengthUnit, number> = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 };

export function metres(length: Length): number {
  return length.value * METRES[length.unit];
}

const WRITTEN = /^\s*(\d+(?:[.,]\d+)?)\s*(m|cm|mm|ft|in|'|")\s*$/i;
const MARKS: Record<string, LengthUnit> = { "'": 'ft', '"': 'in' };

/** Reads `53 ft`, `99 in`, `2.5 m`; undefined when it is not a length with its unit. */
function parseLength(text: string): Length | undefined {
  const match = WRITTEN.exec(text);
  if (match === null) return undefined;
  const [, digits = '', mark = ''] = match;
  return {
    value: Number(digits.replace(',', '.')),
    unit: MARKS[mark] ?? lengthUnit.parse(mark.toLowerCase()),
  };
}

/** A length written by a person in a settings file: `53 ft`. */
export const writtenLength = z
  .string()
  .meta({ description: 'A length with its unit, such as "53 ft" or "2.5 m".', examples: ['53 ft'] })
  .transform((text, ctx) => {
    const read = parseLength(text);
    if (read === undefined) {
      ctx.addIssue({
        code: 'custom',
        message: `"${text}" is not a length; write it like 53 ft, 99 in or 2.5 m`,
      });
      return z.NEVER;
    }
    return read;
  });

/** The floor that a pallet covers: the shorter side first. */
export interface Footprint {
  short: Length;
  long: Length;
}

const WRITTEN_FOOTPRINT =
  /^\s*(\d+(?:[.,]\d+)?)\s*(m|cm|mm|ft|in|'|")?\s*[x×]\s*(\d+(?:[.,]\d+)?)\s*(m|cm|mm|ft|in|'|")\s*$/i;

/** Reads `40 × 48 in` or `0.8 m x 1.2 m`; undefined when it is not two lengths with their unit. */
function parseFootprint(text: string): Footprint | undefined {
  const [, first = '', firstUnit, second = '', unit = ''] = WRITTEN_FOOTPRINT.exec(text) ?? [];
  const [a, b] = [parseLength(`${first} ${firstUnit ?? unit}`), parseLength(`${second} ${unit}`)];
  if (a === undefined || b === undefined || a.value === 0 || b.value === 0) return undefined;
  return metres(a) <= metres(b) ? { short: a, long: b } : { short: b, long: a };
}

/** A pallet's footprint written by a person in a settings file: `40 × 48 in`. */
export const writtenFootprint = z
  .string()
  .meta({
    description: 'The two sides of a pallet with their unit, such as "40 × 48 in".',
    examples: ['40 × 48 in'],
  })
  .transform((text, ctx) => {
    const read = parseFootprint(text);
    if (read === undefined) {
      ctx.addIssue({
        code: 'custom',
        message: `"${text}" is not a pallet's footprint; write it like 40 × 48 in or 0.8 × 1.2 m`,
      });
      return z.NEVER;
    }
    return read;
  });
