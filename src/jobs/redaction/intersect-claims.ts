import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { AmountWorksheet, Assessment } from '../../core/model/results.js';

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
        const { amounts, quantities, ...rest } = claim;
        return {
          ...rest,
          clocks: shared(claim.clocks, other?.clocks),
          papers: shared(claim.papers, other?.papers),
          position: shared(claim.position, other?.position),
          ...omitUndefined({
            // Outcomes that the copy lacks would give other amounts.
            amounts:
              countsOutcomes(amounts) || countsOutcomes(other?.amounts)
                ? same(amounts, other?.amounts)
                : amounts,
            quantities: same(quantities, other?.quantities),
          }),
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

const countsOutcomes = (amounts: AmountWorksheet | undefined): boolean =>
  amounts?.notes.some(({ detail }) => detail === 'quantities-from-outcomes') ?? false;

/** What both have, equal in every field; else nothing. */
const same = <T>(one: T | undefined, other: T | undefined): T | undefined =>
  JSON.stringify(one) === JSON.stringify(other) ? one : undefined;
