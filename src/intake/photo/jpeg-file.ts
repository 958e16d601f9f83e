import { type FileHandle, open } from 'node:fs/promises';
import { type JpegStructure, readStructure } from './jpeg-structure.js';

/** Bytes that are read at once; a photo of a phone has a tenth of it. */
const MOST_BYTES = 64 * 1024 ** 2;

/** Rooms for the bytes of files, for the next ones: made anew for each they cost more than the reading. */
const spare: Buffer[] = [];
const MOST_SPARE = 8;

/** The structure of a JPEG on the disk. One that is too large or can't be read is `doubtful`: it has to be looked through. */
export async function structureOf(path: string): Promise<JpegStructure> {
  let file: FileHandle | undefined;
  let room: Buffer | undefined;
  try {
    file = await open(path, 'r');
    const { size } = await file.stat();
    if (size > MOST_BYTES) return { is: 'doubtful' };
    const kept = spare.pop();
    // A little more, so that a photo that is a little larger fits as well.
    room = kept !== undefined && kept.length >= size ? kept : Buffer.allocUnsafe(Math.ceil(size * 1.25));
    let length = 0;
    for (let more = 1; more > 0 && length < size; length += more)
      more = (await file.read(room, length, size - length)).bytesRead;
    const structure = readStructure(room.subarray(0, length));
    return 'exif' in structure ? { ...structure, exif: copyOf(structure.exif) } : structure;
  } catch {
    return { is: 'doubtful' };
  } finally {
    if (room !== undefined && spare.length < MOST_SPARE) spare.push(room);
    await file?.close();
  }
}

/** The room is for other files when the block is read. */
function copyOf(block: Uint8Array | undefined): Uint8Array | undefined {
  return block === undefined ? undefined : Uint8Array.from(block);
}
