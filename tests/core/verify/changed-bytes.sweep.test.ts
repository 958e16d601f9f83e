import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { cases, sweepStep } from '../../properties.js';
import { dossier, failed, identity } from './forge.js';

const trusted = [identity.certificateDer];
let sound: Uint8Array;
let room: { from: number; to: number };
beforeAll(async () => {
  sound = await dossier();
  const found = Buffer.from(sound)
    .toString('latin1')
    .match(/\/ByteRange \[0 (\d+) (\d+) \d+ *\]/);
  room = { from: Number(found?.[1]) + 1, to: Number(found?.[2]) - 1 };
});

function changed(at: number, by: number): Uint8Array {
  const copy = Uint8Array.from(sound);
  copy[at] = (copy[at] ?? 0) ^ by;
  return copy;
}

async function expectBroken(bytes: Uint8Array): Promise<void> {
  const found = await verifyDossier(bytes, { trusted });
  expect(found.verdict).toBe('broken');
  // Refused by a check that was meant for it, not because the verifier stumbled.
  expect(failed(found)).not.toContain('check.finished');
}

describe('any changed byte is found', () => {
  it('in the covered bytes', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(), fc.integer({ min: 1, max: 255 }), async (n, by) => {
        const covered = sound.length - (room.to - room.from);
        const at = n % covered;
        await expectBroken(changed(at < room.from ? at : at + room.to - room.from, by));
      }),
      { numRuns: cases(200) },
    ));

  it('in the zeros that follow the signature in its room', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(), fc.integer({ min: 1, max: 255 }), async (n, by) => {
        const zeros = { from: room.from + 4000, to: room.to };
        await expectBroken(changed(zeros.from + (n % (zeros.to - zeros.from)), by));
      }),
      { numRuns: cases(50) },
    ));

  it('in the signature structure, every hex digit of it', async () => {
    const digits = Buffer.from(sound).toString('latin1', room.from, room.to).replace(/0+$/, '');
    // 0x01 gives the neighbouring digit. 0x20 turns a to A: the same value, written otherwise.
    for (let at = 0; at < digits.length; at += sweepStep(11))
      for (const by of /[a-f]/i.test(digits.charAt(at)) ? [0x01, 0x20] : [0x01])
        await expectBroken(changed(room.from + at, by));
  });
});

describe('nothing that is put at the end or cut off goes unseen', () => {
  it.each(['\n', ' ', '%', '\0', '%%EOF\n', '\n%%EOF'])('%j appended', async (more) => {
    await expectBroken(Buffer.concat([sound, Buffer.from(more)]));
  });

  it('cut off anywhere', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(), async (n) => expectBroken(sound.subarray(0, n % sound.length))),
      { numRuns: cases(60) },
    ));
});

describe('verifying never throws', () => {
  const open = Buffer.from('%PDF-1.7\n1 0 obj\n');
  const close = (at: number) =>
    Buffer.from(
      `\nxref\n0 2\n0000000000 65535 f \n0000000009 00000 n \ntrailer\n<</Root 1 0 R>>\nstartxref\n${at}\n%%EOF`,
    );

  it('on random bytes', () =>
    fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => expectBroken(bytes))));

  it('on random syntax inside a sound frame', () => {
    const token = fc.constantFrom(
      ...[
        '<<',
        '>>',
        '[',
        ']',
        '(',
        ')',
        '<',
        '>',
        '/',
        '/Type',
        '/Sig',
        '/ByteRange',
        '/Length',
        '1 0 R',
        '9 0 R',
      ],
      ...[
        '0',
        '-1',
        '1e9',
        'null',
        'stream\n',
        'endstream',
        'endobj',
        '%',
        '\\',
        '#41',
        '/Kids',
        '/Names',
        '/EF',
        '\n',
      ],
    );
    return fc.assert(
      fc.asyncProperty(fc.array(token, { maxLength: 30 }), async (tokens) => {
        const body = Buffer.from(tokens.join(' '));
        await expectBroken(
          Buffer.concat([open, body, Buffer.from('\nendobj'), close(open.length + body.length + 8)]),
        );
      }),
      { numRuns: cases(300) },
    );
  });

  it('on pieces of a dossier in another order', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(), fc.nat(3000)), { minLength: 1, maxLength: 6 }),
        async (pieces) => {
          const cut = pieces.map(([from, length]) =>
            sound.subarray(from % sound.length, (from % sound.length) + length),
          );
          await expectBroken(Buffer.concat([sound.subarray(0, 400), ...cut, sound.subarray(-400)]));
        },
      ),
      { numRuns: cases(60) },
    ));

  it.each([
    ['brackets without end', '['.repeat(200_000)],
    ['dictionaries without end', '<</A'.repeat(100_000)],
    ['a string without end', '('.repeat(200_000)],
    ['one endless number', '1'.repeat(200_000)],
  ])('on %s', async (_, body) => {
    await expectBroken(
      Buffer.concat([open, Buffer.from(body), Buffer.from('\nendobj'), close(open.length + body.length + 8)]),
    );
  });
});
