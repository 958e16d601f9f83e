/** One object of a PDF, and where its bytes are, from its number to behind its last word. */
export interface PlainObject {
  number: number;
  from: number;
  to: number;
}

/** A PDF in one piece: its objects one after the other, one table of where they begin, its trailer. */
export interface PlainPdf {
  /** In the order of the file. */
  objects: PlainObject[];
  /** Where the table begins, its first line of an object, and what follows its last. */
  tableAt: number;
  linesAt: number;
  trailerAt: number;
}

/** One line of the table (ISO 32000-1 §7.5.4). */
export const TABLE_LINE = 20;

/**
 * Finds the objects of a PDF as the typesetter writes it, without reading them.
 * Undefined for one that is made otherwise: with parts added later, or with a packed table.
 */
export function plainPdf(pdf: Uint8Array): PlainPdf | undefined {
  const view = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.length);
  const text = (from: number, to: number) => view.toString('latin1', from, to);
  const [, written] =
    /startxref\n(\d+)\n%%EOF\s*$/.exec(text(Math.max(0, view.length - 64), view.length)) ?? [];
  const tableAt = Number(written ?? view.length);
  const [head = '', count] = /^xref\n0 (\d+)\n/.exec(text(tableAt, tableAt + 32)) ?? [];
  const linesAt = tableAt + head.length;
  const trailerAt = linesAt + Number(count ?? 0) * TABLE_LINE;
  const trailer = text(trailerAt, view.length);
  if (count === undefined || !/^\s*trailer\s*<</.test(trailer) || /\/(?:Prev|XRefStm)\b/.test(trailer))
    return undefined;
  const starts: { number: number; from: number }[] = [];
  for (let number = 0; number < Number(count); number += 1) {
    const at = linesAt + number * TABLE_LINE;
    const [, offset, use] = /^(\d{10}) \d{5} ([nf])[ \r]\n$/.exec(text(at, at + TABLE_LINE)) ?? [];
    if (offset === undefined) return undefined;
    if (use === 'n') starts.push({ number, from: Number(offset) });
  }
  starts.sort((a, b) => a.from - b.from);
  const objects = starts.map((one, i) => ({ ...one, to: starts[i + 1]?.from ?? tableAt }));
  const whole = objects.every(
    ({ number, from, to }) =>
      text(from, from + 20).startsWith(`${number} 0 obj`) &&
      /endobj\s*$/.test(text(Math.max(from, to - 20), to)),
  );
  return whole ? { objects, tableAt, linesAt, trailerAt } : undefined;
}
