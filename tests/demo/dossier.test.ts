import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { numberExhibits } from '../../src/compose/exhibits.js';
import { type Manifest, manifest } from '../../src/core/model/manifest.js';
import { toInstant } from '../../src/core/model/time.js';
import { assessRecord } from '../../src/jobs/assess.js';
import type { BuildReport } from '../../src/jobs/build.js';
import type { CollectReport } from '../../src/jobs/collect.js';
import { withDelivery } from '../../src/jobs/delivery.js';
import { verifyFile } from '../../src/jobs/verify.js';
import { dossierHere } from '../cli/run.js';
import { attachedTo } from './attached.js';
import { type BuiltDemo, builtDemo, collectInto } from './demo.js';
import { EVIDENCE } from './where.js';

let demo: BuiltDemo['demo'];
let collected: CollectReport;
let built: BuildReport;
let attached: Map<string, Buffer>;
let listed: Manifest;
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const ledger = () => readFileSync(join(demo.folder, 'ledger.jsonl'));

beforeAll(async () => {
  ({ demo, collected, built } = await builtDemo());
  attached = await attachedTo(readFileSync(built.file));
  listed = manifest.parse(JSON.parse((attached.get('manifest.json') ?? Buffer.alloc(0)).toString('utf8')));
});

describe('the demonstration is collected', () => {
  it('without a problem, every file of it', () => {
    expect(collected.problems).toEqual([]);
    expect(collected.counts).toMatchObject({ held: 0, refused: 0 });
    expect(collected.counts.taken).toBe(collected.items.length);
    expect(collected.items.every((item) => item.outcome === 'taken-in')).toBe(true);
  });

  it('and taken for what it is', () => {
    const taken = (name: string) => collected.items.find((item) => item.file.endsWith(name))?.takenFor;
    expect(taken('unit-download.csv')).toMatch(/^unit log/);
    expect(taken('readings.csv')).toMatch(/^readings table/);
    expect(taken('IMG_0412.jpg')).toBe('photo: pulp-display');
    expect(taken('bill-of-lading.pdf')).toMatch(/bill-of-lading$/);
  });

  it('every original lies in the record byte for byte', () => {
    for (const item of listed.exhibits)
      if (item.file !== undefined) {
        const extension = /\.[^.]+$/.exec(item.file.name)?.[0].toLowerCase() ?? '';
        const kept = readFileSync(join(demo.folder, 'originals', `${item.file.sha256}${extension}`));
        expect(sha256(kept)).toBe(item.file.sha256);
      }
  });
});

describe('the dossier, verified', () => {
  it('is intact, and its signer is not vouched for', async () => {
    const { verdict, checks, signer, fingerprint } = await verifyFile(built.file, []);
    expect(checks.filter((check) => check.result === 'failed')).toEqual([]);
    expect(verdict).toBe('intact-signer-not-vouched-for');
    expect(signer?.name).toBe('CN=Quillfeather Demo Haulage');
    expect(fingerprint).toEqual(built.fingerprint);
  });

  it('is intact for somebody who has the certificate by another way', async () => {
    expect((await verifyFile(built.file, [demo.certificate])).verdict).toBe('intact');
  });

  it.each([
    ['as it is', [], 0],
    ['with --require-trust', ['--require-trust'], 1],
    ['with --trust and --require-trust', ['--trust', 'CERTIFICATE', '--require-trust'], 0],
  ])('%s, the command ends with its exit code', async (_, more, code) => {
    const args = more.map((word) => (word === 'CERTIFICATE' ? demo.certificate : word));
    const ran = await dossierHere(['verify', built.file, ...args]);
    expect(ran.code).toBe(code);
    expect(ran.out).toContain(
      code === 0 && more.length > 0 ? ': INTACT\n' : ': INTACT, SIGNER NOT VOUCHED FOR',
    );
  });

  it('is what the record says that was built', () => {
    const last = JSON.parse(ledger().toString('utf8').trimEnd().split('\n').at(-1) ?? '');
    const { size, root } = built.fingerprint;
    expect(last.type).toBe('dossier-built');
    expect(last.body).toMatchObject({ sha256: sha256(readFileSync(built.file)), size, root });
  });
});

