import { type ClaimId, type ClaimNote, LETTERS_BEFORE_CLAIM } from '../model/claim.js';
import type { Entry, EntryOf } from '../model/entry.js';
import { assertNever } from '../model/error.js';
import type { EvidenceId, EvidenceKind, Reading, ReceivedEvidence } from '../model/evidence.js';
import { countedEntries } from './counted-entries.js';
import { dependentsOf } from './dependents.js';

/** Whether evidence of this kind is a file, and so has a subject. */
function isFiled(kind: EvidenceKind): kind is 'photo' | 'unit-log' | 'readings' | 'document' {
  return kind === 'photo' || kind === 'unit-log' || kind === 'readings' || kind === 'document';
}

/** The evidence that an entry adds. */
export function evidenceAdded(entry: Entry): { id: EvidenceId; kind: EvidenceKind } | undefined {
  switch (entry.type) {
    case 'evidence-received':
    case 'reading-recorded':
      return { id: entry.body.evidence, kind: entry.body.kind };
    default:
      return undefined;
  }
}

/** What later entries can refer to: evidence by its id, claims, and claim notes by their entry's number. */
export class KnownReferences {
  readonly #under: KnownReferences | undefined;
  readonly #kinds = new Map<EvidenceId, EvidenceKind>();
  readonly #claims = new Map<ClaimId, number>();
  readonly #notes = new Map<number, ClaimNote>();
  readonly #entries: Entry[] = [];

  /** Starts empty, or from everything that `under` knows; `under` stays as it is. */
  constructor(under?: KnownReferences) {
    this.#under = under;
  }

  add(entry: Entry): void {
    this.#entries.push(entry);
    const brought = evidenceAdded(entry);
    if (brought !== undefined) this.#kinds.set(brought.id, brought.kind);
    if (entry.type !== 'claim-noted') return;
    this.#notes.set(entry.seq, entry.body);
    if (entry.body.is === 'received') this.#claims.set(entry.body.claim, entry.seq);
  }

  kindOf(id: EvidenceId): EvidenceKind | undefined {
    return this.#kinds.get(id) ?? this.#under?.kindOf(id);
  }

  hasClaim(id: ClaimId): boolean {
    return this.#claims.has(id) || (this.#under?.hasClaim(id) ?? false);
  }

  noteAt(seq: number): ClaimNote | undefined {
    return this.#notes.get(seq) ?? this.#under?.noteAt(seq);
  }

  entryAt(seq: number): Entry | undefined {
    const before = this.#under?.size ?? 0;
    return seq < before ? this.#under?.entryAt(seq) : this.#entries[seq - before];
  }

