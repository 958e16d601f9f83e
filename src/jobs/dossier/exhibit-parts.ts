import { numberExhibits } from '../../compose/exhibits.js';
import { entryBytes } from '../../core/ledger/ledger.js';
import type { Sha256 } from '../../core/model/evidence.js';
import type { Exhibit, OmittedOriginal, Volume } from '../../core/model/manifest.js';
import type { RecordState } from '../../core/model/state.js';
import type { RecordView } from '../../record/record-at.js';
import { redactLedger } from '../../signing/redact-message.js';
import { withheldOriginals } from '../redaction/originals.js';
import type { RedactedCopy } from '../redaction/read.js';
import type { Redaction } from '../redaction/redact.js';

/** What of the record a dossier holds, beside what is computed. */
export interface ExhibitParts {
  /** Bytes of every entry, and the ledger as the dossier has it, with the numbers of the entries that stand as a hash only. */
  entries: Uint8Array[];
  ledger: { bytes: Buffer; leftOut: number[] };
  /** They keep the numbers that they have in the carrier's own dossier. */
  numbered: Exhibit[];
  /** Originals that must not go inside, and why. */
  not: ReadonlyMap<Sha256, OmittedOriginal['why']>;
  /** Files of evidence that a copy does not name: size and hash stay, the name does not. */
  unnamed: OmittedOriginal[];
}

/** Decides it, by the copy where the dossier is one. */
export async function exhibitParts(
  record: RecordView,
  shown: RecordState,
  { copy, out, volume }: { copy: RedactedCopy | undefined; out: Redaction; volume: Volume },
): Promise<ExhibitParts> {
  const whole = record.state();
  const entries = record.entries.map(entryBytes);
  const { bytes, leftOut } = redactLedger(entries, out.entries);
  return {
    entries,
    ledger: { bytes: Buffer.from(bytes), leftOut },
    numbered: numberExhibits(whole).filter((one) => !out.evidence.has(one.evidence)),
    not:
      volume === 'assessment'
        ? filesInDossier(shown)
        : copy === undefined
          ? withheldFiles(shown)
          : await withheldOriginals(whole, out, copy, (hash) => record.readOriginal(hash)),
    unnamed: [...unnamedFiles(whole, out), ...filesNotCounted(whole, copy !== undefined)],
  };
}

/** An assessment names the exhibits; the dossier of the same record holds their originals. */
function filesInDossier(state: RecordState): Map<Sha256, OmittedOriginal['why']> {
  return new Map(
    state.evidence.flatMap((item) =>
      'file' in item
        ? [[item.file.sha256, item.withheld === undefined ? 'in-dossier' : 'withheld'] as const]
        : [],
    ),
  );
}

function withheldFiles(state: RecordState): Map<Sha256, OmittedOriginal['why']> {
  return new Map(
    state.evidence.flatMap((item) =>
      'file' in item && item.withheld !== undefined ? [[item.file.sha256, 'withheld'] as const] : [],
    ),
  );
}

/** Files of evidence that was struck, or that seems to belong elsewhere: outsiders do not get their names. */
function filesNotCounted(state: RecordState, forOutsiders: boolean): OmittedOriginal[] {
  const counted = new Set(state.evidence.flatMap((item) => ('file' in item ? [item.file.sha256] : [])));
  const files = [
    ...state.notCounted.flatMap((item) => ('file' in item ? [item.file] : [])),
    ...state.strikes.flatMap(({ entry }) => (entry.type === 'evidence-received' ? [entry.body.file] : [])),
  ].filter(({ sha256 }) => !counted.has(sha256));
  return [...new Map(files.map((file) => [file.sha256, file])).values()].map(({ name, bytes, sha256 }) => ({
    name: forOutsiders ? '(left out)' : name,
    bytes,
    sha256,
    why: 'not-counted',
  }));
}

function unnamedFiles(state: RecordState, out: Redaction): OmittedOriginal[] {
  return state.evidence.flatMap((item): OmittedOriginal[] =>
    'file' in item && out.evidence.has(item.evidence)
      ? [{ name: '(left out)', bytes: item.file.bytes, sha256: item.file.sha256, why: 'withheld' }]
      : [],
  );
}
