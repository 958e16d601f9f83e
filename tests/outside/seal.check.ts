import { generateKeyPairSync, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { canonicalBytes } from '../../src/core/ledger/canonical.js';
import { MANIFEST_NAME } from '../../src/core/model/manifest.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { toInstant } from '../../src/core/model/time.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import type { Identity } from '../../src/signing/identity.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import type { VisiblePlace } from '../../src/signing/widget.js';
import { updated } from '../core/verify/forge.js';
import { BUILT_AT, type Parts, sampleParts, samplePdf } from '../signing/sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from '../signing/sample-identity.js';
import { ask, checkWith, openssl, pdfdetach, pdfsig, pyhanko, qpdf, scratch, verapdf } from './programs.js';

/** A constant page; all that varies comes in as JSON and as files. */
const PAGE = `
#let data = json("/data.json")
#set document(title: data.title, date: datetime(year: 2026, month: 7, day: 17))
#set text(lang: "en", font: "Libertinus Serif", fallback: false)
#for one in data.attached {
  pdf.attach("/" + one.name, relationship: "data", mime-type: one.type, description: one.name)
}
= #data.title
A dossier of one page, #link("https://example.org")[with a link].
`;

const disk = scratch();
afterAll(disk.end);

/** PDF/A-3a or PDF/UA-1 as the typesetter writes it (Typst 0.14). */
function typeset(parts: Parts, pdfStandard: 'a-3a' | 'ua-1' = 'a-3a'): Uint8Array {
  const all = [
    ...parts.attached,
    { name: MANIFEST_NAME, bytes: canonicalBytes(parts.manifest), type: 'application/json' },
  ];
  for (const { name, bytes } of all) disk.put(name, bytes);
  const attached = all.map(({ name, type }) => ({ name, type }));
  disk.put('data.json', JSON.stringify({ title: 'Delivery 2026-0714-A', attached }));
  const page = disk.put('page.typ', PAGE);
  const compiler = NodeCompiler.create({ workspace: disk.folder });
  const compiled = compiler.compile({ mainFilePath: page });
  if (compiled.result === null) throw new Error('the page does not compile');
  return compiler.pdf(compiled.result, {
    pdfStandard,
    creationTimestamp: Date.parse(BUILT_AT) / 1000,
  });
}

const pem = (identity: Identity) => new X509Certificate(identity.certificateDer).toString();

const KINDS = [
  ['P-256', sampleIdentity()],
  ['P-384', sampleIdentity({ keys: generateKeyPairSync('ec', { namedCurve: 'P-384' }) })],
  ['RSA 3072', sampleIdentity({ keys: generateKeyPairSync('rsa', { modulusLength: 3072 }) })],
] as const;

describe.each(KINDS)('a dossier signed with %s', (kind, identity) => {
  const tag = kind.replace(' ', '-');
  let bytes: Uint8Array;
  let file: string;
  let unsigned: string;
  let certificate: string;
  beforeAll(async () => {
    const pdf = typeset(sampleParts());
    unsigned = disk.put(`unsigned-${tag}.pdf`, pdf);
    bytes = await signPdf(pdf, identity, {
      at: toInstant(SIGNED_AT.getTime()),
      reason: 'Dossier of the delivery (2026-0714-A), Ñandú \\ 5',
      location: 'Esparto Flats',
      random: countingBytes(),
    });
    file = disk.put(`signed-${tag}.pdf`, bytes);
    certificate = disk.put(`${tag}.crt.pem`, pem(identity));
    expect((await verifyDossier(bytes, { trusted: [identity.certificateDer] })).verdict).toBe('intact');
  });

  /** The covered bytes and the signature, cut out by hand; the photo holds the text of a byte range too. */
  function cut(): { covered: string; signature: string } {
    const [, open = 0, after = 0, rest = 0] = (
      /ETSI\.CAdES\.detached \/ByteRange \[(0) (\d+) (\d+) (\d+) *\]/.exec(
        Buffer.from(bytes).toString('latin1'),
      ) ?? []
    )
      .slice(1)
      .map(Number);
    const covered = Buffer.concat([bytes.subarray(0, open), bytes.subarray(after, after + rest)]);
    const hex = Buffer.from(bytes).toString('latin1', open + 1, after - 1);
    return {
      covered: disk.put(`${tag}.covered`, covered),
      signature: disk.put(`${tag}.p7s`, Buffer.from(hex, 'hex')),
    };
  }

  checkWith(pdfsig, 'the signature is valid and covers the whole file', () => {
    // It exits 0 on a mismatch too: the words count.
    const { out } = ask(pdfsig, '-nocert', file);
    expect(out).toContain('Signature Validation: Signature is Valid.');
    expect(out).toContain('Total document signed');
    expect(out).toContain('Signature Type: ETSI.CAdES.detached');
    expect(out).toContain('Signing Hash Algorithm: SHA-256');
    expect(out.match(/Signature #/g)).toHaveLength(1);
    expect(out).toContain('Signing Time: Jul 17 2026 09:05:00');
  });

  checkWith(pdfsig, 'a changed byte is a mismatch for it as for us', async () => {
    const at = Buffer.from(bytes).indexOf('/Lang');
    const changed = Uint8Array.from(bytes);
    changed[at + 7] = (changed[at + 7] ?? 0) ^ 1;
    expect(ask(pdfsig, '-nocert', disk.put(`changed-${tag}.pdf`, changed)).out).toContain('Digest Mismatch');
    expect((await verifyDossier(changed)).verdict).toBe('broken');
  });

  checkWith(qpdf, 'finds nothing to complain about', () => {
    const { status, out } = ask(qpdf, '--check', file);
    expect(out).toContain('No syntax or stream encoding errors found');
    expect(out).not.toMatch(/warning/i);
    expect(status).toBe(0);
  });

  checkWith(pdfdetach, 'every attachment comes out byte for byte', () => {
    const into = disk.put(`list-${tag}`, '').replace(/list-[^/]*$/, '');
    const expected = [...sampleParts().attached.map(({ name }) => name), MANIFEST_NAME];
    expect(ask(pdfdetach, '-list', file).out).toContain(`${expected.length} embedded files`);
    for (const { name, bytes: original } of sampleParts().attached) {
      const out = join(into, `out-${tag}-${name}`);
      expect(ask(pdfdetach, '-savefile', name, '-o', out, file).status).toBe(0);
      expect(readFileSync(out).equals(original)).toBe(true);
    }
  });

  checkWith(openssl, 'accepts the CMS as CAdES over the covered bytes', () => {
    const { covered, signature } = cut();
    const trust = ['-CAfile', certificate, '-purpose', 'any', '-attime', String(SIGNED_AT.getTime() / 1000)];
    const asked = ['cms', '-verify', '-binary', '-cades', '-inform', 'DER', '-in', signature];
    const good = ask(openssl, ...asked, '-content', covered, ...trust, '-out', `${covered}.out`);
    expect(good.out).toMatch(/Verification successful/);
    expect(good.status).toBe(0);
    const other = disk.put(`${tag}.other`, Buffer.concat([readFileSync(covered), Buffer.from('x')]));
    const bad = ask(openssl, ...asked, '-content', other, ...trust, '-out', `${covered}.out`);
    expect(bad.status).not.toBe(0);
  });

  checkWith(openssl, 'reads the certificate as one for signing that is no authority', () => {
    const { out } = ask(openssl, 'x509', '-in', certificate, '-noout', '-text');
    expect(out).toMatch(/Basic Constraints: critical\s+CA:FALSE/);
    expect(out).toMatch(/Key Usage: critical\s+Digital Signature, Non Repudiation/);
    expect(out).toMatch(/Subject Key Identifier/);
  });

  checkWith(pyhanko, 'judges it valid, whole, and certified without changes', () => {
    const { out, status } = ask(
      pyhanko,
      ...['sign', 'validate', '--no-revocation-check', '--pretty-print'],
      ...['--validation-time', SIGNED_AT.toISOString(), '--trust', certificate, '--trust-replace', file],
    );
    expect(out).toContain('The signature is cryptographically sound.');
    expect(out).toContain('The signature covers the entire file.');
    expect(out).toContain("The signer's certificate is trusted.");
    expect(out).toContain('The signature is judged VALID.');
    expect(status).toBe(0);
  });

  checkWith(pyhanko, 'judges it valid as an AdES signature (ETSI EN 319 102-1)', () => {
    const { out, status } = ask(
      pyhanko,
      ...['sign', 'adesverify', '--no-revocation-check', '--pretty-print'],
      ...['--validation-time', SIGNED_AT.toISOString(), '--trust', certificate, '--trust-replace', file],
    );
    expect(out).toContain('The signature is judged VALID.');
    expect(status).toBe(0);
  });

  checkWith(verapdf, 'is PDF/A-3a before and after it was signed', () => {
    const { out, status } = ask(verapdf, '3a', unsigned, file);
    expect(out).toBe(`PASS ${unsigned}\nPASS ${file}\n`);
    expect(status).toBe(0);
  });
});

describe('what the programs say about a dossier that is not sound', () => {
  const [, identity] = KINDS[0];
  const options = () => ({ at: toInstant(SIGNED_AT.getTime()), random: countingBytes() });
  const certificate = () => disk.put('first.crt.pem', pem(identity));
  async function blankedLater(): Promise<string> {
    const signed = await signPdf(typeset(sampleParts()), identity, options());
    const text = Buffer.from(signed).toString('latin1');
    const [, number = '', body = ''] =
      /\n(\d+) 0 obj\n(<<\n\/Type \/Page\n[\s\S]*?)\nendobj/.exec(text) ?? [];
    const forged = updated(signed, Number(number), body.replace(/\/Contents \d+ 0 R/, ''));
    expect((await verifyDossier(forged)).verdict).toBe('broken');
    return disk.put('blanked.pdf', forged);
  }

  checkWith(pdfsig, 'an update after signing is not the whole document', async () => {
    const { out } = ask(pdfsig, '-nocert', await blankedLater());
    expect(out).not.toContain('Total document signed');
    expect(out).toContain('Not total document signed');
  });

  checkWith(pyhanko, 'an update after signing breaks the certification', async () => {
    const { out } = ask(
      pyhanko,
      ...['sign', 'validate', '--no-revocation-check', '--pretty-print', '--no-strict-syntax'],
      ...['--validation-time', SIGNED_AT.toISOString(), '--trust', certificate(), '--trust-replace'],
      await blankedLater(),
    );
    expect(out).not.toContain('The signature is judged VALID.');
    expect(out).toContain('The signature is judged INVALID.');
  });

  checkWith(verapdf, 'a PDF that is no PDF/A does not pass', async () => {
    const { out, status } = ask(verapdf, '3a', disk.put('plain.pdf', await samplePdf()));
    expect(status).toBe(1);
    expect(out).toMatch(/^FAIL .*\n {2}ISO 19005-3:2012 6\./);
  });

  const VISIBLE: VisiblePlace = { page: 'last', rectangle: [60, 60, 400, 120], alt: 'Signature, certified' };
  // A visible field must be tagged as a form (ISO 14289-1 §7.18.4).
  for (const [kind, visible] of [
    ['an invisible', undefined],
    ['a visible', VISIBLE],
  ] as const)
    checkWith(verapdf, `${kind} signature takes nothing from a PDF/UA-1`, async () => {
      const pdf = typeset({ ...sampleParts(), attached: [] }, 'ua-1');
      const signed = await signPdf(pdf, identity, {
        ...options(),
        ...omitUndefined({ visible }),
      });
      expect(ask(verapdf, 'ua1', disk.put('ua.pdf', signed)).out).toMatch(/^PASS /);
    });
});
