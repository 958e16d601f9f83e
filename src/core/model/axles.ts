/** Where the axles of a vehicle lie, what it weighs empty, and what its axle groups may weigh. */
import { z } from 'zod';
import type { FieldIssue } from './compartment.js';
import { type Length, metres, writtenLength } from './length.js';
import { HEAVIEST, kilograms, type Weight, writtenWeight } from './weight.js';

/** The axles of a trailer, measured from its front wall inside. */
export const trailerAxles = z.strictObject({
  kingpin: writtenLength.meta({ description: 'From the front wall inside to the kingpin' }),
  group: writtenLength.meta({
    description:
      'From the front wall inside to the middle of the axle group of the trailer, as its slider stands',
  }),
});

/** The axles of a tractor. */
export const tractorAxles = z.strictObject({
  wheelbase: writtenLength.meta({ description: 'From the steer axle to the middle of the drive axles' }),
  fifthWheel: writtenLength.meta({
    description:
      'How far the fifth wheel lies ahead of the middle of the drive axles; 0 in where it is above it',
  }),
});

const ofGroups = {
  steer: writtenWeight.optional(),
  drive: writtenWeight.optional(),
  trailer: writtenWeight.optional(),
};

export const emptyWeights = z.strictObject(ofGroups).meta({
  description:
    'What the axle groups weigh without a load, from a scale ticket of the empty vehicle with its fuel',
});
export const axleLimits = z
  .strictObject({
    ...ofGroups,
    gross: writtenWeight.optional().meta({ description: 'Limit of the whole vehicle' }),
    from: z.string().min(1).max(200).optional().meta({ description: 'Where the limits come from, in words' }),
  })
  .meta({ description: 'What the axle groups may weigh, as it is given to the carrier; nothing is assumed' });

/** What is stated of a vehicle's axles and weights. */
export interface AxleFacts {
  tractor?: { axles?: z.infer<typeof tractorAxles> | undefined } | undefined;
  trailer: {
    length?: Length | undefined;
    insideLength?: Length | undefined;
    axles?: z.infer<typeof trailerAxles> | undefined;
  };
  empty?: z.infer<typeof emptyWeights> | undefined;
  limits?: z.infer<typeof axleLimits> | undefined;
}

/** Geometry that contradicts itself, and weights beyond sense. */
export function axleIssues({ tractor, trailer, empty, limits }: AxleFacts): FieldIssue[] {
  return [
    ...trailerIssues(trailer),
    ...tractorIssues(tractor?.axles),
    ...weightIssues('empty', empty ?? {}),
    ...weightIssues('limits', limits ?? {}),
    ...grossIssues(limits ?? {}),
  ];
}

function trailerIssues({ axles, insideLength, length }: AxleFacts['trailer']): FieldIssue[] {
  if (axles === undefined) return [];
  const floor = insideLength ?? length;
  const path = ['equipment', 'trailer', 'axles'];
  if (metres(axles.kingpin) >= metres(axles.group))
    return [
      {
        message:
          'the kingpin lies behind the axles of the trailer; both are measured from the front wall inside',
        path: [...path, 'kingpin'],
      },
    ];
  return floor !== undefined && metres(axles.group) > metres(floor)
    ? [
        {
          message: `the axles lie ${axles.group.value} ${axles.group.unit} from the front wall, beyond the trailer of ${floor.value} ${floor.unit}`,
          path: [...path, 'group'],
        },
      ]
    : [];
}

function tractorIssues(axles: z.infer<typeof tractorAxles> | undefined): FieldIssue[] {
  return axles !== undefined && metres(axles.fifthWheel) >= metres(axles.wheelbase)
    ? [
        {
          message:
            'the fifth wheel lies ahead of the steer axle; it is measured from the middle of the drive axles',
          path: ['equipment', 'tractor', 'axles', 'fifthWheel'],
        },
      ]
    : [];
}

function weightIssues(field: string, weights: Partial<Record<string, Weight | string>>): FieldIssue[] {
  return Object.entries(weights).flatMap(([group, weighed]) => {
    if (weighed === undefined || typeof weighed === 'string') return [];
    const most = group === 'gross' ? HEAVIEST.gross : HEAVIEST['axle-group'];
    return kilograms(weighed) > most
      ? [
          {
            message: `${weighed.value} ${weighed.unit} is more than ${group === 'gross' ? 'a vehicle' : 'an axle group'} weighs; is a figure or the unit wrong?`,
            path: ['equipment', field, group],
          },
        ]
      : [];
  });
}

function grossIssues({ gross, ...groups }: z.infer<typeof axleLimits>): FieldIssue[] {
  if (gross === undefined) return [];
  return (['steer', 'drive', 'trailer'] as const).flatMap((group) => {
    const limit = groups[group];
    return limit !== undefined && kilograms(limit) > kilograms(gross)
      ? [
          {
            message: `the limit of the ${group} axles is above that of the whole vehicle`,
            path: ['equipment', 'limits', group],
          },
        ]
      : [];
  });
}
