import { z } from 'zod';

const weightUnit = z.enum(['lb', 'kg', 't']);
/** Pounds, kilograms or metric tons. */
export type WeightUnit = z.infer<typeof weightUnit>;

/** A weight as stated, with its unit; `kilograms()` computes. */
export const weight = z.strictObject({ value: z.number().positive(), unit: weightUnit });
/** A weight as stated, with its unit. */
export type Weight = z.infer<typeof weight>;

/** Exact by the international yard and pound agreement of 1959: 1 lb = 0.45359237 kg. */
const KILOGRAMS: Record<WeightUnit, number> = { lb: 0.453_592_37, kg: 1, t: 1000 };

export function kilograms({ value, unit }: Weight): number {
  return value * KILOGRAMS[unit];
}

/** The heaviest of a kind that people weigh, kilograms: above it a figure or a unit is wrong. Common practice, no source. */
export const HEAVIEST = { pallet: 3_000, 'axle-group': 60_000, gross: 150_000 } as const;

const UNITS: Readonly<Record<string, WeightUnit>> = {
  lb: 'lb',
  lbs: 'lb',
  '#': 'lb',
  pound: 'lb',
  pounds: 'lb',
  libras: 'lb',
  kg: 'kg',
  kgs: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  t: 't',
  tonne: 't',
  tonnes: 't',
};

/** Reads `11,840 lb`, `5371kg`, `12.5 t`; undefined for anything else. A bare `ton` is of two sizes and is not read. */
export function parseWeight(text: string): Weight | undefined {
  const [, digits = '', word = ''] = /^\s*([\d.,]+)\s*([a-z#]+)\.?\s*$/i.exec(text) ?? [];
  const unit = UNITS[word.toLowerCase()];
  const plain = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(digits)
    ? digits.replaceAll(',', '')
    : digits.replace(',', '.');
  const value = /^\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
  return unit === undefined || !(value > 0) ? undefined : { value, unit };
}

/** A weight written by a person in a settings file: `34,000 lb`. */
export const writtenWeight = z
  .string()
  .meta({ description: 'A weight with its unit, such as "34,000 lb" or "11.5 t".', examples: ['34,000 lb'] })
  .transform((text, ctx) => {
    const read = parseWeight(text);
    if (read !== undefined) return read;
    ctx.addIssue({
      code: 'custom',
      message: `"${text}" is not a weight; write it like 34,000 lb, 15400 kg or 15.4 t`,
    });
    return z.NEVER;
  });
