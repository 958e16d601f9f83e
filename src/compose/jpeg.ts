/** What the head of a JPEG says of its picture. */
export interface JpegHead {
  width: number;
  height: number;
  /** Three of them are colours, one is grey. */
  components: number;
  /** Whether anything is told beside the picture, such as its colour space or which way is up. */
  bare: boolean;
}

/**
 * Reads the segments before the picture's own data (ITU-T T.81, B.1 and B.2.2).
 * Undefined for what is no JPEG of eight bits, baseline or progressive.
 */
export function jpegHead(bytes: Uint8Array): JpegHead | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return undefined;
  let bare = true;
  for (let at = 2; at + 10 <= bytes.length; ) {
    const mark = view.getUint16(at);
    if (mark === 0xffc0 || mark === 0xffc2) {
      const [bits, height, width, components] = [
        view.getUint8(at + 4),
        view.getUint16(at + 5),
        view.getUint16(at + 7),
        view.getUint8(at + 9),
      ];
      return bits === 8 && width > 0 && height > 0 ? { width, height, components, bare } : undefined;
    }
    // Other frames, and what only comes behind one.
    const tables = mark === 0xffdb || mark === 0xffc4 || mark === 0xffdd;
    const told = (mark >= 0xffe0 && mark <= 0xffef) || mark === 0xfffe;
    if (!tables && !told) return undefined;
    if (told) bare = false;
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}
