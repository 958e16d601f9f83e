import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { recognise } from '../../src/intake/recognise.js';

const box = (major: string, ...brands: string[]): Buffer => {
  const body = Buffer.from(`ftyp${major}\0\0\0\0${brands.join('')}`, 'latin1');
  const size = Buffer.alloc(4);
  size.writeUInt32BE(body.length + 4);
  return Buffer.concat([size, body]);
};
const bytes = (text: string): Buffer => Buffer.from(text, 'latin1');

describe('recognise', () => {
  it.each(['jpeg', 'png', 'webp', 'tiff'] as const)('knows a %s by its bytes', async (format) => {
    const made = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#777' } })
      .toFormat(format)
      .toBuffer();
    expect(recognise(made)).toEqual({ is: 'picture', type: `image/${format}` });
  });

  it.each([
    ['heic (ISO/IEC 23008-12)', box('heic', 'mif1', 'heic'), 'image/heic'],
    ['heix', box('heix'), 'image/heic'],
    ['AVIF', box('avif', 'mif1', 'miaf'), 'image/avif'],
    ['AVIF under a structural brand', box('mif1', 'avif'), 'image/avif'],
    ['BigTIFF', bytes('II+\0\x08\0\0\0'), 'image/tiff'],
    ['structural brand with a coded one beside it', box('mif1', 'mif1', 'heic'), 'image/heic'],
    ['mif1 alone', box('mif1', 'mif1'), 'image/heif'],
    ['msf1', box('msf1'), 'image/heif'],
    ['hevc', box('hevc'), 'image/heic'],
    ['a film', box('isom', 'mp42'), 'video/mp4'],
    ['a film of the other kind', box('qt  '), 'video/quicktime'],
    ['a spoken message', box('M4A '), 'audio/mp4'],
    ['another', bytes('OggS\0\x02'), 'audio/ogg'],
    ['a box of another brand', box('zzzz'), 'application/octet-stream'],
    ['a box that claims no size', bytes('\0\0\0\0ftypheic'), 'image/heic'],
    ['a box that claims more than there is', bytes('\xff\xff\xff\xffftypmif1\0\0\0\0heic'), 'image/heic'],
    ['PDF', bytes('%PDF-1.7\n…'), 'application/pdf'],
    ['PDF behind stray bytes', bytes('\n\n%PDF-1.4\n'), 'application/pdf'],
    ['no bytes', bytes(''), 'application/x-empty'],
    ['one empty line', bytes('\r\n'), 'text/plain'],
    ['big-endian TIFF', bytes('MM\0*\0\0\0\x08'), 'image/tiff'],
    ['RIFF that is sound', bytes('RIFF\0\0\0\0WAVEfmt '), 'audio/wav'],
    ['comma table', bytes('time,kind,value\n2026,pulp,3\n'), 'text/csv'],
    ['semicolon table', bytes('Datum;Soll\n1;2,5\n'), 'text/csv'],
    ['tab table', bytes('a\tb\n1\t2\n'), 'text/csv'],
    [
      'UTF-16 table',
      Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('a;b\n1;2\n', 'utf16le')]),
      'text/csv',
    ],
    [
      'prose with commas',
      bytes('Dear driver, the load is refused. It is warm.\nYours, the dock. No more.\n'),
      'text/plain',
    ],
    [
      'a letter of short lines',
      bytes('REJECTION NOTICE\nJuly 16, 2026\nDear Ms. Reed,\nwarm, wilted\nRegards, T. Lane\n'),
      'text/plain',
    ],
    ['lines that all have one comma', bytes('Dear driver,\nwarm, wilted\nYours, the dock\n'), 'text/plain'],
    [
      'a list of words and a figure here and there',
      bytes('Refused: romaine, 8 pallets\nWhy: warm, 44 F\nBy: receiver, Omaha\n'),
      'text/plain',
    ],
    ['a table with blanks behind its commas', bytes('Time, Return\n04:00, 36.1\n04:05, 36.2\n'), 'text/csv'],
    ['captions', bytes('file, subject\na.jpg, damage\nb.jpg, seal\n'), 'text/csv'],
    ['two columns of words', bytes('name,place\nA,Yuma\nB,Omaha\n'), 'text/csv'],
    ['noise', Buffer.from([0, 1, 2, 3, 200, 0, 0, 9, 7, 1, 1, 1]), 'application/octet-stream'],
  ])('takes %s for what it is', (_, head, type) => {
    expect(recognise(head).type).toBe(type);
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (head) => {
        expect(recognise(head).type).toBeTypeOf('string');
      }),
    );
  });
});
