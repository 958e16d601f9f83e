import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Curve } from '../../../src/core/ports/cryptography.js';
import { isLowS, otherS } from '../../../src/core/verify/cms/ecdsa-value.js';

/** Prime moduli of the fields (FIPS 186-5 refers to NIST SP 800-186 §3.2.1). */
const FIELDS: [Curve, bigint][] = [
  ['prime256v1', 2n ** 256n - 2n ** 224n + 2n ** 192n + 2n ** 96n - 1n],
  ['secp384r1', 2n ** 384n - 2n ** 128n - 2n ** 96n + 2n ** 32n - 1n],
  ['secp521r1', 2n ** 521n - 1n],
];

describe.each(FIELDS)('the two s on %s', (curve, p) => {
  it('belong to an order within Hasse’s bound of the field: |p + 1 − n| ≤ 2·√p', () => {
    const n = otherS(0n, curve);
    const off = p + 1n - n;
    expect(off * off <= 4n * p).toBe(true);
  });

  it('are one low and one high, and each is the other of the other', () => {
    const n = otherS(0n, curve);
    fc.assert(
      fc.property(fc.bigInt({ min: 1n, max: n - 1n }), (s) => {
        expect(otherS(otherS(s, curve), curve)).toBe(s);
        expect(isLowS(s, curve)).not.toBe(isLowS(otherS(s, curve), curve));
      }),
    );
  });
});
