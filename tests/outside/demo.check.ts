import { createHash, X509Certificate } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { PDFArray, PDFDict, PDFDocument, PDFName } from '#pdf-lib';
import { build, collect, newDelivery, verifyDossier } from '../../src/index.js';
import {
  ask,
  checkWith,
  openssl,
  pdfdetach,
  pdfsig,
  pdftotext,
  pyhanko,
  qpdf,
  scratch,
  verapdf,
} from './programs.js';

/** What independent programs say of the demonstration dossier, on both papers. */
const FIXTURES = join(import.meta.dirname, '../../fixtures/demo');
const now = () => new Date('2026-07-17T09:05:00Z');
const disk = scratch();
afterAll(disk.end);

const folder = join(disk.folder, 'delivery');
const identityFolder = join(disk.folder, 'identity');
const dossier = (paper: string) => join(disk.folder, `${paper}.pdf`);

const NOWHERE = { x: 0, y: 0, width: 0, height: 0 };

beforeAll(async () => {
  const who = { folder, by: 'Outside check', now };
  await newDelivery({ ...who, file: join(FIXTURES, 'delivery.yaml') });
  await collect({
    ...who,
    paths: [join(FIXTURES, 'evidence')],
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
  });
  for (const paper of ['Letter', 'A4'])
    await build({
      ...who,
      out: dossier(paper),
      paper,
      identityFolder,
      passphrase: async () => 'only for this check',
      progress: () => undefined,
    });
});

describe.each(['Letter', 'A4'])('the demonstration dossier on %s', (paper) => {
  checkWith(pdfsig, 'the signature is valid and the total document is signed', () => {
    const { out } = ask(pdfsig, '-nocert', dossier(paper));
    expect(out).toContain('Signature is Valid');
    expect(out).toContain('Total document signed');
    expect(out.match(/Signature #/g)).toHaveLength(1);
  });

  checkWith(pdftotext, 'the words of the signature stand inside its field, on the last page', async () => {
    const document = await PDFDocument.load(readFileSync(dossier(paper)), { updateMetadata: false });
    const page = document.getPage(document.getPageCount() - 1);
    const widget = page.node
      .Annots()
      ?.asArray()
      .map((ref) => document.context.lookup(ref, PDFDict))
      .find((one) => String(one.get(PDFName.of('Subtype'))) === '/Widget');
    const { x, y, width, height } = widget?.lookup(PDFName.of('Rect'), PDFArray).asRectangle() ?? NOWHERE;
    const box = [x, page.getHeight() - y - height, width, height].map((n) => String(Math.round(n)));
    const { out } = ask(
      pdftotext,
      ...['x', 'y', 'W', 'H'].flatMap((name, i) => [`-${name}`, box[i] ?? '']),
      ...['-f', String(document.getPageCount()), '-layout', dossier(paper), '-'],
    );
    const pem = readFileSync(join(identityFolder, 'identity.crt.pem'), 'utf8');
    const sha256 = createHash('sha256').update(new X509Certificate(pem).raw).digest('hex');
    expect(out).toContain('Quillfeather Demo Haulage');
    expect(out).toContain(sha256.slice(0, 16));
    expect(out).toContain('Fri Jul 17, 2026, 2:05 AM MST (Fri Jul 17, 2026, 9:05 AM UTC)');
    expect(out).toContain('Certified: no changes allowed');
  });

  checkWith(qpdf, 'finds nothing to complain about', () => {
    const { status, out } = ask(qpdf, '--check', dossier(paper));
    expect(out).toContain('No syntax or stream encoding errors found');
    expect(status).toBe(0);
  });

  checkWith(pdfdetach, 'the attachments have the SHA-256 that the manifest states', () => {
    const into = join(disk.folder, `attached-${paper}`);
    mkdirSync(into);
    expect(ask(pdfdetach, '-saveall', '-o', into, dossier(paper)).status).toBe(0);
    const manifest: { attachments: { name: string; sha256: string; bytes: number }[] } = JSON.parse(
      readFileSync(join(into, 'manifest.json'), 'utf8'),
    );
    expect(readdirSync(into).sort()).toEqual(
      ['manifest.json', ...manifest.attachments.map(({ name }) => name)].sort(),
    );
    for (const { name, sha256, bytes } of manifest.attachments) {
      const content = readFileSync(join(into, name));
      expect([name, content.length, createHash('sha256').update(content).digest('hex')]).toEqual([
        name,
        bytes,
        sha256,
      ]);
    }
  });

  checkWith(openssl, 'verifies the CMS over the byte range with the certificate alone', () => {
    const bytes = readFileSync(dossier(paper));
    const found = /ETSI\.CAdES\.detached \/ByteRange \[(0) (\d+) (\d+) (\d+) *\]/.exec(
      bytes.toString('latin1'),
    );
    const [open = 0, after = 0, rest = 0] = (found ?? []).slice(2).map(Number);
    const covered = disk.put(
      `${paper}.covered`,
      Buffer.concat([bytes.subarray(0, open), bytes.subarray(after, after + rest)]),
    );
    const signature = disk.put(
      `${paper}.p7s`,
      Buffer.from(bytes.toString('latin1', open + 1, after - 1), 'hex'),
    );
    const { status, out } = ask(
      openssl,
      ...['cms', '-verify', '-binary', '-cades', '-inform', 'DER', '-in', signature, '-content', covered],
      ...['-CAfile', join(identityFolder, 'identity.crt.pem'), '-purpose', 'any'],
      ...['-attime', String(now().getTime() / 1000), '-out', `${covered}.out`],
    );
    expect(out).toMatch(/Verification successful/);
    expect(status).toBe(0);
  });

  checkWith(pyhanko, 'accepts it as PAdES', () => {
    const { status, out } = ask(
      pyhanko,
      ...['sign', 'adesverify', '--no-revocation-check', '--pretty-print', '--trust-replace'],
      ...['--validation-time', now().toISOString(), '--trust', join(identityFolder, 'identity.crt.pem')],
      dossier(paper),
    );
    expect(out).toContain('The signature covers the entire file.');
    expect(out).toContain('The signature is judged VALID.');
    expect(status).toBe(0);
  });

  checkWith(verapdf, 'is PDF/A-3a', () => {
    const { status, out } = ask(verapdf, '3a', dossier(paper));
    expect(out).toBe(`PASS ${dossier(paper)}\n`);
    expect(status).toBe(0);
  });
});

checkWith(pdfsig, 'a changed byte is a mismatch for it as for us', async () => {
  const bytes = readFileSync(dossier('Letter'));
  const middle = bytes.length >> 1;
  bytes.writeUInt8(bytes.readUInt8(middle) ^ 1, middle);
  expect(ask(pdfsig, '-nocert', disk.put('changed.pdf', bytes)).out).toContain('Digest Mismatch');
  expect((await verifyDossier(bytes)).verdict).toBe('broken');
});
