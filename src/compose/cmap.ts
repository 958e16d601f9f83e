/** Platform and encoding of tables that speak of Unicode, the fullest first. */
const UNICODE = ['3/10', '0/6', '0/4', '3/1', '0/3', '0/2', '0/1', '0/0'];

/**
 * The code points that a TrueType font has a glyph for: its table `cmap` in the formats 4 and 12 (ISO/IEC 14496-22
 * §5.2.1), which every font for Unicode has. Read here because a font library takes ten times as long to load as to
 * ask, and every document asks.
 * A font without such a table is a bug of the caller and throws an Error.
 */
export function codePointsOf(font: Uint8Array): Set<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.length);
  const cmap = tableAt(view, 'cmap');
  const subtables = new Map<string, number>();
  for (let i = 0; i < view.getUint16(cmap + 2); i += 1) {
    const record = cmap + 4 + 8 * i;
    subtables.set(
      `${view.getUint16(record)}/${view.getUint16(record + 2)}`,
      cmap + view.getUint32(record + 4),
    );
  }
  const at = UNICODE.map((name) => subtables.get(name)).find((one) => one !== undefined);
  if (at === undefined) throw new Error('the font has no table for Unicode');
  switch (view.getUint16(at)) {
    case 4:
      return ofSegments(view, at);
    case 12:
      return ofGroups(view, at);
    default:
      throw new Error('the font has its code points in a form that is not read');
  }
}

function tableAt(view: DataView, name: string): number {
  for (let i = 0; i < view.getUint16(4); i += 1) {
    const record = 12 + 16 * i;
    const tag = [0, 1, 2, 3].map((k) => String.fromCharCode(view.getUint8(record + k))).join('');
    if (tag === name) return view.getUint32(record + 8);
  }
  throw new Error(`the font has no table ${name}`);
}

/** Format 4: segments of code points whose glyphs follow from a difference or stand in a list. */
function ofSegments(view: DataView, at: number): Set<number> {
  const points = new Set<number>();
  const bytes = view.getUint16(at + 6);
  const [ends, starts] = [at + 14, at + 16 + bytes];
  const [deltas, offsets] = [starts + bytes, starts + 2 * bytes];
  for (let i = 0; i < bytes; i += 2) {
    const [start, end] = [view.getUint16(starts + i), view.getUint16(ends + i)];
    const [delta, offset] = [view.getUint16(deltas + i), view.getUint16(offsets + i)];
    for (let point = start; point <= end && point < 0xffff; point += 1) {
      const listed = offset === 0 ? point : view.getUint16(offsets + i + offset + 2 * (point - start));
      const glyph = offset !== 0 && listed === 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) points.add(point);
    }
  }
  return points;
}

/** Format 12: groups of code points with glyphs in a row. */
function ofGroups(view: DataView, at: number): Set<number> {
  const points = new Set<number>();
  for (let i = 0; i < view.getUint32(at + 12); i += 1) {
    const group = at + 16 + 12 * i;
    const [start, end, glyph] = [0, 4, 8].map((k) => view.getUint32(group + k));
    for (let point = start ?? 1; point <= (end ?? 0); point += 1)
      if ((glyph ?? 0) + point - (start ?? 0) !== 0) points.add(point);
  }
  return points;
}
