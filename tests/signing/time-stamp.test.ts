import { afterEach, describe, expect, it } from 'vitest';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { toInstant } from '../../src/core/model/time.js';
import { readTimeStamp } from '../../src/core/verify/cms/time-stamp.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { obtainTimeStamp } from '../../src/jobs/signing/time-stamp.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import { httpTimeStamps } from '../../src/signing/time-stamp.js';
import { der, failed, identity, overwrite } from '../core/verify/forge.js';
import { FakeTsa, type TsaTricks } from './fake-tsa.js';
import { sampleParts, samplePdf, text } from './sample.js';
import { countingBytes, SIGNED_AT } from './sample-identity.js';

const now = () => SIGNED_AT;
const bytes = text('load-dossier/2026-0714-A');
let end: () => Promise<void> = async () => undefined;
afterEach(() => end());

async function ask(tricks: TsaTricks, more: { policy?: string; timeout?: number; tries?: number } = {}) {
  const tsa = new FakeTsa({ at: SIGNED_AT, ...tricks });
  const served = await tsa.serve();
  end = served.end;
  const answer = obtainTimeStamp({ from: httpTimeStamps({ url: served.url, ...more }), now }, bytes);
  return { tsa, answer };
}

describe('a time stamp from a server (RFC 3161)', () => {
  it('is kept when everything about it fits', async () => {
    const { answer } = await ask({});
    const { token, at, server } = await answer;
    expect(at).toEqual(SIGNED_AT);
    expect(server).toBe('CN=Time office');
    expect(readTimeStamp(token).policy).toBe('1.2.3.4');
  });

  it('is asked for again while the server is busy', async () => {
    const { answer, tsa } = await ask({ failFirst: 2 });
    await answer;
    expect(tsa.asked).toBe(3);
  });

  it.each<[string, TsaTricks, RegExp, { policy?: string; timeout?: number; tries?: number }?]>([
    ['over other bytes', { imprint: Buffer.alloc(32) }, /over something else/],
    ['with SHA-1', { digest: 'sha1' }, /too weak/],
    ['with another nonce: an old one, replayed', { nonce: Buffer.alloc(16, 0x41) }, /another nonce/],
    ['without the nonce', { nonce: 'none' }, /another nonce/],
    ['under another policy than asked', {}, /policy/, { policy: '1.2.840.1' }],
    ['by a key that is not for time stamps alone', { plainCertificate: true }, /not one for time stamps/],
    ['without its certificate', { withoutCertificate: true }, /certificate of the time-stamp server/],
    ['with a forged signature', { forged: true }, /does not fit/],
    ['far from this machine’s time', { at: new Date(Date.UTC(2026, 8, 1)) }, /check the date/],
    ['from before its certificate', { at: new Date(Date.UTC(2020, 8, 1)) }, /not valid at that time/],
    ['refused', { status: 2 }, /refused: status 2 \(no such policy\)/],
    ['that is a web page', { rubbish: true }, /no time-stamp answer/],
    ['that is not found', { http: 404 }, /answered 404/],
    ['from a server that stays busy', { http: 503 }, /answered 503/, { tries: 2 }],
    ['from a server that is silent', { hang: true }, /did not answer/, { timeout: 100, tries: 1 }],
  ])('%s is refused with the reason', async (_, tricks, words, more) => {
    const { answer } = await ask(tricks, more);
    await expect(answer).rejects.toMatchObject({ name: 'DossierError', code: 'time-stamp' });
    await expect(answer).rejects.toThrow(words);
  });

  it.each(['ftp://example.org', 'nonsense', 'file:///etc/passwd'])('%s is no address for it', (url) => {
    expect(() => httpTimeStamps({ url })).toThrow(expect.objectContaining({ code: 'time-stamp' }));
  });

  it('a server that is not there is named', async () => {
    const from = httpTimeStamps({ url: 'http://127.0.0.1:9/tsr', tries: 1 });
    const gone = obtainTimeStamp({ from, now }, bytes);
    await expect(gone).rejects.toThrow(/cannot be reached/);
  });
});

