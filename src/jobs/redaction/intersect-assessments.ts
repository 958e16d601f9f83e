import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Assessment, Finding, SetPointAgreement, SetPointDifference } from '../../core/model/results.js';
import { intersectClaims } from './intersect-claims.js';

/** The assessment of a redacted copy, and how much of the whole record's results it leaves out. */
export interface RedactedAssessment {
  assessment: Assessment;
  findingsLeftOut: number;
  requirementsLeftOut: number;
}

/** What a finding says. */
const keyOf = ({ id, compartment, weighs, facts }: Finding) => [id, compartment, weighs, facts];

/**
 * Results that follow from a copy's evidence and hold for the whole record too. A copy that redacts a call to the
 * shipper must not say that no notice was given, nor that sources agree when the one that differs is redacted.
 */
export function intersectAssessments(whole: Assessment, part: Assessment): RedactedAssessment {
  const same = <T>(list: readonly T[], key: (one: T) => unknown) => {
    const keys = new Set(list.map((one) => JSON.stringify(key(one))));
    return (one: T) => keys.has(JSON.stringify(key(one)));
  };
  const findings = part.findings.filter(same(whole.findings, keyOf));
  const gaps = part.gaps.filter(
    same(whole.gaps, ({ rule, outcome, lacking, against }) => [rule, outcome, lacking, against]),
  );
  const product = part.product?.filter(
    same(whole.product ?? [], ({ line, log, verdict, places, loading, arrival }) => [
      line,
      log,
      verdict,
      places,
      loading,
      arrival,
    ]),
  );
  const inspections = part.inspections?.filter(same(whole.inspections ?? [], (one) => one));
  return {
    assessment: {
      ...part,
      findings,
      gaps,
      setPoints: setPointsOfBoth(whole.setPoints, part.setPoints),
      ...omitUndefined({ product, inspections }),
      ...intersectClaims(whole, part),
    },
    findingsLeftOut: whole.findings.filter((one) => !findings.some(same([one], keyOf))).length,
    requirementsLeftOut: whole.gaps.length - gaps.length,
  };
}

/** A verdict that differs is left out, and notices about a difference are given only where the copy has all of them. */
function setPointsOfBoth(whole: SetPointAgreement, part: SetPointAgreement): SetPointAgreement {
  const all = [whole, ...(whole.legs ?? [])].flatMap(({ differences }) => differences);
  const told = ({ differences }: { differences: readonly SetPointDifference[] }) =>
    differences.map((one): SetPointDifference => {
      const { told: _, ...untold } = one;
      return all.some((other) => JSON.stringify(other) === JSON.stringify(one)) ? one : untold;
    });
  return {
    ...part,
    verdict: part.verdict === whole.verdict ? part.verdict : 'not-comparable',
    differences: told(part),
    ...omitUndefined({ legs: part.legs?.map((leg) => ({ ...leg, differences: told(leg) })) }),
  };
}
