import { milliseconds, type Zone } from '../../core/model/time.js';
import { plain, type SignatureBlock, text, wordsOf } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { commonNameIn } from './cover.js';

/** Digits of the certificate's hash that can be read aloud or compared at a glance; the cover has all of them. */
const SHORT = 16;

/** The words of the visible signature: signer, certificate, claimed time, and how to check it. */
export function signatureBlock({ input, labels, words, startZone }: View): SignatureBlock {
  const signer = commonNameIn(input.signer.name);
  const at = { is: 'time', at: milliseconds(input.builtAt), zone: startZone } as const;
  const utc = startZone === 'UTC' ? undefined : ({ ...at, zone: 'UTC' as Zone } as const);
  return {
    title: labels('signature.title'),
    facts: [
      { label: labels('signature.signer'), value: plain(signer) },
      {
        label: labels('signature.certificate'),
        value: [{ is: 'code', text: input.signer.certificateSha256.slice(0, SHORT) }, text(' …')],
      },
      { label: labels('signature.time'), value: words.line('signature-time', { at, utc }) },
      { label: labels('signature.kind'), value: plain(labels('signature.certified')) },
    ],
    check: words.line('signature', { steps: labels('section.verify') }),
    alt: wordsOf(words.line('alt-signature', { signer, at })),
  };
}
