import { appendFile, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { leafHash, treeHash } from '../../src/core/ledger/tree.js';
import type { NewEntry } from '../../src/core/model/entry.js';
import { diskFileSystem } from '../../src/record/disk/ports.js';
import { createRecord, type DeliveryRecord, openRecord } from '../../src/record/store.js';
import { documentOf, pulpOf, someFacts } from '../core/ledger/drafts.js';
import { cases } from '../properties.js';
import { checkRecord } from './check-record.js';
import { portsOf, temporaryFolder } from './make.js';

let folder: string;
beforeEach(async () => {
  folder = join(await temporaryFolder(), 'delivery');
});
const at = (name: string) => join(folder, name);
const open = (write = false) => openRecord(folder, portsOf(), { write, wait: 0 });

/** A closed record of `count` pulps after the facts. */
async function recordOf(count: number): Promise<void> {
  const record = await createRecord(folder, portsOf(), someFacts());
  for (let i = 0; i < count; i += 1) await record.append([pulpOf(record.nextEvidenceId(), 34 + i)]);
  await record.close();
}

describe('a new record', () => {
  it('holds the facts as its first entry and can be opened', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await record.close();
    const again = await open();
    expect(again.state()).toMatchObject({
      size: 1,
      delivery: { delivery: 'TEST 2026-07/A', rules: 'produce' },
    });
    expect(again.state().deliveryHash).toBe(someFacts().sha256);
    expect(again.notices).toEqual([]);
    await checkRecord(folder, diskFileSystem);
  });

  it('is refused where there is one', async () => {
    await recordOf(1);
    await expect(createRecord(folder, portsOf(), someFacts())).rejects.toMatchObject({ code: 'bad-usage' });
    expect((await open()).entries).toHaveLength(2);
  });

  it('is refused with facts that do not hold, and leaves no record', async () => {
    const facts = { ...someFacts(), facts: { delivery: 'X' } };
    await expect(createRecord(folder, portsOf(), facts)).rejects.toMatchObject({
      code: 'bad-value',
      where: { field: expect.stringContaining('facts') },
    });
    await expect(open()).rejects.toMatchObject({ code: 'record-missing' });
    await (await createRecord(folder, portsOf(), someFacts())).close();
    await checkRecord(folder, diskFileSystem);
  });

  it.each([true, false])('is missing where there is none (write: %s), and nothing is made', async (write) => {
    await expect(open(write)).rejects.toMatchObject({ code: 'record-missing', where: { file: folder } });
    await expect(readFile(folder)).rejects.toMatchObject({ code: 'ENOENT' });
  });
});

