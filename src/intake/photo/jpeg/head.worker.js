// The marker segments of a JPEG file up to its first scan (ITU-T T.81 annex B), as far as a plain photo needs them.

/**
 * A component in the order of the scan.
 * @typedef {object} Component
 * @property {number} across blocks across in one unit of the scan
 * @property {number} down blocks down in one unit of the scan
 * @property {number} quantum what a step of its mean value is worth
 * @property {HuffmanTable} dc
 * @property {HuffmanTable} ac
 */

/**
 * How a Huffman table is written (T.81 §B.2.4.2): the number of codes of each length from 1 to 16, and the symbols.
 * @typedef {{ counts: Uint8Array, symbols: Uint8Array }} HuffmanTable
 */

/**
 * @typedef {object} Head
 * @property {number} width
 * @property {number} height
 * @property {readonly Component[]} components brightness first
 * @property {number} restartInterval units of the scan between restart markers; 0 for none
 * @property {number} scanAt where the coded data begins
 * @property {Uint8Array | undefined} exif the Exif block, from its byte order mark on
 */

const MARKER = {
  sof0: 0xc0,
  sof1: 0xc1,
  dht: 0xc4,
  sof15: 0xcf,
  sos: 0xda,
  dqt: 0xdb,
  dri: 0xdd,
  app1: 0xe1,
  app14: 0xee,
};
/** Markers between 0xC0 and 0xCF that are no start of a frame: DHT, JPG and DAC. */
const NO_FRAME = new Set([0xc4, 0xc8, 0xcc]);

/**
 * Reads the head of a photo coded in the plain way: sequential Huffman coding of eight bits, grey or brightness with
 * two colour differences, all in one scan. Undefined for every other file, whole or broken.
 * @param {Uint8Array} file
 * @returns {Head | undefined}
 */
