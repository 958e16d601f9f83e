import { X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect } from 'vitest';
import { builtDemo } from '../../demo/demo.js';
import { installPacked } from '../packed.js';
import { checkWith, chromium, scratch } from '../programs.js';
import { bundled, inBrowser } from './in-browser.js';

/** A page of somebody who installed the package: it verifies a dossier, looks goods up and computes. */
const PAGE = `
import { meanKineticTemperature } from 'load-dossier/assess';
import { whatIsPublished } from 'load-dossier/reference';
import { verifyDossier } from 'load-dossier/verify';

const bytesOf = (base64) => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
globalThis.resultsOf = async (text) => {
  const { pdf, certificate } = JSON.parse(text);
  const dossier = bytesOf(pdf);
  const sound = await verifyDossier(dossier, { trusted: [bytesOf(certificate)] });
  dossier[dossier.length >> 1] ^= 1;
  const changed = await verifyDossier(dossier, { trusted: [bytesOf(certificate)] });
  return JSON.stringify({
    verdicts: [sound.verdict, changed.verdict],
    checks: sound.checks.length,
    goods: whatIsPublished('celery').goods.key,
    computes: typeof meanKineticTemperature,
  });
};
`;

const disk = scratch();
afterAll(disk.end);
let script: string;
beforeAll(() => {
  installPacked(disk.folder);
  script = bundled(disk.put('page.js', PAGE), disk.folder);
}, 300_000);

checkWith(chromium, 'a page that imports the parts of the package verifies the demonstration', async () => {
  const { demo, built } = await builtDemo();
  const handed = JSON.stringify({
    pdf: (await readFile(built.file)).toString('base64'),
    certificate: new X509Certificate(await readFile(demo.certificate)).raw.toString('base64'),
  });
  const { results, refused } = await inBrowser(script, handed, 'page', {});
  expect(JSON.parse(results)).toEqual({
    verdicts: ['intact', 'broken'],
    checks: expect.any(Number),
    goods: 'celery',
    computes: 'function',
  });
  // Under a policy that runs no code made of text.
  expect(refused).toEqual([]);
});