describe('appending', () => {
  it('numbers and dates entries, and writes canonical lines whose leaves it gives', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    const first = record.nextEvidenceId();
    const second = record.nextEvidenceId();
    const added = await record.append([pulpOf(first), pulpOf(second)]);
    await record.close();
    expect(added.map((e) => [e.seq, e.at, e.by])).toEqual([
      [1, '2026-07-14T12:42:08.370Z', 'M. Ortega'],
      [2, '2026-07-14T12:42:08.370Z', 'M. Ortega'],
    ]);
    expect([first, second]).toEqual(['e1', 'e2']);
    const lines = (await readFile(at('ledger.jsonl'), 'utf8')).split('\n');
    expect(lines[1]).toBe(
      '{"at":"2026-07-14T12:42:08.370Z","body":{"evidence":"e1","from":"driver","kind":"pulp","line":"romaine","source":{"is":"typed"},"temperature":{"unit":"°F","value":34.2},"time":{"is":"none","why":"test"}},"by":"M. Ortega","seq":1,"type":"reading-recorded"}',
    );
    expect(record.leaves).toEqual(lines.slice(0, -1).map((line) => leafHash(Buffer.from(line))));
    expect(record.head.root).toBe(treeHash(record.leaves));
  });

  it('leaves in memory what the next opening reads', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await record.append([{ ...pulpOf('e1', -0), by: 'José “Pepe” 😂' }]);
    await record.close();
    const again = await open();
    expect(again.entries).toEqual(record.entries);
    expect(again.state()).toEqual(record.state());
    expect(again.head).toEqual(record.head);
  });

  it('goes on numbering evidence after what is there', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await record.append([pulpOf('e7')]);
    expect(record.nextEvidenceId()).toBe('e8');
    await record.close();
    const again = await open();
    expect([again.nextEvidenceId(), again.nextEvidenceId()]).toEqual(['e8', 'e9']);
  });

  it('keeps its order when two parts of a programme append at once', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await Promise.all(Array.from({ length: 10 }, () => record.append([pulpOf(record.nextEvidenceId())])));
    await record.close();
    expect((await checkRecord(folder, diskFileSystem)).entries).toHaveLength(11);
  });

  it('takes an undefined property for one that is left out', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await record
      .append([{ type: 'evidence-withheld', by: 'x', body: { evidence: 'e1', why: 'private' } }])
      .catch(() => undefined);
    await record.append([pulpOf('e1')]);
    const [added] = await record.append([
      { type: 'evidence-described', by: 'x', body: { evidence: 'e1', caption: undefined, line: 'romaine' } },
    ]);
    await record.close();
    expect(added?.body).toEqual({ evidence: 'e1', line: 'romaine' });
  });

  const refused: [string, NewEntry[], RegExp][] = [
    ['an impossible temperature', [pulpOf('e1', 900)], /not a temperature/],
    ['a number that is none', [pulpOf('e1', Number.NaN)], /number/],
    ['half a character', [{ ...pulpOf('e1'), by: 'x\ud800' }], /half a character/],
    ['an id that is no id', [pulpOf('e01')], /match pattern/],
    ['an id that is taken', [pulpOf('e1'), pulpOf('e1')], /there is evidence e1 already/],
    [
      'a description of what is not there',
      [{ type: 'evidence-described', by: 'x', body: { evidence: 'e5', caption: 'y' } }],
      /there is no evidence e5/,
    ],
    [
      'withholding what is not there',
      [{ type: 'evidence-withheld', by: 'x', body: { evidence: 'e5', why: 'y' } }],
      /there is no evidence e5/,
    ],
    [
      'a subject for what is not a file',
      [
        pulpOf('e1'),
        {
          type: 'evidence-described',
          by: 'x',
          body: { evidence: 'e1', subject: { is: 'seal', sure: 'confirmed' } },
        },
      ],
      /has no subject/,
    ],
  ];
  it.each(refused)('refuses %s, and records nothing of that call', async (_name, entries, message) => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await expect(record.append([pulpOf('e99'), ...entries])).rejects.toMatchObject({
      code: 'bad-value',
      message: expect.stringMatching(message),
    });
    expect(record.entries).toHaveLength(1);
    await record.append([pulpOf('e99')]);
    await record.close();
    expect((await checkRecord(folder, diskFileSystem)).entries).toHaveLength(2);
  });

  it('is a bug on a record that was opened for reading', async () => {
    await recordOf(0);
    const record = await open();
    await expect(record.append([pulpOf('e1')])).rejects.toThrow('not open for writing');
    await expect(record.addOriginal('x')).rejects.toThrow('not open for writing');
  });

  it('stops when another programme has changed the ledger meanwhile', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    await appendFile(at('ledger.jsonl'), 'x');
    await expect(record.append([pulpOf('e1')])).rejects.toMatchObject({ code: 'record-damaged' });
    await record.close();
  });
});

describe('the facts of delivery.yaml', () => {
  it('enter the ledger again only when the text has changed', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    expect(await record.syncFacts(someFacts())).toBeUndefined();
    const changed = someFacts('Another Invented Carrier');
    expect(await record.syncFacts(changed)).toMatchObject({ seq: 1, type: 'delivery-facts' });
    expect(await record.syncFacts(changed)).toBeUndefined();
    expect(record.state().delivery.parties.carrier?.name).toBe('Another Invented Carrier');
    await record.close();
    await checkRecord(folder, diskFileSystem);
  });

  it('may give the delivery another name; the record keeps the one it began with', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    const { facts } = someFacts();
    await record.syncFacts({ facts: { ...facts, delivery: 'TEST B' }, sha256: record.head.root, by: 'x' });
    await record.close();
    const again = await open();
    expect(again.state().delivery.delivery).toBe('TEST B');
    expect(again.head.delivery).toBe('TEST 2026-07/A');
  });
});

