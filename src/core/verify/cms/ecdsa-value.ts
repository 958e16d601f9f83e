import { toHex } from '../../model/bytes.js';
import type { Curve } from '../../ports/cryptography.js';
import { childrenOf, readDer } from './der.js';

/** Orders of the curves' base points (NIST SP 800-186 §3.2.1). */
const ORDERS: Record<Curve, bigint> = {
  prime256v1: 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n,
  secp384r1:
    0xffffffffffffffffffffffffffffffffffffffffffffffffc7634d81f4372ddf581a0db248b0a77aecec196accc52973n,
  secp521r1:
    0x01fffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffa51868783bf2f966b7fcc0148f709a5d03bb5c9b8899c47aebb6fb71e91386409n,
};

/** r and s of an Ecdsa-Sig-Value in DER (RFC 3279 §2.2.3). @throws Malformed */
export function readEcdsaValue(value: Uint8Array): { r: bigint; s: bigint } {
  const [r = 0n, s = 0n] = childrenOf(readDer(value)).map(({ content }) => BigInt(`0x${toHex(content)}`));
  return { r, s };
}

/** The other s that verifies with the same r: whoever sees a signature can put it in the place of s. */
export function otherS(s: bigint, curve: Curve): bigint {
  return ORDERS[curve] - s;
}

/** Whether s is the smaller of the two values that verify; only that one is written here. */
export function isLowS(s: bigint, curve: Curve): boolean {
  return s <= otherS(s, curve);
}
