// Decodes HEIC and HEIF pictures to pixels; apart, since the decoder is slow and large.
import decode from 'heic-decode';
import { answering } from '../worker/answering.js';

/** A photo of 48 megapixels takes 415 MB. The decoder itself would stop at 2 GB. */
const MOST_MEGABYTES = 640;

let full = false;
const { grow } = WebAssembly.Memory.prototype;
/** @param {number} pages of 64 KiB */
WebAssembly.Memory.prototype.grow = function growWithin(pages) {
  if (this.buffer.byteLength + pages * 2 ** 16 > MOST_MEGABYTES * 1e6) {
    full = true;
    throw new RangeError('no more memory');
  }
  return grow.call(this, pages);
};

answering(
  async (/** @type {Uint8Array} */ bytes) => {
    try {
      const { width, height, data } = await decode({ buffer: bytes });
      return { width, height, data: new Uint8Array(data.buffer) };
    } catch (cause) {
      throw full ? new Error(`decoding it takes more than ${MOST_MEGABYTES} MB of memory`) : cause;
    }
  },
  ({ data }) => [data.buffer],
);
