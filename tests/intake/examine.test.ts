import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PDFDocument } from '#pdf-lib';
import { receivedEvidence } from '../../src/core/model/evidence.js';
import { zone } from '../../src/core/model/time.js';
import { hintFor, readCaptions } from '../../src/intake/captions.js';
import { type ExamineInput, examineFile } from '../../src/intake/examine.js';
import { type FoundFile, scanFiles } from '../../src/intake/file-scan.js';
import { cases } from '../properties.js';
import { delivery, emptyFolder, put, someHash } from './a-delivery.js';

const folder = await emptyFolder();

async function examined(file: FoundFile, more: Partial<ExamineInput> = {}) {
  const { path, name, bytes } = file;
  const result = await examineFile({
    path,
    name,
    file: { name, bytes, sha256: someHash },
    delivery,
    ...more,
  });
  // Whatever comes out is what the ledger takes in.
  expect(receivedEvidence.safeParse({ ...result.received, evidence: 'e1' }).error).toBeUndefined();
  return result;
}
const of = async (bytes: string | Uint8Array, more: Partial<ExamineInput> = {}) =>
  examined(await put(folder, 'file', bytes), more);

describe('examine', () => {
  it('takes a PDF for a paper and counts its pages', async () => {
    const pdf = await PDFDocument.create();
    for (let i = 0; i < 3; i++) pdf.addPage();
    for (const useObjectStreams of [true, false]) {
      const { received, takenFor } = await of(await pdf.save({ useObjectStreams }));
      expect(received).toMatchObject({ kind: 'document', pages: 3 });
      expect(takenFor).toBe('document: PDF of 3 pages');
    }
  });

  it('keeps an encrypted PDF and says so', async () => {
    const { received, problems } = await examined({
      path: 'fixtures/bad/password.pdf',
      name: 'password.pdf',
      bytes: 1,
    });
    expect(received.flags.map((f) => f.is)).toEqual(['encrypted']);
    expect(problems[0]?.where.file).toBe('password.pdf');
  });

  it('keeps a log of more than 1,000,000 rows as a document and says how to get it in parts', async () => {
    const rows = '2026-07-14 04:00,36\n'.repeat(1_000_001);
    const { received, problems } = await of(`Time,Return F\n${rows}`, {
      options: { logZone: zone.parse('UTC') },
    });
    expect(received).toMatchObject({ kind: 'document' });
    expect(problems).toMatchObject([
      {
        code: 'file-too-large',
        message: 'more than 1,000,000 rows',
        where: { file: 'file', row: 1_000_002 },
        fix: expect.stringMatching(/in parts, by date, or with a longer step/),
      },
    ]);
  });

  it.each([
    ['no bytes', '', 'empty-file', 1],
    ['a blank line', '\n', 'empty-file', 1],
    ['noise', Buffer.from([0, 1, 2, 3, 4, 250, 0, 0]), 'unknown-type', 0],
  ])('keeps %s as a document with its flag', async (_, bytes, flag, count) => {
    const { received, problems } = await of(bytes);
    expect(received.kind).toBe('document');
    expect(received.flags.map((f) => f.is)).toEqual([flag]);
    expect(problems).toHaveLength(count);
  });

  it('takes a log in when its zone is said, offers a zone when it is not', async () => {
    const log = 'Time,Return F\n2026-07-14 05:00,36\n2026-07-14 05:05,36.5\n';
    const asked = await of(log);
    expect(asked.received).toMatchObject({ kind: 'document', flags: [{ is: 'time-zone-unknown' }] });
    expect(asked.proposedZone).toBe('America/Phoenix');
    const { received } = await of(log, { options: { logZone: zone.parse('America/Phoenix') } });
    expect(received).toMatchObject({
      kind: 'unit-log',
      rows: 2,
      rowsLeftOut: 0,
      from: '2026-07-14T12:00:00.000Z',
      to: '2026-07-14T12:05:00.000Z',
    });
  });

  it('keeps a table that it does not know, with its columns in the problem', async () => {
    const { received, problems } = await of('x,y\n1,2\n3,4\n');
    expect(received.kind).toBe('document');
    expect(problems[0]?.message).toContain('1 "x", 2 "y"');
  });

  it('gives the readings of a readings table with their rows', async () => {
    const { received, readings } = await of('time,kind,value,unit,stop\n2026-07-14 04:10,pulp,34,F,load-1\n');
    expect(received).toMatchObject({ kind: 'readings', rows: 1, rowsLeftOut: 0 });
    expect(readings).toMatchObject([{ row: 2, reading: { kind: 'pulp' } }]);
  });

  it('proposes what captions.csv says, then what the folders are named', async () => {
    const root = join(folder, 'in');
    await mkdir(join(root, 'load-1', 'seal'), { recursive: true });
    await mkdir(join(root, 'photos'));
    await put(join(root, 'load-1', 'seal'), 'a.txt', 'hello');
    await put(join(root, 'photos'), 'b.txt', 'hello');
    await put(
      join(root, 'photos'),
      'captions.csv',
      'file,subject,stop,line,position,by,caption\nb.txt,Pulp display,drop-1,romaine,tail,P. Hallam,"warm, she said"\nc.txt,seal,,,,,\nb2.txt,seel,,,,,\n',
    );
    const { files } = await scanFiles([root]);
    const captions = await readCaptions(files, { delivery, now: new Date('2026-07-20T00:00:00Z') });
    expect(captions.problems.map((p) => [p.where.row, p.where.column])).toEqual([[4, 'subject']]);
    expect(captions.unmatched.map(({ name }) => name)).toEqual([
      expect.stringContaining('photos/c.txt'),
      expect.stringContaining('photos/b2.txt'),
    ]);
    const drafts = await Promise.all(files.map((file) => examined(file, { hint: hintFor(captions, file) })));
    expect(
      drafts.map((d) => [
        d.received.subject,
        d.received.place,
        d.received.line,
        d.received.by,
        d.received.caption,
      ]),
    ).toEqual([
      [
        { is: 'seal', sure: 'proposed', from: 'folder seal' },
        { stop: 'load-1' },
        undefined,
        undefined,
        undefined,
      ],
      [
        { is: 'pulp-display', sure: 'proposed', from: 'captions.csv' },
        { stop: 'drop-1', position: 'tail' },
        'romaine',
        'P. Hallam',
        'warm, she said',
      ],
      [undefined, undefined, undefined, undefined, undefined],
    ]);
    expect(drafts[2]?.takenFor).toBe('document: captions of other files');
  });

  it('names a stop or line of the captions that the delivery does not have', async () => {
    const { received, problems } = await of('hello', { hint: { place: { stop: 'load-2' }, line: 'romane' } });
    expect(received.place).toBeUndefined();
    expect(problems.map((p) => p.where.field)).toEqual(['stop', 'line']);
    expect(problems[1]?.fix).toBe('did you mean romaine?');
  });

  it('throws for no bytes whatever', async () => {
    const starts = [
      '',
      '%PDF-1.7',
      '\xff\xd8\xff\xe1',
      '\x89PNG\r\n\x1a\n',
      'II*\0',
      'time,kind\n',
      'Time,Return F\n',
      '\0\0\0\x18ftypheic',
    ];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 300 }), async (start, rest) => {
        const { takenFor } = await of(Buffer.concat([Buffer.from(start, 'latin1'), rest]));
        expect(takenFor).toBeTypeOf('string');
      }),
      { numRuns: cases(150) },
    );
  });

  it('names a file that is not there', async () => {
    await expect(examined({ path: join(folder, 'none'), name: 'none', bytes: 0 })).rejects.toMatchObject({
      code: 'unreadable-file',
      where: { file: 'none' },
    });
  });
});
