import { randomBytes } from 'node:crypto';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Signer } from '../../core/ports/signer.js';
import type { TimeStampClient } from '../../core/ports/time-stamps.js';
import type { VisiblePlace } from '../../signing/placeholder.js';
import { signPdf } from '../../signing/sign-pdf.js';
import type { BuildInput } from './build-input.js';
import type { RenderInput } from './render-input.js';

/** Signs the pages, with a time stamp where a server is given. Throws as `signPdf` and the server do. */
export async function signDossier(
  pdf: Uint8Array,
  { signer, builtAt, volume }: Pick<RenderInput, 'builtAt' | 'volume'> & { signer: Signer },
  visible: VisiblePlace | undefined,
  delivery: string,
  { timeStamps, now, signal }: BuildInput,
): Promise<{ pdf: Uint8Array; stampedTime?: string }> {
  let stampedTime: string | undefined;
  const stampFrom =
    (from: TimeStampClient) =>
    async (value: Uint8Array): Promise<Uint8Array> => {
      const { obtainTimeStamp } = await import('../signing/time-stamp.js');
      const { token, at } = await obtainTimeStamp({ from, now, signal }, value);
      stampedTime = at.toISOString();
      return token;
    };
  const signed = await signPdf(pdf, signer, {
    at: builtAt,
    reason: `${volume === 'assessment' ? 'Assessment' : 'Dossier'} of delivery ${delivery}`,
    random: (count) => randomBytes(count),
    ...omitUndefined({
      visible,
      stamp: timeStamps === undefined ? undefined : stampFrom(timeStamps),
      signal,
    }),
  });
  return { pdf: signed, ...omitUndefined({ stampedTime }) };
}
