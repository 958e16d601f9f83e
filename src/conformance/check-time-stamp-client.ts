import { isSameBytes, utf8Bytes } from '../core/model/bytes.js';
import type { TimeStampClient } from '../core/ports/time-stamps.js';
import { judgeTimeStamp, readTimeStamp, type TimeStamp } from '../core/verify/cms/time-stamp.js';
import { digestOf } from './digest.js';
import { broken, type RuleResult, Rules, rejectionOf } from './rules.js';

const NONCE_BYTES = 16;

/**
 * Tries a time-stamp client against the contract of `TimeStampClient`. Its server is asked for five tokens. Never
 * rejects.
 */
export async function checkTimeStampClient(client: TimeStampClient): Promise<RuleResult[]> {
  const rules = new Rules();
  let first: TimeStamp | undefined;
  await rules.try('It gives the token alone, in DER, good by the rules of RFC 3161', async () => {
    const bytes = utf8Bytes('one');
    first = readTimeStamp(await client.request({ digest: digestOf(bytes), nonce: nonce(1) }));
    const { wrong } = await judgeTimeStamp(first, bytes);
    if (wrong.length > 0) broken(wrong.join('; '));
  });
  await rules.try('The token repeats the nonce', async () => requireNonce(first, nonce(1)));
  await rules.try('The token is under the policy that is named', async () => {
    const { policy } = client;
    if (policy !== undefined && first?.policy !== policy)
      broken(`it is under ${first?.policy ?? 'none'}, and ${policy} is named`);
  });
  await rules.try('Several requests at once are answered each by its own token', async () => {
    await Promise.all(
      [2, 3, 4].map(async (i) => {
        const bytes = utf8Bytes(`number ${i}`);
        const read = readTimeStamp(await client.request({ digest: digestOf(bytes), nonce: nonce(i) }));
        const { wrong } = await judgeTimeStamp(read, bytes);
        if (wrong.length > 0) broken(wrong.join('; '));
        requireNonce(read, nonce(i));
      }),
    );
  });
  await rules.try('Nothing that it is given is changed', async () => {
    const given = { digest: digestOf(utf8Bytes('unchanged')), nonce: nonce(5) };
    await client.request(given);
    if (!isSameBytes(given.digest, digestOf(utf8Bytes('unchanged')))) broken('the digest was changed');
    if (!isSameBytes(given.nonce, nonce(5))) broken('the nonce was changed');
  });
  await rules.try('It rejects with the signal’s reason when it is aborted', async () => {
    const why = new Error('aborted by the trial');
    const given = { digest: digestOf(utf8Bytes('aborted')), nonce: nonce(6), signal: AbortSignal.abort(why) };
    const error = await rejectionOf(() => client.request(given), 'though the signal was aborted before');
    if (error !== why) broken(`it rejected with something else: ${String(error)}`);
  });
  return rules.results;
}

/** The content of a positive integer in its shortest form (X.690 §8.3), another for each number. */
function nonce(number: number): Uint8Array {
  return Uint8Array.from({ length: NONCE_BYTES }, (_, i) => (i === 0 ? 0x40 + number : number * 16 + i));
}

function requireNonce(read: TimeStamp | undefined, wanted: Uint8Array): void {
  if (read?.nonce === undefined) broken('there is no nonce in it');
  if (!isSameBytes(read.nonce, wanted)) broken('it has another nonce');
}