describe('what is attached', () => {
  it('is exactly what the manifest lists, with the sizes and hashes that it gives', () => {
    const inside = [...attached]
      .filter(([name]) => name !== 'manifest.json')
      .map(([name, bytes]) => ({ name, bytes: bytes.length, sha256: sha256(bytes) }));
    const promised = listed.attachments.map(({ name, bytes, sha256: hash }) => ({
      name,
      bytes,
      sha256: hash,
    }));
    const byName = (a: { name: string }, b: { name: string }) => (a.name < b.name ? -1 : 1);
    expect(inside.sort(byName)).toEqual(promised.sort(byName));
  });

  it('holds every file of the evidence, and leaves none out', () => {
    const hashes = new Set([...attached.values()].map(sha256));
    const files = listed.exhibits.filter((exhibit) => exhibit.file !== undefined);
    expect(files.length).toBe(collected.counts.taken);
    for (const { file, attachedAs } of files) {
      expect(hashes).toContain(file?.sha256);
      expect(sha256(attached.get(attachedAs ?? '') ?? Buffer.alloc(0))).toBe(file?.sha256);
    }
    expect(listed.leftOut).toEqual([]);
  });

  it('begins the ledger as the record has it', () => {
    const inside = attached.get('ledger.jsonl') ?? Buffer.alloc(0);
    expect(ledger().subarray(0, inside.length).equals(inside)).toBe(true);
    expect(inside.toString('utf8').trimEnd().split('\n')).toHaveLength(listed.record.size);
  });

  /** RFC 9162 §2.1.1: MTH({d}) = SHA-256(0x00 ‖ d), MTH(D[n]) = SHA-256(0x01 ‖ MTH(D[0:k]) ‖ MTH(D[k:n])). */
  it('has the tree hash that a few lines of other code give for its ledger', () => {
    const bytes = (hash: string) => Buffer.from(hash, 'hex');
    const tree = (leaves: string[]): string => {
      if (leaves.length === 1) return leaves[0] ?? '';
      const k = 2 ** Math.floor(Math.log2(leaves.length - 1));
      return sha256(
        Buffer.concat([Buffer.of(1), bytes(tree(leaves.slice(0, k))), bytes(tree(leaves.slice(k)))]),
      );
    };
    const rows = (attached.get('ledger.jsonl') ?? Buffer.alloc(0)).toString('utf8').trimEnd().split('\n');
    const leaves = rows.map((row) => sha256(Buffer.concat([Buffer.of(0), Buffer.from(row, 'utf8')])));
    expect(leaves).toEqual(listed.record.leaves);
    expect(tree(leaves)).toBe(built.fingerprint.root);
  });
});

describe('the cover', () => {
  it('shows at most seven findings, and says how many more there are', async () => {
    const { cover, findings } = await withDelivery(
      { folder: demo.folder, by: 'Test', now: () => new Date() },
      false,
      async (record) => {
        const { state, assessment, logs } = await assessRecord(record, toInstant(Date.now()));
        const { job } = await prepareDossier({
          state,
          volume: 'assessment',
          assessment,
          logs,
          exhibits: numberExhibits(state),
          attachments: [],
          readOriginal: async () => {
            throw new Error('the cover needs no pictures');
          },
          builtAt: assessment.at,
          fingerprint: record.head,
          signer: built.signer,
          tool: { name: 'test', version: '0' },
        });
        return { cover: job.document.cover, findings: assessment.findings };
      },
    );
    expect(findings.length).toBeGreaterThan(7);
    expect(cover.weighing?.lines ?? []).toHaveLength(7);
    // Celery and broccoli, both in band at delivery, share one of the seven lines.
    expect(JSON.stringify(cover.weighing?.more)).toContain(`${findings.length - 7} more`);
    expect(new Set((cover.weighing?.lines ?? []).map((line) => line.weighs))).toContain('hurts');
    expect(new Set((cover.weighing?.lines ?? []).map((line) => line.weighs))).toContain('helps');
  });
});

describe('the same folder once more', () => {
  it('adds nothing, says so for every file, and leaves the ledger byte for byte', async () => {
    const before = ledger();
    const again = await collectInto(demo, EVIDENCE);
    expect(again.counts).toEqual({ taken: 0, held: collected.items.length, readings: 0, refused: 0 });
    for (const item of again.items) {
      expect(item.outcome).toBe('already-held');
      expect(item.takenFor).toMatch(/^the same bytes as e\d+; nothing added$/);
    }
    expect(ledger().equals(before)).toBe(true);
  });

  it('under other names neither', async () => {
    const before = ledger();
    const one = join(demo.folder, '..', 'renamed.jpg');
    writeFileSync(one, readFileSync(join(EVIDENCE, 'photos/IMG_0412.jpg')));
    const again = await collectInto(demo, one);
    expect(again.items.map((item) => item.outcome)).toEqual(['already-held']);
    expect(ledger().equals(before)).toBe(true);
  });
});