export function readHead(file) {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  try {
    return readSegments(file, view);
  } catch (error) {
    // Lengths and counts are whatever the file says; they lead past its end.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/**
 * @param {Uint8Array} file
 * @param {DataView} view
 * @returns {Head | undefined}
 */
function readSegments(file, view) {
  /** @type {Map<number, number>} */
  const quanta = new Map();
  /** @type {Map<number, HuffmanTable>} class and number in one byte, as DHT writes them */
  const tables = new Map();
  let restartInterval = 0;
  /** @type {{ width: number, height: number, parts: { id: number, across: number, down: number, quanta: number }[] } | undefined} */
  let frame;
  /** @type {Uint8Array | undefined} */
  let exif;
  if (view.getUint16(0) !== 0xffd8) return undefined;
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    const [begin, end] = [at + 4, at + 2 + length];
    if (length < 2 || end > file.length) return undefined;
    switch (marker) {
      case MARKER.dqt:
        readQuanta(view, begin, end, quanta);
        break;
      case MARKER.dht:
        readTables(file, begin, end, tables);
        break;
      case MARKER.dri:
        restartInterval = view.getUint16(begin);
        break;
      case MARKER.app1:
        exif ??= ascii(file, begin, 6) === 'Exif\0\0' ? file.subarray(begin + 6, end) : undefined;
        break;
      case MARKER.app14:
        // Adobe's colour transform 0 on three components: they are red, green and blue.
        if (ascii(file, begin, 5) === 'Adobe' && view.getUint8(begin + 11) === 0) return undefined;
        break;
      case MARKER.sof0:
      case MARKER.sof1: {
        if (frame !== undefined || view.getUint8(begin) !== 8) return undefined;
        const parts = Array.from({ length: view.getUint8(begin + 5) }, (_, i) => {
          const sampling = view.getUint8(begin + 7 + i * 3);
          return {
            id: view.getUint8(begin + 6 + i * 3),
            across: sampling >> 4,
            down: sampling & 15,
            quanta: view.getUint8(begin + 8 + i * 3),
          };
        });
        frame = { height: view.getUint16(begin + 1), width: view.getUint16(begin + 3), parts };
        break;
      }
      case MARKER.sos: {
        if (frame === undefined) return undefined;
        const components = readScanHead(view, begin, end, frame.parts, quanta, tables);
        const { width, height } = frame;
        if (components === undefined || width === 0 || height === 0) return undefined;
        return { width, height, components, restartInterval, scanAt: end, exif };
      }
      default:
        if (marker < 0xc0 || (marker >= 0xd0 && marker <= 0xd9)) return undefined;
        if (marker <= MARKER.sof15 && !NO_FRAME.has(marker)) return undefined;
    }
    at = end;
  }
}

/**
 * T.81 §B.2.4.1. Only the first quantum of each table is kept: it belongs to the mean of a block.
 * @param {DataView} view
 * @param {number} begin
 * @param {number} end
 * @param {Map<number, number>} quanta
 */
function readQuanta(view, begin, end, quanta) {
  for (let at = begin; at < end; ) {
    const kind = view.getUint8(at);
    const wide = kind >> 4 !== 0;
    quanta.set(kind & 15, wide ? view.getUint16(at + 1) : view.getUint8(at + 1));
    at += wide ? 129 : 65;
  }
}

/**
 * @param {Uint8Array} file
 * @param {number} begin
 * @param {number} end
 * @param {Map<number, HuffmanTable>} tables
 */
function readTables(file, begin, end, tables) {
  for (let at = begin; at + 17 <= end; ) {
    const counts = file.subarray(at + 1, at + 17);
    const symbols = counts.reduce((sum, count) => sum + count, 0);
    tables.set(file[at] ?? 0, { counts, symbols: file.subarray(at + 17, at + 17 + symbols) });
    at += 17 + symbols;
  }
}

/**
 * T.81 §B.2.3. Undefined unless the scan holds all that the frame has, and that is grey, or brightness at full
 * resolution with two colour differences.
 * @param {DataView} view
 * @param {number} begin
 * @param {number} end
 * @param {readonly { id: number, across: number, down: number, quanta: number }[]} parts
 * @param {Map<number, number>} quanta
 * @param {Map<number, HuffmanTable>} tables
 * @returns {Component[] | undefined}
 */
function readScanHead(view, begin, end, parts, quanta, tables) {
  const count = view.getUint8(begin);
  if (count !== parts.length || (count !== 1 && count !== 3) || end !== begin + 4 + count * 2)
    return undefined;
  // Numbered otherwise, the three may be red, green and blue.
  if (count === 3 && !parts.every(({ id }, i) => id === i + 1)) return undefined;
  /** @type {Component[]} */
  const components = [];
  for (const [i, part] of parts.entries()) {
    const which = view.getUint8(begin + 2 + i * 2);
    const quantum = quanta.get(part.quanta);
    const [dc, ac] = [tables.get(which >> 4), tables.get(0x10 | (which & 15))];
    if (view.getUint8(begin + 1 + i * 2) !== part.id || !sampled(part)) return undefined;
    if (quantum === undefined || dc === undefined || ac === undefined) return undefined;
    // A scan of one component has one block to the unit, whatever its sampling says (T.81 §A.2.2).
    const { across, down } = count === 1 ? { across: 1, down: 1 } : part;
    components.push({ across, down, quantum, dc, ac });
  }
  const [first] = components;
  const finest = components.every(
    ({ across, down }) => first !== undefined && across <= first.across && down <= first.down,
  );
  const units = components.reduce((sum, { across, down }) => sum + across * down, 0);
  return finest && units <= 10 ? components : undefined;
}

/** @param {{ across: number, down: number }} part */
function sampled({ across, down }) {
  return across >= 1 && across <= 4 && down >= 1 && down <= 4;
}

/**
 * @param {Uint8Array} file
 * @param {number} at
 * @param {number} length
 */
function ascii(file, at, length) {
  return Buffer.from(file.buffer, file.byteOffset + at, Math.min(length, file.length - at)).toString(
    'latin1',
  );
}
