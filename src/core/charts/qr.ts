import { encode } from 'uqr';
import { box, ink, svg } from './svg.js';

/** White room around the code, in modules: ISO/IEC 18004 asks for four. */
const QUIET = 4;
/** Side of one module in the drawing's units. */
const MODULE = 2;

/** A QR code (ISO/IEC 18004) of a text, at error correction level M, which survives a creased print. */
export function qrPicture(words: string): string {
  const { data, size } = encode(words, { ecc: 'M', border: QUIET });
  const side = size * MODULE;
  return svg(
    side,
    side,
    box(0, 0, side, side, { fill: ink.paper }),
    ...data.flatMap((row, y) =>
      runsOf(row).map(({ from, length }) =>
        box(from * MODULE, y * MODULE, length * MODULE, MODULE, { fill: '#000000' }),
      ),
    ),
  );
}

/** Dark modules side by side are one box, so that no hairline shows between them. */
function runsOf(row: readonly boolean[]): { from: number; length: number }[] {
  const runs: { from: number; length: number }[] = [];
  row.forEach((dark, x) => {
    const last = runs.at(-1);
    if (!dark) return;
    if (last !== undefined && last.from + last.length === x) last.length += 1;
    else runs.push({ from: x, length: 1 });
  });
  return runs;
}
