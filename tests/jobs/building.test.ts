import {
  appendFileSync,
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
import type { Progress } from '../../src/core/ports/work.js';
import { build, collect, newDelivery, verifyDossier } from '../../src/index.js';
import { machinePorts } from '../../src/record/disk/ports.js';
import { openRecord } from '../../src/record/store.js';
import { FACTS } from '../cli/a-delivery.js';

const root = mkdtempSync(join(tmpdir(), 'building-'));
const who = { folder: join(root, 'delivery'), by: 'A test', now: () => new Date('2026-07-17T09:05:00Z') };
afterAll(() => rmSync(root, { recursive: true, force: true }));

beforeAll(async () => {
  writeFileSync(join(root, 'facts.yaml'), FACTS);
  writeFileSync(join(root, 'notice.txt'), 'NOTICE OF REJECTION');
  await newDelivery({ ...who, file: join(root, 'facts.yaml') });
  await collect({
    ...who,
    paths: [join(root, 'notice.txt')],
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
  });
});

const built = (more: Partial<Parameters<typeof build>[0]> = {}) =>
  build({
    ...who,
    out: join(root, 'out', 'd.pdf'),
    paper: undefined,
    identityFolder: join(root, 'identity'),
    passphrase: async () => 'only for this test',
    progress: () => undefined,
    ...more,
  });

describe('a first dossier', () => {
  it('is signed after its certificate was made, however long the passphrase takes to type', async () => {
    let clock = who.now().getTime();
    const { file, notices } = await built({
      out: join(root, 'first.pdf'),
      now: () => new Date(clock),
      passphrase: async () => {
        clock += 90_000;
        return 'only for this test';
      },
    });
    expect(notices.join()).toContain('Made a signing identity');
    const { signer, checks } = await verifyDossier(readFileSync(file));
    expect(signer?.claimedTime).toBe('2026-07-17T09:06:30.000Z');
    expect(checks.find(({ id }) => id === 'certificate.validity')?.result).toBe('passed');
  });
});

describe('a bag beside the dossier', () => {
  const later = () => new Date('2026-07-17T10:00:00Z');
  it('is whole before the dossier is kept, and the dossier names its hash', async () => {
    const { bag } = await built({ bag: true, now: later });
    expect(readdirSync(join(root, 'out')).sort()).toEqual(['d.bag.zip', 'd.pdf']);
    expect(bag?.payloadFiles).toBe(4);
    expect(readFileSync(join(root, 'out', 'd.pdf')).length).toBeGreaterThan(10_000);
    rmSync(join(root, 'out'), { recursive: true });
  });

  it('stays when it is built once more under the same name and that fails', async () => {
    const names = ['d.bag.zip', 'd.pdf'];
    await built({ bag: true, now: later });
    const before = names.map((name) => readFileSync(join(root, 'out', name)));
    mkdirSync(join(root, 'own', 'dossier'), { recursive: true });
    writeFileSync(join(root, 'own', 'dossier', 'cover.typ'), '#let cover(it, doc) = panic("no")');
    await expect(built({ bag: true, templates: join(root, 'own'), now: later })).rejects.toMatchObject({
      code: 'bad-template',
    });
    expect(readdirSync(join(root, 'out')).sort()).toEqual(names);
    expect(names.map((name) => readFileSync(join(root, 'out', name)))).toEqual(before);
    rmSync(join(root, 'out'), { recursive: true });
  });

  it('that has a folder in its place is named, and leaves neither', async () => {
    mkdirSync(join(root, 'out', 'd.bag.zip', 'full'), { recursive: true });
    await expect(built({ bag: true, now: later })).rejects.toMatchObject({
      code: 'disk',
      where: { file: join(root, 'out', 'd.bag.zip') },
    });
    expect(readdirSync(join(root, 'out'))).toEqual(['d.bag.zip']);
    rmSync(join(root, 'out'), { recursive: true });
  });

  it('that cannot be written whole leaves neither', async () => {
    writeFileSync(join(root, 'minutes.txt'), 'MINUTES OF THE INSPECTION\n'.repeat(80_000));
    await collect({
      ...who,
      now: later,
      paths: [join(root, 'minutes.txt')],
      logZone: undefined,
      logUnit: undefined,
      progress: () => undefined,
    });
    const record = await openRecord(who.folder, machinePorts(), { write: false });
    const original = record
      .state()
      .evidence.flatMap((item) => ('file' in item ? item.file.sha256 : []))
      .at(-1);
    const path = original === undefined ? undefined : await record.originalPath(original);
    await record.close();
    if (path === undefined) throw new Error('nothing was taken in');
    // Too large to be attached, and changed before the bag is begun, so that only the bag meets it.
    const change = ({ what }: Progress) => {
      if (what === 'preparing the pictures') appendFileSync(path, 'more');
    };
    await expect(built({ bag: true, maxSize: '1MB', progress: change, now: later })).rejects.toMatchObject({
      code: 'record-damaged',
    });
    expect(readdirSync(join(root, 'out'))).toEqual([]);
  });
});
