import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { jpegHead } from './jpeg.js';

/** Something of the same shape that is set in the place of a picture. */
export interface StandIn {
  /** A JPEG of one colour. */
  bytes: Uint8Array;
  picture: Uint8Array;
  /** Of the picture, in pixels. */
  width: number;
  height: number;
}

/**
 * Stand-ins for pictures, by their names: the typesetter decodes every picture that it sets, though its pages need no
 * more than the shape. Each holds the hash of its picture, so that no two are the same and none is another's.
 * Only for colour JPEGs that say nothing beside their picture, as plates are; others are not in the result.
 */
export async function standInsFor(
  assets: ReadonlyMap<string, Uint8Array>,
): Promise<ReadonlyMap<string, StandIn>> {
  const flats = new Map<string, Buffer>();
  const found = new Map<string, StandIn>();
  for (const [name, picture] of assets) {
    const head = jpegHead(picture);
    if (head === undefined || !head.bare || head.components !== 3) continue;
    const { width, height } = head;
    const [w, h] = sameShape(width, height);
    const shape = `${w} × ${h}`;
    const flat = flats.get(shape) ?? (await flatJpeg(w, h));
    flats.set(shape, flat);
    found.set(name, { bytes: marked(flat, picture), picture, width, height });
  }
  return found;
}

/** The smallest whole numbers in the same proportion. */
function sameShape(width: number, height: number): [number, number] {
  let [a, b] = [width, height];
  while (b !== 0) [a, b] = [b, a % b];
  return [width / a, height / a];
}

function flatJpeg(width: number, height: number): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: '#808080' } })
    .jpeg()
    .toBuffer();
}

/** How a stand-in begins: as every JPEG, then a comment (ITU-T T.81, B.2.4.5) of 32 bytes. */
export const MARK = Buffer.from([0xff, 0xd8, 0xff, 0xfe, 0, 34]);

/** With a comment (ITU-T T.81, B.2.4.5) of 32 bytes behind the mark that begins every JPEG. */
function marked(flat: Buffer, picture: Uint8Array): Uint8Array {
  return Buffer.concat([MARK, createHash('sha256').update(picture).digest(), flat.subarray(2)]);
}
