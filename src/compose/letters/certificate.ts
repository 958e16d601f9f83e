import { daysLate } from '../../core/assess/trail/late-entry.js';
import type { EvidenceId, Sha256 } from '../../core/model/evidence.js';
import { findEvidence, type RecordState } from '../../core/model/state.js';
import type { Letter } from './compose.js';
import type { Annex } from './document.js';
import { commonParts, type LetterDocument } from './document.js';
import type { CorrespondenceInput } from './input.js';
import { letterText } from './text.js';
import type { LetterView } from './view.js';
import { letterView } from './view.js';

export interface CertificateInput extends CorrespondenceInput {
  tool: { name: string; version: string };
  /** Leaf hash of the ledger entry that added the evidence, for evidence that is not a file (RFC 9162 §2.1). */
  entryHash: (seq: number) => Sha256 | undefined;
}

/**
 * Drafts a certificate of records for a qualified person to check, complete and sign: a declaration after 28 U.S.C.
 * 1746 for records of Federal Rules of Evidence 902(11), (13) and (14), with the exhibits and their hashes.
 * It claims no admissibility. Throws DossierError `bad-template`.
 */
export async function draftCertificate(input: CertificateInput): Promise<Letter> {
  const view = await letterView(input);
  const { labels, words, format } = view;
  const { state, fingerprint, tool } = input;
  const dossier = input.enclosed.find(({ what }) => what === 'dossier');
  const { delivery } = state;
  const late = lateDays(state);
  const subject = labels('subject.certificate');
  const document: LetterDocument = {
    ...commonParts(view),
    title: `${subject} · ${delivery.delivery}`,
    subject,
    about: [],
    body: words.blocks('letters/certificate', {
      carrier: delivery.parties.carrier?.name ?? '',
      delivery: delivery.delivery,
      size: fingerprint.size,
      root: fingerprint.root,
      tool: tool.name,
      version: tool.version,
      late: late.length,
      latest: late.reduce((most, days) => Math.max(most, days), 0),
      dossierFile: dossier?.name,
      dossierBytes: dossier === undefined ? undefined : format.number(dossier.bytes),
      dossierHash: dossier?.sha256,
    }),
    sign: {
      closing: '',
      for: delivery.parties.carrier?.name ?? '',
      lines: ['signature', 'name', 'position', 'day'].map((name) => labels(`letter.${name}`)),
    },
    annex: annexOf(view),
  };
  return { document, text: letterText(document), blanks: view.blanks() };
}

/** Of each entry that was made a day or more after what it tells of: how many whole days. Files speak for themselves. */
function lateDays({ evidence }: RecordState): number[] {
  return evidence.flatMap((item) => ('file' in item ? [] : (daysLate(item.enteredAt, item.time) ?? [])));
}

function annexOf({ input, labels }: LetterView<CertificateInput>): Annex {
  const what = (id: EvidenceId) => {
    const item = findEvidence(input.state, id);
    if (item === undefined) return '';
    const subject = 'subject' in item ? item.subject?.is : undefined;
    return labels(subject === undefined ? `kind.${item.kind}` : `subject.${subject}`);
  };
  const late = (id: EvidenceId) => {
    const item = findEvidence(input.state, id);
    const days = item === undefined || 'file' in item ? undefined : daysLate(item.enteredAt, item.time);
    return days === undefined ? '' : labels('annex.late').replace('N', String(days));
  };
  return {
    title: labels('annex.title'),
    columns: ['number', 'what', 'file', 'hash'].map((name) => labels(`annex.${name}`)),
    rows: input.exhibits.map(({ exhibit, evidence, seq, file }) => [
      String(exhibit),
      [what(evidence), late(evidence)].filter((part) => part !== '').join('; '),
      file === undefined ? `${labels('annex.entry')} ${seq}` : file.name,
      file === undefined ? (input.entryHash(seq) ?? '') : file.sha256,
    ]),
  };
}
