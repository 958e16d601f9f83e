import { findingSentences } from '../../compose/letters/finding-sentences.js';
import type { CorrespondenceInput } from '../../compose/letters/input.js';
import type { Finding } from '../../core/model/results.js';
import type { LetterRequest } from './letter-request.js';
import type { LetterReader } from './reader.js';

/** Notes for the sender that the letter does not print. */
export interface SenderNotes {
  /** Adverse and open findings, with exhibits. */
  weak: { weighs: 'hurts' | 'open'; says: string }[];
  /** Findings for the carrier that are not in the letter, because the reader's copy redacts their evidence. */
  kept: string[];
  /** Unmet requirements that weaken the position. */
  missing: string[];
  cautions: string[];
}

/** @param paper the whole record as paper, for its words */
export async function senderNotes(
  request: LetterRequest,
  reader: LetterReader,
  paper: CorrespondenceInput,
): Promise<SenderNotes> {
  const { findings, gaps } = reader.whole.assessment;
  const ofWeight = (weighs: 'hurts' | 'open') => findings.filter((finding) => finding.weighs === weighs);
  const said = async (weighs: 'hurts' | 'open', of: readonly Finding[]) =>
    (await findingSentences(paper, of)).map((says) => ({ weighs, says }));
  const weakRules = new Set(
    (reader.claim?.result?.position ?? []).flatMap(({ weak }) =>
      weak.flatMap(({ from }) => (from.is === 'gap' ? [from.id] : [])),
    ),
  );
  return {
    weak: [...(await said('hurts', ofWeight('hurts'))), ...(await said('open', ofWeight('open')))],
    kept: await findingSentences(paper, reader.kept),
    missing: gaps.filter(({ rule }) => weakRules.has(rule)).map(({ title }) => title),
    cautions: cautionsFor(request, reader),
  };
}

function cautionsFor(
  { kind, loading, disallowsRest }: LetterRequest,
  { claim, whole }: LetterReader,
): string[] {
  const declines = kind === 'denial' || (kind === 'offer' && disallowsRest);
  const governs = claim?.result?.governs;
  const settled = (claim?.entries ?? []).some(
    (entry) => entry.replacedBy === undefined && (entry.is === 'declined' || entry.is === 'closed'),
  );
  const placed = whole.assessment.loading !== undefined;
  return [
    'This is not legal advice: the law of the place and the contract of carriage decide. Have the letter read by someone who knows them.',
    ...(claim !== undefined && (governs === undefined || governs === 'unknown')
      ? ['What governs the carriage is not recorded, so that no clock is sure: dossier record claim terms.']
      : []),
    ...(declines
      ? [
          'A written denial with reasons can start the time in which the claimant may sue (49 U.S.C. 14706(e)(1), where it governs).',
        ]
      : []),
    ...(kind === 'offer'
      ? [
          'An offer to compromise a disputed claim is not evidence of its validity or amount (Federal Rules of Evidence 408); it can show that there was no undue delay, so that its date and the fact of it are kept.',
          'A claim whose amount can’t be determined is not voluntarily paid until a formal claim for a specified or determinable amount is filed (49 CFR 370.3(d), where it governs).',
          'An offer does not spare the acknowledgment of the claim (49 CFR 370.5(a), where it governs).',
        ]
      : []),
    ...(declines && governs === 'cmr'
      ? [
          'The time to sue runs again only when the documents of the claim are returned too: send them so that it can be proved, and record it with dossier record claim papers-returned (CMR, article 32(2)).',
        ]
      : []),
    ...(kind === 'acknowledgement' || kind === 'status-report'
      ? [
          'In electronic form these letters rest on 49 CFR 390.32 and need proof that the claimant consented to it; keep a copy in the claim file.',
        ]
      : []),
    ...(kind === 'rejection-notice'
      ? [
          'The buyer’s time to reject ends with notice to the consignor, not with what the driver is told (7 CFR 46.2(dd)(3), as of 2015). This letter is the carrier’s own; when it is sent, record it: dossier record contact shipper --notice refused-load.',
        ]
      : []),
    ...(kind === 'refused-load'
      ? [
          'After notice, and unless advised to the contrary, the carrier shall undertake to sell or dispose of a refused load, fairly to all who have an interest, with an itemized record and a successive lot number (49 CFR 370.11(a), as of 2015, where it governs: compare with the current text). Perishable goods lose value while an answer is awaited.',
        ]
      : []),
    ...(kind === 'inspection-appeal'
      ? [
          'An appeal is refused where the goods have materially changed since, or can’t be reached or identified (7 CFR 51.27(b) to (d)): ask at once, keep them cold and marked. Its application states the reasons and goes with a copy of the certificate and any other information received on the goods at that time (7 CFR 51.24, read in the text of 1956: compare with the current text and numbering). It may be withdrawn before it is made (51.28, as of 2015); no fee is charged where a material error is found (51.40).',
        ]
      : []),
    ...(kind === 'similar-claims'
      ? [
          'Where part 370 governs, the carrier communicates with each other carrier, and notifies all claimants before any agreement among carriers on the claims (49 CFR 370.3(e)). The letter goes to each claimant, and says nothing of who has the right.',
        ]
      : []),
    ...(kind === 'recourse'
      ? [
          'Recourse is for what the carrier was required to pay to the owners of the goods, as a receipt, a judgment or a certified copy of it shows, and for expenses of defending a civil action (49 U.S.C. 14706(b)): enclose what shows the payment.',
        ]
      : []),
    ...(kind === 'reservation' && governs !== 'cmr'
      ? [
          'Where the CMR governs, a reservation states its grounds and binds the sender only if he expressly agrees in the consignment note (article 8(2)).',
        ]
      : []),
    ...(kind === 'status-report' && settled
      ? ['The letter says that the claim is not decided, but the record says that it is declined or closed.']
      : []),
    ...((kind === 'notice-to-shipper' || kind === 'reservation') && placed && !loading
      ? ['How the load was placed is left out; --loading puts it in, where the shipper loaded.']
      : []),
    ...((kind === 'notice-to-shipper' || kind === 'reservation') && loading
      ? [
          'The letter says how the load was placed: where the carrier loaded, that speaks against the carrier.',
        ]
      : []),
  ];
}