  get size(): number {
    return (this.#under?.size ?? 0) + this.#entries.length;
  }

  /** Every entry so far, in order. */
  entries(): readonly Entry[] {
    return this.#under === undefined ? this.#entries : [...this.#under.entries(), ...this.#entries];
  }

  /** Ids of the evidence added here. */
  evidence(): Iterable<EvidenceId> {
    return this.#kinds.keys();
  }
}

/**
 * The problem of an entry in the context of earlier ones: the facts come first, ids are unique, and references
 * exist.
 */
export function referenceProblem(entry: Entry, there: KnownReferences): string | undefined {
  if (entry.seq === 0 && entry.type !== 'delivery-facts') return 'the first entry must be the delivery facts';
  const known = (id: EvidenceId | undefined) =>
    id === undefined || there.kindOf(id) !== undefined ? undefined : `there is no evidence ${id}`;
  const origin = originProblem(entry, there);
  if (origin !== undefined) return origin;
  const unused = (id: EvidenceId) =>
    there.kindOf(id) === undefined ? undefined : `there is evidence ${id} already`;
  switch (entry.type) {
    case 'evidence-received':
      return (
        unused(entry.body.evidence) ??
        known(entry.body.within?.evidence) ??
        replacedProblem(entry.body, there)
      );
    case 'reading-recorded':
      return (
        unused(entry.body.evidence) ??
        (entry.body.source.is === 'row' ? known(entry.body.source.evidence) : undefined) ??
        documentProblem(entry.body, known)
      );
    case 'evidence-described': {
      const kind = there.kindOf(entry.body.evidence);
      if (kind !== undefined && entry.body.subject !== undefined && !isFiled(kind))
        return `${entry.body.evidence} is not a file but a recorded ${kind}, which has no subject`;
      return known(entry.body.evidence);
    }
    case 'evidence-withheld':
    case 'evidence-admitted':
      return known(entry.body.evidence);
    case 'entry-corrected':
      return correctionProblem(entry, there);
    case 'entry-struck':
      return strikeProblem(entry, there.entries());
    case 'clock-compared':
      return (
        known(entry.body.photo) ??
        (entry.body.clock.is === 'unit-log' ? known(entry.body.clock.evidence) : undefined)
      );
    case 'claim-noted':
      return (
        entry.body.evidence.map(known).find((problem) => problem !== undefined) ??
        claimProblem(entry.body, there)
      );
    case 'record-merged':
      return mergeProblem(entry);
    case 'delivery-facts':
    case 'fingerprint-published':
    case 'time-stamp-received':
    case 'dossier-built':
      return undefined;
    default:
      return assertNever(entry);
  }
}

/** The papers and photographs on which a reading stands are in the record. */
function documentProblem(
  reading: Reading,
  known: (id: EvidenceId | undefined) => string | undefined,
): string | undefined {
  if (!('documents' in reading)) return undefined;
  return reading.documents.map(known).find((problem) => problem !== undefined);
}

/** An entry that was taken over names the merge that brought it, and its leaf there. */
function originProblem({ origin, type }: Entry, there: KnownReferences): string | undefined {
  if (origin === undefined) return undefined;
  if (NEVER_TAKEN.has(type)) return `an entry of the type ${type} is not taken over from another record`;
  const merge = there.entryAt(origin.merge);
  if (merge?.type !== 'record-merged') return `entry ${origin.merge} tells of no merge`;
  const { shared, leaves } = merge.body;
  return leaves[origin.entry - shared] === origin.leaf
    ? undefined
    : `entry ${origin.merge} has another hash for entry ${origin.entry} of the merged record`;
}

/** What speaks of the state of the record that it stands in. */
const NEVER_TAKEN: ReadonlySet<Entry['type']> = new Set([
  'delivery-facts',
  'fingerprint-published',
  'time-stamp-received',
  'dossier-built',
]);

function mergeProblem({ seq, body, origin }: EntryOf<'record-merged'>): string | undefined {
  const { other, own, shared, leaves } = body;
  if (other.size !== shared + leaves.length)
    return `the merged record has ${other.size} entries, and ${shared} and ${leaves.length} are named`;
  if (origin === undefined && own.size !== seq) return `it names ${own.size} entries when there were ${seq}`;
  return shared > own.size ? 'more entries are shared than there were' : undefined;
}

/** Only a reading of a log can be replaced by another reading. */
function replacedProblem(received: ReceivedEvidence, there: KnownReferences): string | undefined {
  if (received.kind !== 'unit-log' || received.replaces === undefined) return undefined;
  const kind = there.kindOf(received.replaces);
  if (kind === undefined) return `there is no evidence ${received.replaces}`;
  return kind === 'unit-log' ? undefined : `${received.replaces} is no unit log, so it can't be read anew`;
}

function claimProblem(note: ClaimNote, there: KnownReferences): string | undefined {
  if (note.replaces !== undefined) {
    const replaced = there.noteAt(note.replaces);
    if (replaced?.is !== note.is || replaced.claim !== note.claim)
      return `entry ${note.replaces} says nothing of that kind about ${note.claim ?? 'no claim'}, so it can't be corrected`;
    return undefined;
  }
  if (note.is === 'answered' && note.claim === undefined)
    return LETTERS_BEFORE_CLAIM.has(note.letter)
      ? undefined
      : `a letter of the kind ${note.letter} answers a claim`;
  const begun = note.claim !== undefined && there.hasClaim(note.claim);
  if (note.is === 'received') return begun ? `there is claim ${note.claim} already` : undefined;
  return begun ? undefined : `there is no claim ${note.claim}`;
}

/** Only what counts is corrected, by a value of the same kind about the same thing, that would have been let in. */
function correctionProblem(entry: EntryOf<'entry-corrected'>, there: KnownReferences): string | undefined {
  const { entry: seq, becomes } = entry.body;
  const wrong = there.entries()[seq];
  if (wrong === undefined) return `there is no entry ${seq}`;
  if (wrong.type === 'entry-corrected')
    return `entry ${seq} is a correction itself; correct entry ${wrong.body.entry}, and the last correction counts`;
  if (!countedEntries(there.entries()).entries.some((counted) => counted.entry.seq === seq))
    return `entry ${seq} was struck, so there is nothing to correct; enter the right value anew`;
  if (wrong.type !== becomes.type)
    return `entry ${seq} is of the type ${wrong.type}; that type is not corrected by ${becomes.type}`;
  if (identityOf(wrong) !== identityOf({ ...entry, ...becomes }))
    return `a correction of entry ${seq} is about the same thing of the same kind; strike the entry and enter another`;
  return undefined;
}

/** What a correction can't change: which evidence of which kind and file, or which claim, an entry is about. */
function identityOf(entry: Entry): string {
  switch (entry.type) {
    case 'evidence-received':
      return [entry.body.evidence, entry.body.kind, entry.body.file.sha256].join(' ');
    case 'reading-recorded':
      return [entry.body.evidence, entry.body.kind].join(' ');
    case 'evidence-described':
      return entry.body.evidence;
    case 'claim-noted':
      return [entry.body.claim, entry.body.is].join(' ');
    default:
      return entry.type;
  }
}

const STRIKABLE: ReadonlySet<Entry['type']> = new Set([
  'evidence-received',
  'reading-recorded',
  'evidence-described',
  'evidence-withheld',
  'evidence-admitted',
  'clock-compared',
  'claim-noted',
  'entry-corrected',
  'entry-struck',
]);

/** Only what counts is struck, and only when nothing that counts rests on it. */
function strikeProblem(entry: EntryOf<'entry-struck'>, before: readonly Entry[]): string | undefined {
  const { entry: seq } = entry.body;
  const wrong = before[seq];
  if (wrong === undefined) return `there is no entry ${seq}`;
  if (!STRIKABLE.has(wrong.type))
    return wrong.type === 'delivery-facts'
      ? 'the facts of the delivery are not struck; change delivery.yaml'
      : `entry ${seq} says that something was done (${wrong.type}), which can't be undone`;
  if (before.some((one) => one.type === 'entry-struck' && one.body.entry === seq && isInForce(one, before)))
    return `entry ${seq} was struck already`;
  const resting = dependentsOf(wrong, before);
  return resting.length === 0
    ? undefined
    : `entry ${seq} carries others: ${resting.map((one) => `entry ${one.seq}`).join(', ')}; strike them first`;
}

/** Whether a strike is not struck itself. */
function isInForce(strike: Entry, entries: readonly Entry[]): boolean {
  return countedEntries(entries).entries.some(({ entry }) => entry.seq === strike.seq);
}