describe('a dossier with a time stamp (PAdES B-T)', () => {
  const saying = (said: 'inside' | 'none' | 'not said') => {
    const { manifest, ...parts } = sampleParts();
    const { timeStamp: _, ...others } = manifest;
    return samplePdf({
      ...parts,
      manifest: { ...others, ...(said === 'not said' ? {} : { timeStamp: said }) },
    });
  };
  const dossier = async (tsa: FakeTsa | undefined, said: 'inside' | 'none' | 'not said' = 'inside') =>
    signPdf(await saying(said), identity, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
      ...omitUndefined({ stamp: tsa && (async (value: Uint8Array) => tsa.token(value)) }),
    });
  const resultOf = (found: Awaited<ReturnType<typeof verifyDossier>>, id: string) =>
    found.checks.find((check) => check.id === id)?.result;

  it('is intact, and the stamped time counts when its server is trusted', async () => {
    const tsa = new FakeTsa({ at: SIGNED_AT });
    const found = await verifyDossier(await dossier(tsa), {
      trusted: [identity.certificateDer, tsa.certificate],
    });
    expect(failed(found)).toEqual([]);
    expect(found.verdict).toBe('intact');
    expect(found.signer?.stampedTime).toBe(SIGNED_AT.toISOString());
    expect(resultOf(found, 'time-stamp.trusted')).toBe('passed');
  });

  it('is intact with a server that nobody vouches for, which is said', async () => {
    const found = await verifyDossier(await dossier(new FakeTsa({ at: SIGNED_AT })));
    expect(failed(found)).toEqual([]);
    expect(resultOf(found, 'signature.time-stamp')).toBe('passed');
    expect(resultOf(found, 'time-stamp.trusted')).toBe('not-checked');
  });

  it.each<[string, TsaTricks, string[]]>([
    ['the token of another file', { imprint: Buffer.alloc(32, 1) }, ['signature.time-stamp']],
    ['a forged token', { forged: true }, ['signature.time-stamp']],
    ['a token with SHA-1', { digest: 'sha1' }, ['signature.time-stamp']],
    [
      'a token that names another signer',
      { signer: der(0x30, der(0x30), der(0x02, Uint8Array.of(1))) },
      ['signature.time-stamp'],
    ],
    [
      'a claimed time far before the stamp: the clock was moved back',
      { at: new Date(Date.UTC(2026, 9, 1)) },
      ['signature.time'],
    ],
    ['a claimed time far after the stamp', { at: new Date(Date.UTC(2026, 3, 1)) }, ['signature.time']],
  ])('%s breaks it', async (_, tricks, ids) => {
    const found = await verifyDossier(await dossier(new FakeTsa({ at: SIGNED_AT, ...tricks })));
    expect(failed(found)).toEqual(ids);
    expect(found.verdict).toBe('broken');
  });

  it.each<[string, FakeTsa | undefined, 'inside' | 'none']>([
    ['a time stamp added after signing', new FakeTsa({ at: SIGNED_AT }), 'none'],
    ['a time stamp taken out', undefined, 'inside'],
  ])('%s breaks it', async (_, tsa, said) => {
    expect(failed(await verifyDossier(await dossier(tsa, said)))).toEqual(['signature.form']);
  });

  it('of an earlier version says that this is not known', async () => {
    const found = await verifyDossier(await dossier(undefined, 'not said'));
    expect(failed(found)).toEqual([]);
    expect(resultOf(found, 'signature.form')).toBe('notice');
  });

  it('a key of a time-stamp server that is too weak', async () => {
    const { generateKeyPairSync } = await import('node:crypto');
    const tsa = new FakeTsa({ at: SIGNED_AT, keys: generateKeyPairSync('ec', { namedCurve: 'secp256k1' }) });
    expect(failed(await verifyDossier(await dossier(tsa)))).toEqual(['signature.time-stamp']);
  });

  it('a byte of the stamp changed', async () => {
    const signed = await dossier(new FakeTsa({ at: SIGNED_AT }));
    const year = Buffer.from('20260717090500Z').toString('hex');
    const other = Buffer.from('20260717090501Z').toString('hex');
    expect(failed(await verifyDossier(overwrite(signed, year, other)))).toEqual(['signature.time-stamp']);
  });
});
