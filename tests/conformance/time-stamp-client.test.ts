import { afterEach, describe, expect, it } from 'vitest';
import { checkTimeStampClient } from '../../src/conformance.js';
import type { TimeStampClient } from '../../src/core/ports/time-stamps.js';
import { httpTimeStamps } from '../../src/signing/time-stamp.js';
import { FakeTsa, type TsaTricks } from '../signing/fake-tsa.js';
import { brokenRules } from './broken-rules.js';

let end: () => Promise<void> = async () => undefined;
afterEach(() => end());

async function over(tricks: TsaTricks = {}): Promise<TimeStampClient> {
  const served = await new FakeTsa(tricks).serve();
  end = served.end;
  return httpTimeStamps({ url: served.url });
}

const TOKEN = 'It gives the token alone, in DER, good by the rules of RFC 3161';
const NONCE = 'The token repeats the nonce';
const POLICY = 'The token is under the policy that is named';
const AT_ONCE = 'Several requests at once are answered each by its own token';
const UNCHANGED = 'Nothing that it is given is changed';
const ABORTED = 'It rejects with the signal’s reason when it is aborted';

describe('the contract of a time-stamp client', () => {
  it('is kept by the one over HTTP', async () => {
    const results = await checkTimeStampClient(await over());
    expect(brokenRules(results)).toEqual([]);
    expect(results).toHaveLength(6);
  });

  it.each<[string, () => Promise<TimeStampClient>, string[]]>([
    ['whose server stamps something else', () => over({ imprint: Buffer.alloc(32) }), [TOKEN, AT_ONCE]],
    ['whose server repeats an old nonce', () => over({ nonce: Buffer.alloc(16, 0x41) }), [NONCE, AT_ONCE]],
    ['whose server leaves out its certificate', () => over({ withoutCertificate: true }), [TOKEN, AT_ONCE]],
    ['that names another policy', async () => ({ ...(await over()), policy: '1.2.840.1' }), [POLICY]],
    [
      'that gives the answer around the token',
      async () => {
        const tsa = new FakeTsa();
        return { name: 'around', request: async ({ digest }) => tsa.answer(digest) };
      },
      [TOKEN, NONCE, AT_ONCE, ABORTED],
    ],
    [
      'that wipes the digest and heeds no signal',
      async () => {
        const client = await over();
        return {
          name: client.name,
          request: async ({ digest, nonce }) => {
            const token = await client.request({ digest: Uint8Array.from(digest), nonce });
            digest.fill(0);
            return token;
          },
        };
      },
      [UNCHANGED, ABORTED],
    ],
  ])('is not kept by one %s', async (_, make, rules) => {
    expect(brokenRules(await checkTimeStampClient(await make()))).toEqual(rules);
  });
});
