import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { placeToWrite } from '../../src/jobs/typed/place-to-write.js';
import { type Yard, yard } from '../cli/a-delivery.js';

const root = realpathSync(mkdtempSync(join(tmpdir(), 'place-')));
const delivery = join(root, 'delivery');
mkdirSync(join(delivery, 'originals'), { recursive: true });
symlinkSync(delivery, join(root, 'link'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('a place to write to', () => {
  it.each([
    'out.pdf',
    'new/folder/out.pdf',
    'delivery/out.pdf',
    'delivery/originals.pdf',
    'delivery/dossiers/a.pdf',
  ])('%s will do', async (name) => {
    expect(await placeToWrite(join(root, name), delivery, '--out')).toBe(join(root, name));
  });

  it.each([
    'delivery/ledger.jsonl',
    'delivery/checkpoint',
    'delivery/checkpoint.next',
    'delivery/delivery.yaml',
    'delivery/originals',
    'delivery/originals/a.pdf',
    'delivery/dossiers/../ledger.jsonl',
    'link/ledger.jsonl',
    'link/originals/new/a.pdf',
  ])('%s is refused: it is the record’s', async (name) => {
    await expect(placeToWrite(join(root, name), delivery, '--out')).rejects.toMatchObject({
      code: 'bad-usage',
      where: { field: '--out' },
    });
  });
});

describe('commands that write a file', () => {
  let here: Yard;
  beforeAll(async () => {
    here = yard();
    await here.delivery();
  });
  afterAll(() => here.end());

  it.each([
    [['build', '-d', 'delivery', '--out', 'delivery/ledger.jsonl'], '--out'],
    [['checklist', 'delivery', '--output', 'delivery/originals/a.pdf'], '--output'],
    [['trail', 'delivery', '--pdf', 'delivery/checkpoint'], '--pdf'],
    [['answer', 'delivery', '--letter', 'inspection-request', '--out', 'delivery/originals/a'], '--out'],
  ])('%j is refused, and the record stays as it was', async (args, option) => {
    const before = readFileSync(here.at('delivery/ledger.jsonl'), 'utf8');
    const { code, err } = await here.dossier(...args);
    expect([code, err]).toEqual([2, expect.stringContaining(option)]);
    expect(readFileSync(here.at('delivery/ledger.jsonl'), 'utf8')).toBe(before);
  });
});
