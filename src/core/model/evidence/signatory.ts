/** Who wrote or signed something, and for whom. */
import { z } from 'zod';

/** For whom somebody writes or signs. */
export const signingParty = z.enum(['shipper', 'driver', 'carrier', 'receiver', 'broker', 'other']);

export const signatory = z.strictObject({
  party: signingParty.meta({ description: 'For whom' }),
  name: z.string().min(1).max(200).optional().meta({ description: 'The name, where it can be read' }),
});
/** Who wrote or signed something, and for whom. */
export type Signatory = z.infer<typeof signatory>;
