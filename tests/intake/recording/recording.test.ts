import { describe, expect, it } from 'vitest';
import { recognise } from '../../../src/intake/recognise.js';
import { examineRecording } from '../../../src/intake/recording/examine-recording.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';

const folder = await emptyFolder();

const box = (kind: string, ...content: Buffer[]): Buffer => {
  const body = Buffer.concat(content);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length + 8);
  head.write(kind, 4, 'latin1');
  return Buffer.concat([head, body]);
};
/** Seconds from 1904 to 1970. */
const EPOCH = 2_082_844_800;

/** A film without pictures: its head alone (ISO/IEC 14496-12 §8.2.2). */
function film(created: string, seconds: number): Buffer {
  const head = Buffer.alloc(100);
  head.writeUInt32BE(Date.parse(created) / 1000 + EPOCH, 4);
  head.writeUInt32BE(Date.parse(created) / 1000 + EPOCH, 8);
  head.writeUInt32BE(1000, 12);
  head.writeUInt32BE(seconds * 1000, 16);
  return Buffer.concat([
    box('ftyp', Buffer.from('isom\0\0\x02\0isommp42')),
    box('moov', box('mvhd', head)),
    box('mdat', Buffer.alloc(16)),
  ]);
}

/** Silence, 8,000 samples a second, one byte each. */
function sound(seconds: number): Buffer {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + 8000 * seconds, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(8000, 24);
  head.writeUInt32LE(8000, 28);
  head.writeUInt16LE(1, 32);
  head.writeUInt16LE(8, 34);
  head.write('data', 36);
  head.writeUInt32LE(8000 * seconds, 40);
  return Buffer.concat([head, Buffer.alloc(8000 * seconds, 128)]);
}

async function examined(bytes: Buffer, name: string) {
  const { path } = await put(folder, 'recording', bytes);
  const { type } = recognise(bytes);
  const file = { name, bytes: bytes.length, sha256: someHash, type };
  return examineRecording({ path, file, delivery, hint: {} });
}

describe('films and spoken messages', () => {
  it('are kept with the time of their container, which may be of another zone', async () => {
    const { received, takenFor, problems } = await examined(film('2026-07-14T12:42:08Z', 12), 'dock.mp4');
    expect(problems).toEqual([]);
    expect(received).toMatchObject({
      kind: 'document',
      file: { type: 'video/mp4' },
      time: {
        is: 'known',
        basis: 'container',
        instant: '2026-07-14T12:42:08.000Z',
        uncertaintySeconds: 60 + 7 * 3600,
      },
    });
    expect(takenFor).toBe('document: film, not written down');
  });

  it('without a time have the day in their name proposed', async () => {
    const { received } = await examined(sound(3), 'PTT-20260714-WA0003.wav');
    expect(received).toMatchObject({
      seconds: 3,
      time: { is: 'known', basis: 'file-name', stated: '2026-07-14' },
    });
  });

  it('whose clock was never set have no time', async () => {
    const { received } = await examined(film('1970-01-01T00:00:00Z', 5), 'dock.mp4');
    expect(received.time).toMatchObject({ is: 'none' });
  });
});
