/** What the contract of sale says of goods: 7 CFR 46.44(a). */
import { z } from 'zod';

const percent = z.number().min(0).max(100);

export const soldAs = z.strictObject({
  grade: z.string().min(1).max(80).optional().meta({ description: 'The grade named, such as U.S. No. 1' }),
  tolerance: percent.optional().meta({
    description: 'Damage that the grade tolerates at destination, percent; 12 for U.S. No. 1 lettuce',
  }),
  decayTolerance: percent
    .optional()
    .meta({ description: 'Decay that the grade tolerates at destination, percent' }),
  condition: z
    .strictObject({
      percent: percent.meta({ description: 'Damage by condition defects that the contract specifies' }),
      serious: percent.optional().meta({ description: 'Of it serious damage' }),
      defect: z.string().min(1).max(120).optional().meta({ description: 'The one defect it is of' }),
    })
    .optional()
    .meta({ description: 'A percentage of condition defects that the goods were sold with' }),
  agreed: z
    .strictObject({
      percent: percent.meta({ description: 'Damage by condition defects, percent' }),
      serious: percent.optional().meta({ description: 'Of it serious damage' }),
      decay: percent.optional().meta({ description: 'Of it decay' }),
    })
    .optional()
    .meta({ description: 'Percentages that buyer and seller agreed for the destination; they come first' }),
  inferior: z
    .boolean()
    .optional()
    .meta({ description: 'The contract says by its terms that the goods are of inferior quality' }),
});
