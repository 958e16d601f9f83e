import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import yazl from 'yazl';
import { build } from '../../src/jobs/build.js';
import { type CollectInput, collect } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { verify } from '../../src/jobs/verify.js';
import { FACTS } from '../cli/a-delivery.js';
import { sampleIdentity } from '../signing/sample-identity.js';

const room = mkdtempSync(join(tmpdir(), 'called-off-'));
afterAll(() => rmSync(room, { recursive: true, force: true }));
const now = () => new Date('2026-07-16T12:00:00Z');
const evidence = join(room, 'evidence');
const FILES = 40;

async function zipOf(files: Record<string, string>): Promise<Buffer> {
  const zip = new yazl.ZipFile();
  for (const [name, text] of Object.entries(files)) zip.addBuffer(Buffer.from(text), name);
  zip.end();
  const pieces: Buffer[] = [];
  for await (const piece of zip.outputStream) pieces.push(Buffer.from(piece));
  return Buffer.concat(pieces);
}

beforeAll(async () => {
  mkdirSync(evidence);
  for (let i = 0; i < FILES; i += 1)
    writeFileSync(join(evidence, `note-${String(i).padStart(2, '0')}.txt`), `Called the dock, try ${i}.`);
  const inside = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`in-${i}.txt`, `Inside ${i}`]));
  writeFileSync(join(evidence, 'note-20-chat.zip'), await zipOf(inside));
  writeFileSync(join(room, 'facts.yaml'), FACTS);
});

let made = 0;
async function newFolder(): Promise<string> {
  made += 1;
  const folder = join(room, `delivery-${made}`);
  await newDelivery({ folder, file: join(room, 'facts.yaml'), by: 'Test', now });
  return folder;
}

const collecting = (folder: string): CollectInput => ({
  folder,
  by: 'Test',
  now,
  paths: [evidence],
  logZone: undefined,
  logUnit: undefined,
});

/** Hashes of the originals in a folder, and of those that its entries name. */
function originals(folder: string): { kept: string[]; named: string[] } {
  const rows = readFileSync(join(folder, 'ledger.jsonl'), 'utf8');
  return {
    kept: readdirSync(join(folder, 'originals'))
      .map((name) => name.replace(/\..*$/, ''))
      .sort(),
    named: [
      ...rows.matchAll(
        /"evidence-received".*?"sha256":"([0-9a-f]{64})"|"sha256":"([0-9a-f]{64})".*?"evidence-received"/g,
      ),
    ]
      .map(([, before, after]) => before ?? after ?? '')
      .sort(),
  };
}

describe('collect that is called off', () => {
  it.each([1, 2, 20, 22, 23, FILES])(
    'at file %i keeps those before it, no original of others, and the next one takes the rest',
    async (at) => {
      const folder = await newFolder();
      const stop = new AbortController();
      const why = new Error('enough');
      const progress = ({ done }: { done?: number }) => {
        if (done === at) stop.abort(why);
      };
      await expect(collect({ ...collecting(folder), signal: stop.signal, progress })).rejects.toBe(why);
      const { kept, named } = originals(folder);
      expect(kept).toEqual(named);
      expect(named.length).toBeGreaterThanOrEqual(at - 1);
      expect(existsSync(join(folder, 'lock'))).toBe(false);
      const rest = await collect(collecting(folder));
      expect(rest.problems).toEqual([]);
      const after = originals(folder);
      expect(after.kept).toEqual(after.named);
      // Every note, the archive and what is in it.
      expect(after.kept).toHaveLength(FILES + 1 + 9);
      const report = await verify({ paths: [folder], trust: [] });
      expect(report.verdict).toBe('intact-signer-not-vouched-for');
    },
  );

  it('before it began changes nothing', async () => {
    const folder = await newFolder();
    const before = readFileSync(join(folder, 'ledger.jsonl'));
    await expect(
      collect({ ...collecting(folder), signal: AbortSignal.abort(new Error('never mind')) }),
    ).rejects.toThrow('never mind');
    expect(readFileSync(join(folder, 'ledger.jsonl')).equals(before)).toBe(true);
    expect(originals(folder).kept).toEqual([]);
  });

  it('leaves an original that lay there before', async () => {
    const folder = await newFolder();
    await collect({ ...collecting(folder), paths: [join(evidence, 'note-05.txt')] });
    const stop = new AbortController();
    await expect(
      collect({ ...collecting(folder), signal: stop.signal, progress: () => stop.abort(new Error('no')) }),
    ).rejects.toThrow('no');
    const { kept, named } = originals(folder);
    // The file whose turn it was when it was called off, and the one that lay there.
    expect([kept.length, kept]).toEqual([2, named]);
  });
});

describe('a build that is called off', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await newFolder();
    await collect(collecting(folder));
  });
  const signer = sampleIdentity();
  const building = (delivery: string) => ({
    folder: delivery,
    by: 'Test',
    now,
    out: undefined,
    paper: undefined,
    bag: true,
    signer,
  });

  it.each(['preparing the pictures', 'setting the pages', 'signing', 'packing the originals'])(
    'while it is %s leaves what was there before, and the next one builds',
    async (step) => {
      const here = `${folder}-${step.replaceAll(' ', '-')}`;
      cpSync(folder, here, { recursive: true });
      const before = readdirSync(here, { recursive: true }).map(String).sort();
      const stop = new AbortController();
      const why = new Error('enough');
      const steps: string[] = [];
      const progress = ({ what }: { what: string }) => {
        steps.push(what);
        if (what === step) stop.abort(why);
      };
      await expect(build({ ...building(here), signal: stop.signal, progress })).rejects.toBe(why);
      expect(steps).toContain(step);
      const left = readdirSync(here, { recursive: true }).map(String).sort();
      expect(left.filter((name) => name !== 'dossiers')).toEqual(before);
      expect((await build(building(here))).pages).toBeGreaterThan(0);
    },
  );
});
