import { omitUndefined } from '../core/model/omit-undefined.js';
import type { TimeStampClient } from '../core/ports/time-stamps.js';

/** The time-stamp server that the command line names. */
export interface TimeStampOptions {
  tsa?: string;
  tsaPolicy?: string;
}

/** Its client; nothing when no server is named. Throws DossierError `time-stamp` for what is no address. */
export async function timeStampsAt({
  tsa,
  tsaPolicy,
}: TimeStampOptions): Promise<{ timeStamps?: TimeStampClient }> {
  if (tsa === undefined) return {};
  const { httpTimeStamps } = await import('../signing/time-stamp.js');
  return {
    timeStamps: httpTimeStamps({ url: tsa, ...omitUndefined({ policy: tsaPolicy }) }),
  };
}