describe('opening a damaged record', () => {
  const damaged: [string, () => Promise<unknown>, { file: string; row?: number }][] = [
    ['a ledger that was cut', () => truncate(at('ledger.jsonl'), 700), { file: 'ledger.jsonl' }],
    ['a ledger without its last line feed', async () => cutEnd(1), { file: 'ledger.jsonl', row: 4 }],
    ['an empty ledger', () => truncate(at('ledger.jsonl'), 0), { file: 'ledger.jsonl', row: 1 }],
    ['no ledger', () => rm(at('ledger.jsonl')), { file: 'ledger.jsonl', row: 1 }],
    ['a checkpoint of no form', () => writeFile(at('checkpoint'), 'x'), { file: 'checkpoint' }],
    [
      'keys in another order',
      () => change((lines) => lines.with(2, `{"zz":1,${lines[2]?.slice(1)}`)),
      { file: 'ledger.jsonl', row: 3 },
    ],
    [
      'a space that was put in',
      () => change((lines) => lines.with(2, `${lines[2]?.slice(0, -1)} }`)),
      { file: 'ledger.jsonl', row: 3 },
    ],
    ['a row taken out', () => change((lines) => lines.toSpliced(2, 1)), { file: 'ledger.jsonl', row: 3 }],
    [
      'two rows that changed places',
      () => change((lines) => [lines[0] ?? '', lines[2] ?? '', lines[1] ?? '', ...lines.slice(3)]),
      { file: 'ledger.jsonl', row: 2 },
    ],
    [
      'a value that was changed in its form',
      () => change((lines) => lines.with(2, (lines[2] ?? '').replace('"value":35', '"value":33'))),
      { file: 'ledger.jsonl' },
    ],
    [
      'a row after the end with a wrong number',
      () => change((lines) => [...lines.slice(0, -1), lines[3] ?? '', '']),
      { file: 'ledger.jsonl', row: 5 },
    ],
    [
      'a row after the end that is no entry',
      () => appendFile(at('ledger.jsonl'), '{"seq":4}\n'),
      { file: 'ledger.jsonl', row: 5 },
    ],
    [
      'a row of bytes that are no text',
      () => appendFile(at('ledger.jsonl'), Uint8Array.of(0x22, 0xff, 0x22, 0x0a)),
      { file: 'ledger.jsonl', row: 5 },
    ],
    [
      'a row nested without end',
      () => appendFile(at('ledger.jsonl'), `${'['.repeat(50_000)}${']'.repeat(50_000)}\n`),
      { file: 'ledger.jsonl', row: 5 },
    ],
    [
      'the checkpoint of another delivery over the same rows',
      async () =>
        writeFile(at('checkpoint'), (await readFile(at('checkpoint'), 'utf8')).replace('2026-07', '2026-08')),
      { file: 'checkpoint' },
    ],
  ];

  async function change(how: (lines: string[]) => string[]): Promise<void> {
    const lines = (await readFile(at('ledger.jsonl'), 'utf8')).split('\n');
    await writeFile(at('ledger.jsonl'), how(lines).join('\n'));
  }
  async function cutEnd(bytes: number): Promise<void> {
    await truncate(at('ledger.jsonl'), (await readFile(at('ledger.jsonl'))).length - bytes);
  }

  it.each(damaged)('finds %s, names the place, and changes nothing', async (_name, damage, where) => {
    await recordOf(3);
    await damage();
    const before = await readFile(at('checkpoint'), 'utf8');
    const { file, ...rest } = where;
    for (const write of [false, true])
      await expect(open(write)).rejects.toMatchObject({
        code: 'record-damaged',
        where: { file: at(file), ...rest },
        fix: expect.stringMatching(/copy/),
      });
    expect(await readFile(at('checkpoint'), 'utf8')).toBe(before);
    expect((await diskFileSystem.list(folder)).filter((name) => name.endsWith('.lock'))).toEqual([]);
  });

  it('finds any byte of the ledger that is changed', async () => {
    await recordOf(2);
    const ledger = await readFile(at('ledger.jsonl'));
    await fc.assert(
      fc.asyncProperty(fc.nat(ledger.length - 1), fc.integer({ min: 1, max: 255 }), async (i, flip) => {
        const changed = Buffer.from(ledger);
        changed[i] = (ledger[i] ?? 0) ^ flip;
        await writeFile(at('ledger.jsonl'), changed);
        await expect(open()).rejects.toMatchObject({ code: 'record-damaged' });
      }),
      { numRuns: cases(300) },
    );
    await writeFile(at('ledger.jsonl'), ledger);
    expect((await open()).entries).toHaveLength(3);
  });

  it('finds every single bit of the checkpoint that is changed', async () => {
    await recordOf(1);
    const head = await readFile(at('checkpoint'));
    for (let bit = 0; bit < 8 * head.length; bit += 1) {
      const changed = Buffer.from(head);
      changed[bit >> 3] = (head[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      await writeFile(at('checkpoint'), changed);
      // A smaller size with its own root can't come about by one bit, so there is no exception to make.
      await expect(open()).rejects.toMatchObject({ code: 'record-damaged' });
    }
  });
});

describe('reading while another process writes', () => {
  it('never shows half of a write, even one that begins between two looks at the files', async () => {
    await recordOf(0);
    const before = [await readFile(at('ledger.jsonl')), await readFile(at('checkpoint'))] as const;
    const record = await open(true);
    await record.append([pulpOf('e1'), pulpOf('e2')]);
    await record.close();
    const [, row = ''] = (await readFile(at('ledger.jsonl'), 'utf8')).split('\n');
    const coming = await readFile(at('checkpoint'));
    await writeFile(at('ledger.jsonl'), before[0]);
    await writeFile(at('checkpoint'), before[1]);

    let begun = false;
    const ports = portsOf({
      fs: {
        ...diskFileSystem,
        async readFile(path) {
          if (path === at('ledger.jsonl') && !begun) {
            begun = true;
            await writeFile(at('checkpoint.next'), coming);
            await appendFile(path, `${row}\n`);
          }
          return diskFileSystem.readFile(path);
        },
      },
    });
    const reader = await openRecord(folder, ports, { write: false });
    expect(begun).toBe(true);
    expect(reader.entries).toHaveLength(1);
    expect(reader.notices).toMatchObject([{ is: 'set-aside' }]);
  });
});

describe('opening a record after a crash', () => {
  const torn = '{"at":"2026-07-14T12:42:08.370Z","bo';
  const opened = async (write: boolean): Promise<DeliveryRecord> => {
    const record = await open(write);
    await record.close();
    return record;
  };

  it('reports a torn last line to readers and leaves it', async () => {
    await recordOf(2);
    await appendFile(at('ledger.jsonl'), torn);
    const record = await opened(false);
    expect(record.entries).toHaveLength(3);
    expect(record.notices).toMatchObject([{ is: 'set-aside', message: expect.stringContaining('36 bytes') }]);
    expect(await readFile(at('ledger.jsonl'), 'utf8')).toContain(torn);
  });

  it('sets a torn last line aside for writers, says where, and loses nothing before it', async () => {
    await recordOf(2);
    await appendFile(at('ledger.jsonl'), torn);
    const record = await opened(true);
    expect(record.entries).toHaveLength(3);
    const aside = at('ledger.torn-2026-07-14T124208.370Z');
    expect(record.notices.map((n) => n.message).join('\n')).toContain(aside);
    expect(await readFile(aside, 'utf8')).toBe(torn);
    await checkRecord(folder, diskFileSystem);
    expect((await opened(true)).notices).toEqual([]);
  });

  it('keeps whole rows beyond the checkpoint and says so', async () => {
    await recordOf(2);
    const head = await readFile(at('checkpoint'));
    const record = await open(true);
    await record.append([pulpOf('e9'), pulpOf('e10')]);
    await record.close();
    await writeFile(at('checkpoint'), head);
    await appendFile(at('ledger.jsonl'), torn);
    for (const write of [false, true]) {
      const found = await opened(write);
      expect(found.entries).toHaveLength(5);
      expect(found.notices.map((n) => n.is)).toEqual(
        write ? ['unconfirmed-kept', 'set-aside', 'set-aside'] : ['unconfirmed-kept', 'set-aside'],
      );
      expect(found.head).toEqual(record.head);
    }
    await checkRecord(folder, diskFileSystem);
  });

  it('makes a missing checkpoint anew and says that the ledger’s end is not vouched for', async () => {
    await recordOf(2);
    await rm(at('checkpoint'));
    const record = await opened(true);
    expect(record.entries).toHaveLength(3);
    expect(record.notices).toMatchObject([{ is: 'checkpoint-missing' }]);
    await checkRecord(folder, diskFileSystem);
  });

  it('clears up what was half copied', async () => {
    await recordOf(0);
    await writeFile(join(folder, 'originals', '.part-0123456789abcdef'), 'half');
    await opened(false);
    expect(await diskFileSystem.list(at('originals'))).toHaveLength(1);
    await opened(true);
    expect(await diskFileSystem.list(at('originals'))).toEqual([]);
  });

  it('takes a file in again whose bytes had arrived before the crash, as new', async () => {
    const record = await createRecord(folder, portsOf(), someFacts());
    expect((await record.addOriginalBytes(Buffer.from('bill'), 'txt')).isNew).toBe(true);
    await record.close();
    const again = await open(true);
    const { file, isNew } = await again.addOriginalBytes(Buffer.from('bill'), 'txt');
    expect(isNew).toBe(true);
    await again.append([documentOf('e1', file)]);
    await again.close();
    await checkRecord(folder, diskFileSystem);
  });
});
