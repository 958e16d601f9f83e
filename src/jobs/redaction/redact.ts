import type { Entry } from '../../core/model/entry.js';
import { entryEvidence } from '../../core/model/entry-evidence.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import type { EvidenceItem, RecordState } from '../../core/model/state.js';
import type { RedactedCopy } from './read.js';

/** What a copy redacts of one record. */
export interface Redaction {
  /** Evidence that is not in the copy at all. */
  evidence: ReadonlySet<EvidenceId>;
  /** Evidence that is shown, while its ledger entries are redacted because they hold coordinates. */
  entryOnly: ReadonlySet<EvidenceId>;
  /** Numbers of the ledger entries that are given as their hash only. */
  entries: ReadonlySet<number>;
  /** How many entries of the whole record were corrected, and how many were struck. */
  putRight: { corrected: number; struck: number };
}

/** The carrier's own dossier redacts nothing. */
export const NO_REDACTION: Redaction = {
  evidence: new Set(),
  entryOnly: new Set(),
  entries: new Set(),
  putRight: { corrected: 0, struck: 0 },
};

/** Decides what a copy redacts, by its entry in copies.yaml and by what is withheld. */
export function redact(entries: readonly Entry[], state: RecordState, copy: RedactedCopy): Redaction {
  const out = new Set(state.evidence.filter((item) => isRedacted(item, copy)).map((item) => item.evidence));
  // Evidence that does not count is redacted, with its entries.
  for (const id of evidenceNotCounted(state)) out.add(id);
  // Readings from a file are redacted with the file.
  for (const item of state.evidence)
    if ('source' in item && item.source.is === 'row' && out.has(item.source.evidence)) out.add(item.evidence);
  const entryOnly = new Set<EvidenceId>();
  if (!copy.positions)
    for (const entry of entries) {
      const place =
        entry.type === 'evidence-received' ||
        entry.type === 'reading-recorded' ||
        entry.type === 'evidence-described'
          ? entry.body
          : undefined;
      if (place?.place?.gps !== undefined && !out.has(place.evidence)) entryOnly.add(place.evidence);
    }
  const spokenOf = (id: EvidenceId) => out.has(id) || entryOnly.has(id);
  return {
    evidence: out,
    entryOnly,
    entries: new Set(
      entries
        .filter(
          (entry) =>
            names(entry, entries).some(spokenOf) ||
            (copy.leaveOut.claims && entry.type === 'claim-noted') ||
            // That the carrier weighed its evidence is no business of the other side.
            (!copy.assessment && entry.type === 'dossier-built' && entry.body.volume === 'assessment'),
        )
        .map((entry) => entry.seq),
    ),
    putRight: { corrected: state.corrections.length, struck: state.strikes.length },
  };
}

function evidenceNotCounted(state: RecordState): EvidenceId[] {
  return [
    ...state.notCounted.map(({ evidence }) => evidence),
    ...state.strikes.flatMap(({ entry }) =>
      entry.type === 'evidence-received' || entry.type === 'reading-recorded' ? [entry.body.evidence] : [],
    ),
  ];
}

function isRedacted(item: EvidenceItem, { leaveOut: not }: RedactedCopy): boolean {
  if (item.withheld !== undefined) return true;
  if (not.kinds.some((kind) => kind === item.kind)) return true;
  const subject = 'subject' in item ? item.subject?.is : undefined;
  return subject !== undefined && not.subjects.includes(subject);
}

/** The evidence that an entry adds or concerns. */
function names(entry: Entry, entries: readonly Entry[]): EvidenceId[] {
  if (entry.type !== 'entry-corrected' && entry.type !== 'entry-struck') return entryEvidence(entry);
  const earlier = entries[entry.body.entry];
  return earlier === undefined ? [] : names(earlier, entries);
}

/** The state that a copy is computed and typeset from, without anything redacted. */
export function redactedState(state: RecordState, redaction: Redaction, copy: RedactedCopy): RecordState {
  return {
    ...state,
    evidence: state.evidence
      .filter((item) => !redaction.evidence.has(item.evidence))
      .map((item) => (copy.positions ? item : withoutPosition(item))),
    notCounted: [],
    strikes: [],
    corrections: state.corrections.filter(({ entry }) => !redaction.entries.has(entry.seq)),
    clocks: state.clocks.filter(({ seq }) => !redaction.entries.has(seq)),
    claims: state.claims.filter(({ seq }) => !redaction.entries.has(seq)),
    dossiers: state.dossiers.filter(({ seq }) => !redaction.entries.has(seq)),
  };
}

function withoutPosition(item: EvidenceItem): EvidenceItem {
  if (item.place?.gps === undefined) return item;
  const { gps: _, ...place } = item.place;
  return { ...item, place };
}

/** The carrier's own dossier shows every picture whole. */
export function unredactedState(state: RecordState): RecordState {
  return { ...state, evidence: state.evidence.map(({ blackOut: _, ...item }) => item as EvidenceItem) };
}
