import { open } from 'node:fs/promises';
import {
  AFTER,
  AFTER_64,
  CENTRAL,
  differences,
  END,
  END_64,
  EXTRA_64,
  LOCAL,
  pack,
  sizeOf,
  unpack,
} from './zip-layout.js';

/** A directory of the most files that a bag may hold, with names of the greatest length there. */
const LARGEST_DIRECTORY = 128 * 1024 * 1024;
const MOST_NAMED = 50;
const UTF8 = 1 << 11;
/** Checksum and sizes stand behind the bytes (APPNOTE §4.4.4, bit 3). */
const SIZES_AFTER = 1 << 3;
/** Made as by Unix, version 6.3 of the format; a plain file that all may read and its owner may write. */
const PROGRAM = (3 << 8) | 63;
const ATTRIBUTES = 0o100644 * 0x10000;
const MOST_32 = 0xfffffffe;
const ABSENT = 0xffffffff;

type Reader = (at: number, length: number) => Promise<Buffer>;
interface Entry {
  name: string;
  /** Its record in the directory, field by field and as it stands there. */
  record: Record<string, number>;
  raw: Buffer;
}

/**
 * Where a zip file is not as bags are packed here: files stored one after the other from the first byte, each under
 * one date, directory and end behind them, no other fields, no comment, nothing between. Empty when every byte that is
 * not a file's own is the only one it can be. Such differences change no file: another program may have packed the same
 * files again, or somebody changed the zip in places that say nothing about them.
 */
export async function nonCanonicalZipFields(file: string): Promise<string[]> {
  const handle = await open(file, 'r');
  try {
    const read: Reader = async (at, length) => {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(length), 0, length, at);
      return buffer.subarray(0, bytesRead);
    };
    const { size } = await handle.stat();
    const found = await compare(read, size);
    return found.length <= MOST_NAMED ? found : found.slice(0, MOST_NAMED);
  } finally {
    await handle.close();
  }
}

async function compare(read: Reader, size: number): Promise<string[]> {
  const end = await read(Math.max(0, size - sizeOf(END)), sizeOf(END));
  const said = unpack(END, end);
  if (end.readUInt32LE(0) !== 0x06054b50) return ['the end record is not where the file ends'];
  const wide = unpack(END_64, await read(Math.max(0, size - sizeOf(END) - sizeOf(END_64)), sizeOf(END_64)));
  const is64 = wide.mark === 0x06064b50;
  const start = (is64 ? wide['offset of the directory'] : said['offset of the directory']) ?? 0;
  const until = size - sizeOf(END) - (is64 ? sizeOf(END_64) : 0);
  if (start > until || until - start > LARGEST_DIRECTORY) return ['the directory is not where the end says'];
  const entries = entriesIn(await read(start, until - start));
  if (entries === undefined) return ['something stands between the directory and the end'];
  const found: string[] = [];
  const date = mostCommon(entries.map(({ record }) => `${record.time} ${record.date}`));
  let at = 0;
  for (const entry of entries) {
    if (at > start) break;
    at = await compareEntry(read, entry, at, date, found);
  }
  if (at !== start) found.push('something stands between the files and the directory');
  found.push(...compareOrder(entries));
  const expected = endRecords(entries.length, until - start, start);
  const actual = await read(until, size - until);
  found.push(
    ...(actual.length === expected.length
      ? differences(actual.length === sizeOf(END) ? END : END_64, actual, expected, 'end')
      : ['form']
    ).map((field) => `the end record: ${field}`),
  );
  return found;
}

/** The records of the directory; undefined when they do not fill it. */
function entriesIn(directory: Buffer): Entry[] | undefined {
  const entries: Entry[] = [];
  let from = 0;
  while (from + sizeOf(CENTRAL) <= directory.length) {
    const record = unpack(CENTRAL, directory, from);
    const name = from + sizeOf(CENTRAL);
    const extra = name + (record['length of the name'] ?? 0);
    const next = extra + (record['length of extra fields'] ?? 0) + (record['length of the comment'] ?? 0);
    if (next > directory.length) return undefined;
    entries.push({
      name: directory.toString('utf8', name, extra),
      record,
      raw: directory.subarray(from, next),
    });
    from = next;
  }
  return from === directory.length ? entries : undefined;
}

