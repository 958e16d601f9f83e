import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { seeded } from '../../fixtures/demo/make/random.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { builtDemo } from './demo.js';

let sound: Buffer;
let trusted: Uint8Array[];
/** Offsets of the hex digits between < and > of /Contents, and where the signature in them ends. */
let room: { from: number; end: number; to: number };
/** Everything between one stream's end and the next one's start: objects, references, lengths, trailer. */
let structure: number[];

function pemBytes(pem: string): Uint8Array {
  return Buffer.from(pem.replace(/-----[^-]+-----|\s/g, ''), 'base64');
}

/** The dossier with one byte changed, refused by a check that was meant for it. */
async function expectRefused(at: number, to: number): Promise<void> {
  const was = sound.readUInt8(at);
  expect(to, `the byte at ${at} was not changed`).not.toBe(was);
  sound.writeUInt8(to, at);
  try {
    const { verdict, checks } = await verifyDossier(sound, { trusted });
    const failed = checks.filter((check) => check.result === 'failed').map((check) => check.id);
    expect(verdict, `byte ${at} from ${was} to ${to}`).toBe('broken');
    expect(failed).not.toContain('check.finished');
  } finally {
    sound.writeUInt8(was, at);
  }
}

/** Places and values drawn from a fixed seed, so that a failure can be had again. */
function drawn(seed: number, count: number, place: (random: () => number) => number): [number, number][] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const at = place(random);
    return [at, sound.readUInt8(at) ^ (1 + Math.floor(random() * 255))];
  });
}
const between = (from: number, to: number) => (random: () => number) =>
  from + Math.floor(random() * (to - from));
const caseFlipped = (at: number) => sound.readUInt8(at) ^ 0x20;

/** The specification, with so many of the places that are drawn; all of them are 250. */
export function oneChangedByte(share: number): void {
  describe('one changed byte in the dossier of the demonstration', () => {
    beforeAll(async () => {
      const { demo, built } = await builtDemo();
      sound = readFileSync(built.file);
      trusted = [pemBytes(readFileSync(demo.certificate, 'utf8'))];
      const text = sound.toString('latin1');
      const [, from = 0, to = 0] = (/\/ByteRange \[0 (\d+) (\d+) \d+ *\]/.exec(text) ?? []).map(Number);
      // A CMS structure states its own length (X.690 §8.1.3): 30 82 and two bytes of length.
      expect(text.slice(from + 1, from + 5)).toBe('3082');
      const length = 4 + Number.parseInt(text.slice(from + 5, from + 9), 16);
      room = { from: from + 1, end: from + 1 + 2 * length, to: to - 1 };
      structure = [];
      let inside = false;
      for (const part of text.matchAll(/([\s\S]*?)(endstream|stream\r?\n|$)/g)) {
        if (!inside)
          for (let at = part.index; at < part.index + (part[1] ?? '').length; at += 1) structure.push(at);
        if (part[2] === '') break;
        inside = part[2] !== 'endstream';
      }
    });
    const some = (count: number) => Math.round(count * share);
    it('nothing is refused before anything is changed', async () => {
      expect((await verifyDossier(sound, { trusted })).verdict).toBe('intact');
      expect(structure.length).toBeGreaterThan(50_000);
      expect(room.to - room.end).toBeGreaterThan(20_000);
    });

    it(`anywhere, ${some(90)} times: mostly pictures and attachments`, async () => {
      for (const [at, to] of drawn(20260714, some(90), between(0, sound.length))) await expectRefused(at, to);
    });

    it(`between the streams, ${some(60)} times: objects, references, trailer`, async () => {
      const anyOf = (random: () => number) => structure[between(0, structure.length)(random)] ?? 0;
      for (const [at, to] of drawn(20260715, some(60), anyOf)) await expectRefused(at, to);
    });

    it(`in the hex digits of the signature, ${some(30)} times`, async () => {
      for (const [at, to] of drawn(20260716, some(30), between(room.from, room.end)))
        await expectRefused(at, to);
    });

    it(`in the case of their letters, ${some(20)} times: the same signature, written otherwise`, async () => {
      const letters = Array.from({ length: room.end - room.from }, (_, i) => room.from + i).filter((at) =>
        /[a-f]/i.test(String.fromCharCode(sound.readUInt8(at))),
      );
      expect(letters.length).toBeGreaterThan(200);
      const anyOf = (random: () => number) => letters[between(0, letters.length)(random)] ?? 0;
      for (const [at] of drawn(20260717, some(20), anyOf)) await expectRefused(at, caseFlipped(at));
    });

    it(`in the unused zeros after the signature, ${some(50)} times`, async () => {
      const zeros = drawn(20260718, some(50), between(room.end, room.to));
      for (const [at] of zeros) expect(String.fromCharCode(sound.readUInt8(at))).toBe('0');
      // Half of them stay hex digits, which a lenient reader would decode and ignore.
      for (const [i, [at, to]] of zeros.entries())
        await expectRefused(at, i % 2 === 0 ? '123456789abcdefABCDEF'.charCodeAt(i % 21) : to);
    });
  });
}
