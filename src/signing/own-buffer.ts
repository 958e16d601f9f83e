/** Bytes in a buffer of their own, as the ASN.1 library wants them. */
export function ownBuffer(bytes: Uint8Array): ArrayBuffer {
  const copy = new ArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}