/** Compares one file's three records with the only ones it can have at its place; gives the place of the next. */
async function compareEntry(
  read: Reader,
  { name, record, raw }: Entry,
  at: number,
  date: string,
  found: string[],
): Promise<number> {
  const bytes = Buffer.from(name, 'utf8');
  const wide = unpack(EXTRA_64, raw, sizeOf(CENTRAL) + bytes.length);
  const size = (record.size === ABSENT ? wide.size : record.size) ?? 0;
  const after = isPayload(name);
  const [time = 0, day = 0] = date.split(' ').map(Number);
  const own = {
    flags: UTF8 | (after ? SIZES_AFTER : 0),
    time,
    date: day,
    'length of the name': bytes.length,
  };
  const sizes = { checksum: record.checksum ?? 0, 'packed size': size, size };
  const is64 = size > MOST_32 || at > MOST_32;

  const say = (where: string) => (field: string) => `${name}: ${field} in its ${where}`;
  const central = centralRecord({ ...own, ...sizes, offset: at }, bytes, is64);
  found.push(...differences(CENTRAL, raw, central, 'extra field').map(say('directory entry')));

  const header = pack(LOCAL, { mark: 0x04034b50, version: 20, ...own, ...(after ? {} : sizes) });
  const local = Buffer.concat([header, bytes]);
  found.push(...differences(LOCAL, await read(at, local.length), local, 'name').map(say('header')));

  const next = at + local.length + size;
  if (!after) return next;
  const layout = is64 ? AFTER_64 : AFTER;
  const behind = pack(layout, { mark: 0x08074b50, ...sizes });
  const stands = await read(next, behind.length);
  found.push(...differences(layout, stands, behind, 'rest').map(say('record behind it')));
  return next + behind.length;
}

/** The record of a file in the directory; what has no room in four bytes stands in an extra field. */
function centralRecord(values: Record<string, number>, name: Buffer, is64: boolean): Buffer {
  const far = is64 ? { 'packed size': ABSENT, size: ABSENT, offset: ABSENT } : {};
  const extra = is64
    ? pack(EXTRA_64, {
        ...values,
        'kind of extra field': 1,
        'length of the extra field': sizeOf(EXTRA_64) - 4,
      })
    : Buffer.alloc(0);
  const head = pack(CENTRAL, {
    ...values,
    ...far,
    mark: 0x02014b50,
    program: PROGRAM,
    version: is64 ? 45 : 20,
    'length of extra fields': extra.length,
    attributes: ATTRIBUTES,
  });
  return Buffer.concat([head, name, extra]);
}

/** Files of the payload come from the disk and are hashed on their way, so that their checksums stand behind them. */
const isPayload = (name: string): boolean => /^[^/]+\/data\//.test(name);

/** Tag files first, then the payload by name. */
function compareOrder(entries: readonly Entry[]): string[] {
  const names = entries.map(({ name }) => name);
  const payload = names.filter(isPayload);
  const ordered = [...names.filter((name) => !isPayload(name)), ...payload.toSorted()];
  return names.some((name, i) => name !== ordered[i]) ? ['the files are in another order'] : [];
}

function endRecords(entries: number, size: number, start: number): Buffer {
  const wide = entries >= 0xffff || size >= ABSENT || start >= ABSENT;
  const end = pack(END, {
    mark: 0x06054b50,
    'entries on the disk': Math.min(entries, 0xffff),
    entries: Math.min(entries, 0xffff),
    'size of the directory': Math.min(size, ABSENT),
    'offset of the directory': Math.min(start, ABSENT),
  });
  if (!wide) return end;
  return Buffer.concat([
    pack(END_64, {
      ...{ mark: 0x06064b50, 'size of the record': 44, program: PROGRAM, version: 45 },
      ...{ 'entries on the disk': entries, entries, 'size of the directory': size },
      'offset of the directory': start,
      'mark of the locator': 0x07064b50,
      'offset of the record': start + size,
      disks: 1,
    }),
    end,
  ]);
}

/** What most of them are: one that was changed stands alone against the others. */
function mostCommon(all: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].reduce((a, b) => (b[1] > a[1] ? b : a), ['', 0])[0];
}
