import { numberExhibits } from '../../compose/exhibits.js';
import type { CorrespondenceInput, LetterClaim } from '../../compose/letters/input.js';
import type { ClaimId } from '../../core/model/claim.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Finding } from '../../core/model/results.js';
import type { Instant } from '../../core/model/time.js';
import type { DeliveryRecord } from '../../record/store.js';
import { assessRecord } from '../assess.js';
import { intersectAssessments } from '../redaction/intersect-assessments.js';
import type { RedactedCopy } from '../redaction/read.js';
import { redact, redactedState } from '../redaction/redact.js';

/** What the reader of a letter sees, and what only the carrier sees. */
export interface LetterReader {
  /** The letter says nothing that the reader's copy does not show. */
  seen: Pick<CorrespondenceInput, 'state' | 'assessment' | 'exhibits'>;
  whole: Pick<CorrespondenceInput, 'state' | 'assessment' | 'exhibits'>;
  /** Findings for the carrier that rest on redacted evidence. */
  kept: Finding[];
  claim?: LetterClaim;
}

/** The record as the reader of a copy sees it; `copy` is undefined for a reader of the whole record. */
export async function readerOf(
  record: DeliveryRecord,
  copy: RedactedCopy | undefined,
  claim: ClaimId | undefined,
  at: Instant,
  templates: string | undefined,
): Promise<LetterReader> {
  const { state, assessment } = await assessRecord(record, at, undefined, templates);
  const result = assessment.claims?.find((one) => one.claim === claim);
  const ofClaim: LetterClaim | undefined =
    claim === undefined
      ? undefined
      : {
          entries: state.claims.filter((entry) => entry.claim === claim),
          ...omitUndefined({ result }),
        };
  const more = omitUndefined({ claim: ofClaim });
  // Exhibits keep their numbers of the carrier's own dossier.
  const numbered = numberExhibits(record.state());
  const whole = { state, assessment, exhibits: numbered };
  if (copy === undefined) return { seen: whole, whole, kept: [], ...more };
  const redaction = redact(record.entries, record.state(), copy);
  const part = await assessRecord(record, at, (all) => redactedState(all, redaction, copy), templates);
  const said = intersectAssessments(assessment, part.assessment).assessment;
  const saidIds = new Set(said.findings.map(keyOf));
  return {
    seen: {
      state: part.state,
      assessment: said,
      exhibits: numbered.filter(({ evidence }) => !redaction.evidence.has(evidence)),
    },
    whole,
    kept: assessment.findings.filter((one) => one.weighs === 'helps' && !saidIds.has(keyOf(one))),
    ...more,
  };
}

const keyOf = ({ id, weighs, facts }: Finding) => JSON.stringify([id, weighs, facts]);
