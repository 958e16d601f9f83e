import { generateKeyPairSync, X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect } from 'vitest';
import { toInstant } from '../../../src/core/model/time.js';
import type { VerificationReport } from '../../../src/core/model/verification.js';
import type { Identity } from '../../../src/signing/identity.js';
import { signPdf } from '../../../src/signing/sign-pdf.js';
import { bagFiles, type Files, recordFiles } from '../../core/verify/files.js';
import { dossier, identity } from '../../core/verify/forge.js';
import { builtDemo } from '../../demo/demo.js';
import { FakeTsa } from '../../signing/fake-tsa.js';
import { sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from '../../signing/sample-identity.js';
import { checkWith, chromium, scratch } from '../programs.js';
import { bundled, differenceOf, inBrowser } from './in-browser.js';
import { type GivenCases, reportsOf } from './reports.js';

const disk = scratch();
afterAll(disk.end);

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');
const pdf = (bytes: Uint8Array) => ({ is: 'dossier' as const, bytes: base64(bytes) });
const files = (is: 'bag' | 'record', all: Files) => ({
  is,
  files: Object.fromEntries([...all].map(([path, bytes]) => [path, base64(bytes)])),
});
const flipped = (bytes: Uint8Array, at: number) =>
  Uint8Array.from(bytes, (byte, i) => (i === at % bytes.length ? byte ^ 0x20 : byte));

let input: string;
let script: string;

beforeAll(async () => {
  input = JSON.stringify(await madeCases());
  script = bundled('verify-page.ts', disk.folder);
}, 300_000);

async function madeCases(): Promise<GivenCases> {
  const sound = await dossier();
  const trusted = [base64(identity.certificateDer)];
  const others = await Promise.all(
    [
      { namedCurve: 'P-384', kind: 'ec' as const },
      { modulusLength: 2048, kind: 'rsa' as const },
    ].map(async (wanted) => {
      const keys =
        wanted.kind === 'ec'
          ? generateKeyPairSync('ec', { namedCurve: wanted.namedCurve })
          : generateKeyPairSync('rsa', { modulusLength: wanted.modulusLength });
      const signer: Identity = sampleIdentity({ keys });
      return { items: [pdf(await dossier(undefined, signer))], trusted: [base64(signer.certificateDer)] };
    }),
  );
  const tsa = new FakeTsa({ at: SIGNED_AT });
  const { manifest, ...parts } = sampleParts();
  const saidStamped = await samplePdf({ ...parts, manifest: { ...manifest, timeStamp: 'inside' } });
  const stamped = await signPdf(saidStamped, identity, {
    at: toInstant(SIGNED_AT.getTime()),
    random: countingBytes(),
    stamp: async (value) => tsa.token(value),
  });
  const { demo, built } = await builtDemo();
  const demonstration = await readFile(built.file);
  const carrier = base64(new X509Certificate(await readFile(demo.certificate)).raw);
  const record = recordFiles();
  const changed = new Map(record).set('delivery.yaml', Buffer.from('delivery: other\n'));
  return [
    { items: [pdf(sound)], trusted: [] },
    { items: [pdf(sound)], trusted },
    ...others,
    { items: [pdf(stamped)], trusted: [...trusted, base64(tsa.certificate)] },
    { items: [pdf(Buffer.from('%PDF-1.7'))], trusted },
    ...Array.from({ length: 60 }, (_, i) => ({
      items: [pdf(flipped(i % 2 === 0 ? sound : stamped, 40 + i * 997))],
      trusted,
    })),
    { items: [pdf(demonstration)], trusted: [carrier] },
    { items: [pdf(flipped(demonstration, 5_000_000))], trusted: [carrier] },
    { items: [files('record', record)], trusted: [] },
    { items: [files('record', changed)], trusted: [] },
    { items: [files('bag', bagFiles()), pdf(sound)], trusted },
    { items: [files('bag', bagFiles(changed)), files('record', record)], trusted },
    { items: [files('bag', new Map([...bagFiles()].slice(1)))], trusted },
  ];
}

checkWith(chromium, 'a page’s verdicts and every word of its reports are Node’s', async () => {
  const own = await reportsOf(input);
  const verdicts: string[] = (JSON.parse(own) as VerificationReport[]).map(({ verdict }) => verdict);
  expect(verdicts.slice(0, 5)).toEqual([
    'intact-signer-not-vouched-for',
    ...Array.from({ length: 4 }, () => 'intact'),
  ]);
  expect(verdicts.slice(5, 66).every((verdict) => verdict === 'broken')).toBe(true);
  expect(verdicts.slice(66, 68)).toEqual(['intact', 'broken']);
  const { results, refused } = await inBrowser(script, input, 'page', {
    locale: 'de-DE',
    timezoneId: 'Asia/Tokyo',
  });
  expect(differenceOf(results, own)).toBeUndefined();
  expect(refused).toEqual([]);
  console.log(`${verdicts.length} reports, ${own.length} characters; the page is ${script.length} bytes`);
});
