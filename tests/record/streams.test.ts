import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256Of } from '../../src/core/ledger/tree.js';
import { DossierError } from '../../src/core/model/error.js';
import { createRecord, type DeliveryRecord, openRecord } from '../../src/record/store.js';
import { documentOf, someFacts } from '../core/ledger/drafts.js';
import { portsOf, processesOf } from './make.js';
import { CUTS, MemoryDisk } from './memory-disk.js';

const FOLDER = '/records/one';
let disk: MemoryDisk;
let record: DeliveryRecord;
beforeEach(async () => {
  disk = new MemoryDisk();
  await disk.makeFolder('/records');
  record = await createRecord(FOLDER, portsOf({ fs: disk, processes: processesOf(1) }), someFacts());
});
afterEach(() => record.close().catch(() => undefined));

async function* pieces(...texts: string[]): AsyncIterable<Uint8Array> {
  for (const text of texts) yield Buffer.from(text);
}

describe('an original that comes in pieces', () => {
  it('is one file under the hash of all of it', async () => {
    const { file, isNew } = await record.addOriginalStream(pieces('ab', '', 'c'), '.TXT');
    expect([isNew, file.bytes, file.sha256]).toEqual([true, 3, sha256Of(Buffer.from('abc'))]);
    expect(file.path).toBe(`${FOLDER}/originals/${file.sha256}.txt`);
    expect((await record.addOriginalBytes(Buffer.from('abc'), 'txt')).isNew).toBe(false);
  });

  it('leaves nothing behind when its source fails or goes on too long', async () => {
    const damaged = new DossierError('unreadable-file', 'damaged');
    const failing = async function* () {
      yield Buffer.from('ab');
      throw damaged;
    };
    await expect(record.addOriginalStream(failing(), '.txt')).rejects.toBe(damaged);
    await expect(record.addOriginalStream(pieces('abc', 'd'), '.txt', 3)).rejects.toMatchObject({
      code: 'file-too-large',
    });
    expect(await disk.list(`${FOLDER}/originals`)).toEqual([]);
  });
});

describe.each(CUTS)('when the power goes after an append (%s)', (cut) => {
  it('every original that an entry speaks of is there, though names were brought to the disk once for all', async () => {
    const added = [];
    for (const text of ['one', 'two', 'three'])
      added.push((await record.addOriginalStream(pieces(text), '.txt')).file);
    await record.append(added.map((file) => documentOf(record.nextEvidenceId(), file)));
    disk.restart(cut);
    record = await openRecord(FOLDER, portsOf({ fs: disk, processes: processesOf(2) }), { write: false });
    expect(record.entries).toHaveLength(4);
    for (const { sha256 } of added) expect(sha256Of(await record.readOriginal(sha256))).toBe(sha256);
  });
});
