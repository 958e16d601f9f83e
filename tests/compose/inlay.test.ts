import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { PDFDocument } from '#pdf-lib';
import { prepareDossier } from '../../src/compose/compose.js';
import { inlay } from '../../src/compose/inlay.js';
import { jpegHead } from '../../src/compose/jpeg.js';
import { standInsFor } from '../../src/compose/stand-ins.js';
import { type TypesetJob, typeset } from '../../src/compose/typeset.js';
import { sampleInput } from './sample.js';

/** A JPEG of noise, as plates are: no two seeds give the same. */
async function plate(width: number, height: number, seed = 1): Promise<Uint8Array> {
  const raw = Buffer.from(
    Array.from({ length: width * height * 3 }, (_, i) => (i * i * seed + i * 7919) % 256),
  );
  return sharp(raw, { raw: { width, height, channels: 3 } })
    .jpeg({ mozjpeg: true })
    .toBuffer();
}

describe('the head of a JPEG', () => {
  const noise = () => sharp({ create: { width: 30, height: 20, channels: 3, background: '#336699' } });
  it.each<[string, () => Promise<Uint8Array>, unknown]>([
    ['of a plate', () => plate(30, 20), { width: 30, height: 20, components: 3, bare: true }],
    [
      'in grey',
      () => noise().toColourspace('b-w').jpeg().toBuffer(),
      { width: 30, height: 20, components: 1, bare: true },
    ],
    [
      'with EXIF',
      () =>
        noise()
          .withExif({ IFD0: { Make: 'Demo' } })
          .jpeg()
          .toBuffer(),
      { width: 30, height: 20, components: 3, bare: false },
    ],
    [
      'with a colour profile',
      () => noise().withIccProfile('p3').jpeg().toBuffer(),
      { width: 30, height: 20, components: 3, bare: false },
    ],
    [
      'that is progressive',
      () => noise().jpeg({ progressive: true }).toBuffer(),
      { width: 30, height: 20, components: 3, bare: true },
    ],
    ['that is a PNG', () => noise().png().toBuffer(), undefined],
    ['cut off', async () => (await plate(30, 20)).subarray(0, 40), undefined],
    ['of no bytes', async () => new Uint8Array(), undefined],
  ])('%s', async (_, make, expected) => {
    expect(jpegHead(await make())).toEqual(expected);
  });
});

describe('a stand-in', () => {
  it.each([
    [1600, 1200, 4, 3],
    [525, 700, 3, 4],
    [700, 467, 700, 467],
  ])(
    'for %i × %i has the shape %i × %i and the size of its picture beside it',
    async (width, height, w, h) => {
      const picture = await plate(width, height);
      const [one] = (await standInsFor(new Map([['a.jpg', picture]]))).values();
      expect(one).toMatchObject({ width, height, picture });
      expect(jpegHead(await sharp(one?.bytes).jpeg({ progressive: false }).toBuffer())).toMatchObject({
        width: w,
        height: h,
      });
    },
  );

  it('is another for each picture, and there is none for what is no plate', async () => {
    const found = await standInsFor(
      new Map([
        ['a.jpg', await plate(40, 30, 1)],
        ['b.jpg', await plate(40, 30, 2)],
        ['c.svg', Buffer.from('<svg/>')],
      ]),
    );
    expect([...found.keys()]).toEqual(['a.jpg', 'b.jpg']);
    const [a, b] = [...found.values()].map(({ bytes }) => Buffer.from(bytes).toString('hex'));
    expect(a).not.toBe(b);
  });
});

describe('pages that are set with stand-ins', () => {
  let job: TypesetJob;
  beforeAll(async () => {
    ({ job } = await prepareDossier(await sampleInput()));
  });
  /** What the typesetter makes of its input's hash. */
  const withoutIds = (pdf: Uint8Array) =>
    Buffer.from(pdf)
      .toString('latin1')
      .replace(/\/ID \[.*\]/, '')
      .replaceAll(/[iI]nstanceID>[^<]*</g, '');

  it('have the bytes that they have with the pictures themselves', async () => {
    expect(job.prepared?.size).toBeGreaterThan(3);
    const { prepared: _, ...direct } = job;
    const [a, b] = await Promise.all([typeset(job), typeset(direct)]);
    expect(a.pages).toBe(b.pages);
    expect(withoutIds(a.pdf) === withoutIds(b.pdf)).toBe(true);
  });

  it('are read by another program, with every offset where it says', async () => {
    const { pdf } = await typeset(job);
    const read = await PDFDocument.load(pdf, { updateMetadata: false, throwOnInvalidObject: true });
    expect(read.getPageCount()).toBeGreaterThan(3);
    const text = Buffer.from(pdf).toString('latin1');
    const table = Number(/startxref\n(\d+)/.exec(text.slice(-64))?.[1]);
    const lines = text.slice(table).matchAll(/^(\d{10}) 00000 n/gm);
    let number = 0;
    for (const [, offset] of lines) {
      number += 1;
      const at = Number(offset);
      expect(text.slice(at, at + 20).startsWith(`${number} 0 obj`), `object ${number}`).toBe(true);
    }
    expect(number).toBeGreaterThan(100);
  });

  it('say another name for other pictures of the same size', async () => {
    const [name = ''] = [...(job.prepared ?? [])];
    const { width = 0, height = 0 } = jpegHead(job.assets.get(name) ?? new Uint8Array()) ?? {};
    const other = { ...job, assets: new Map([...job.assets, [name, await plate(width, height, 5)]]) };
    const idOf = (pdf: Uint8Array) =>
      /\/ID \[.*\]/.exec(Buffer.from(pdf).subarray(-300).toString('latin1'))?.[0];
    expect(idOf((await typeset(other)).pdf)).not.toBe(idOf((await typeset(job)).pdf));
  });

  it('never show a stand-in: one that is not where pictures are is refused', async () => {
    const [one] = (await standInsFor(new Map([['a.jpg', await plate(40, 30)]]))).values();
    if (one === undefined) throw new Error('no stand-in');
    const pdfWith = (dictionary: string, stream: Uint8Array) => {
      const start = '%PDF-1.7\n';
      const object = `1 0 obj\n<<${dictionary} /Length ${stream.length}>>\nstream\n`;
      const body = Buffer.concat([Buffer.from(start + object), stream, Buffer.from('\nendstream\nendobj\n')]);
      const line = `${String(start.length).padStart(10, '0')} 00000 n \n`;
      const table = `xref\n0 2\n0000000000 65535 f \n${line}trailer\n<</Size 2>>\nstartxref\n${body.length}\n%%EOF\n`;
      return Buffer.concat([body, Buffer.from(table)]);
    };
    const image = '/Subtype /Image /Width 4 /Height 3';
    expect(Buffer.from(inlay(pdfWith(image, one.bytes), [one])).includes(Buffer.from(one.picture))).toBe(
      true,
    );
    for (const odd of [
      pdfWith('/Subtype /Form', one.bytes),
      pdfWith(`${image} /Filler (${'x'.repeat(700)})`, one.bytes),
      pdfWith(image, Buffer.concat([one.bytes, Buffer.from('x')])),
    ])
      expect(() => inlay(odd, [one])).toThrow(/stand-in/);
  });

  it('must come from the typesetter: another table of offsets is not taken for its own', () => {
    const foreign = Buffer.from('%PDF-1.7\nxref\n0 2\nnothing\nstartxref\n9\n%%EOF');
    expect(() => inlay(foreign, [])).toThrow(/no plain table/);
  });
});
