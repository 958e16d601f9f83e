import type { EvidenceId, Sha256 } from '../../core/model/evidence.js';
import { findEvidence } from '../../core/model/state.js';
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

function annexOf({ input, labels }: LetterView<CertificateInput>): Annex {
  const what = (id: EvidenceId) => {
    const item = findEvidence(input.state, id);
    if (item === undefined) return '';
    const subject = 'subject' in item ? item.subject?.is : undefined;
    return labels(subject === undefined ? `kind.${item.kind}` : `subject.${subject}`);
  };
  return {
    title: labels('annex.title'),
    columns: ['number', 'what', 'file', 'hash'].map((name) => labels(`annex.${name}`)),
    rows: input.exhibits.map(({ exhibit, evidence, seq, file }) => [
      String(exhibit),
      what(evidence),
      file === undefined ? `${labels('annex.entry')} ${seq}` : file.name,
      file === undefined ? (input.entryHash(seq) ?? '') : file.sha256,
    ]),
  };
}
