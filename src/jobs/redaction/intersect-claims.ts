import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Assessment } from '../../core/model/results.js';

/**
 * Deadlines, documents and positions of a copy that hold for the whole record too: a copy without an inspection
 * must not say that the goods were rejected late, nor one without an invoice that there is none.
 */
export function intersectClaims(
  whole: Assessment,
  part: Assessment,
): Pick<Assessment, 'claims' | 'refusalClocks'> {
  const { claims, refusalClocks } = part;
  return {
    ...omitUndefined({
      claims: claims?.map((claim) => {
        const other = whole.claims?.find((one) => one.claim === claim.claim);
        return {
          ...claim,
          clocks: shared(claim.clocks, other?.clocks),
          papers: shared(claim.papers, other?.papers),
          position: shared(claim.position, other?.position),
        };
      }),
      refusalClocks: refusalClocks && shared(refusalClocks, whole.refusalClocks),
    }),
  };
}

/** Items of one list that the other has too, equal in every field. */
function shared<T>(list: readonly T[], other: readonly T[] = []): T[] {
  const known = new Set(other.map((one) => JSON.stringify(one)));
  return list.filter((one) => known.has(JSON.stringify(one)));
}
