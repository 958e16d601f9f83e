/** What an inspection certificate states of one lot of produce, at destination or at origin. */
import { z } from 'zod';
import { tradeQuantity } from '../quantity.js';
import { temperature } from '../temperature.js';
import { eventTime, knownMilliseconds } from '../time.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';

const OUT_OF_RANGE = { error: 'a percentage is between 0 and 100' };
const percent = z.number().min(0, OUT_OF_RANGE).max(100, OUT_OF_RANGE);
const words = (most: number) => z.string().min(1).max(most);

/** Whether a defect changes after packing (`condition`) or stays as it was then (`permanent`); 7 CFR 46.44(a) counts them apart. */
export const defectNature = z.enum(['condition', 'permanent']);
/** Whether a defect changes after packing, or stays as it was then. */
export type DefectNature = z.infer<typeof defectNature>;

const shares = {
  percent: percent.meta({ description: 'Damaged, percent of the units looked at, serious damage included' }),
  serious: percent.optional().meta({ description: 'Of it serious damage, percent of the units looked at' }),
};
const seriousFits = ({ percent, serious = 0 }: { percent: number; serious?: number | undefined }) =>
  serious <= percent;
const SERIOUS_ABOVE_TOTAL = {
  error: 'serious damage is part of the damage, and can’t be more of it',
  path: ['serious'],
};

export const inspectedDefect = z
  .strictObject({
    name: words(120).meta({ description: 'What the certificate calls it' }),
    ...shares,
    nature: defectNature
      .optional()
      .meta({ description: 'Whether the certificate counts it as condition or as permanent' }),
  })
  .refine(seriousFits, SERIOUS_ABOVE_TOTAL);
/** One defect of a lot as a certificate states it. */
export type InspectedDefect = z.infer<typeof inspectedDefect>;

const total = z.strictObject(shares).refine(seriousFits, SERIOUS_ABOVE_TOTAL);

export const inspection = z
  .strictObject({
    kind: z.literal('inspection'),
    ...readingFields,
    lot: words(80).meta({ description: 'The lot, as the certificate names it' }),
    count: tradeQuantity.optional().meta({ description: 'Of how many the lot is' }),
    samples: z.int().positive().max(100_000).optional().meta({ description: 'How many were looked at' }),
    defects: z.array(inspectedDefect).max(60).default([]).meta({ description: 'Defects by name' }),
    total: total.optional().meta({ description: 'The total of the certificate itself' }),
    pulps: z
      .strictObject({ low: temperature, high: temperature })
      .optional()
      .meta({ description: 'Lowest and highest pulp temperature on the certificate' }),
    certificate: words(60).optional().meta({ description: 'Its number' }),
    appeal: z.literal(true).optional().meta({ description: 'It is the result of an appeal' }),
    where: words(200).optional().meta({ description: 'Where the lot was looked at, in its words' }),
    ended: eventTime.optional().meta({ description: 'When it ended; `time` is when it began' }),
    requestedBy: words(200).optional().meta({ description: 'Who asked for it, with the address' }),
    requestedAt: eventTime.optional().meta({ description: 'When it was asked for' }),
    dumped: tradeQuantity
      .optional()
      .meta({ description: 'Of a dumping certificate: how much was dumped (7 CFR 46.23)' }),
    noCommercialValue: z
      .literal(true)
      .optional()
      .meta({ description: 'It states that the produce has no commercial value' }),
    certifiedBy: z
      .enum(['federal-inspector', 'other-official', 'inspection-agency', 'two-disinterested-persons'])
      .optional()
      .meta({ description: 'Who certifies it: 7 CFR 46.23 names them in this order' }),
    marks: words(200).optional().meta({ description: 'Brand or principal marks on the containers' }),
    shipper: words(300).optional().meta({ description: 'Shipper on the certificate, with the address' }),
    documents: z.array(evidenceId).max(20).default([]).meta({ description: 'The certificate on file' }),
  })
  .refine(({ time, ended }) => inOrder(time, ended), {
    error: 'it ends before it begins',
    path: ['ended'],
  })
  .refine(({ time, ended, requestedAt }) => inOrder(requestedAt, ended ?? time), {
    error: 'it is asked for after it was made',
    path: ['requestedAt'],
  })
  .meta({ description: 'What an inspection certificate states of one lot' });

type Time = z.infer<typeof eventTime>;

/** Whether the second time is not before the first, as far as both are known. */
function inOrder(first: Time | undefined, second: Time | undefined): boolean {
  const [from, to] = [first, second].map((one) => one && knownMilliseconds(one));
  return from === undefined || to === undefined || from <= to;
}
