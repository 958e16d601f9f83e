import type { ClaimNoteOf } from '../../model/claim.js';
import type { Entry, EntryOf, EntryType } from '../../model/entry.js';
import type { EvidenceId, ReceivedEvidence, Sha256 } from '../../model/evidence.js';
import { asJsonKeeps, canonicalBytes } from '../canonical.js';
import { countedEntries } from '../counted-entries.js';
import { treeHash } from '../tree.js';
import { mergedRecords } from './merged-records.js';
import type { RecordSide } from './record-side.js';

/** Fields of a description that are no word on the evidence. */
const NOT_SAID: ReadonlySet<string> = new Set(['evidence', 'why']);

/** What a record holds, asked by the entries of another one that is merged into it. */
export class HeldEntries {
  readonly #own: RecordSide;
  readonly #shared: number;
  readonly #byLeaf = new Map<Sha256, number>();
  readonly #files = new Map<string, EntryOf<'evidence-received'>>();
  /** Readings by what they say, first and after corrections; one that was matched is matched once. */
  readonly #readings = new Map<string, EntryOf<'reading-recorded'>[]>();
  readonly #used = new Set<number>();
  readonly #byContent = new Map<string, number>();
  readonly #counted: ReadonlyMap<number, Entry>;
  readonly #strikes = new Map<number, number>();
  readonly #corrected = new Set<number>();

  /** @param shared entries with which both records begin */
  constructor(own: RecordSide, shared: number) {
    this.#own = own;
    this.#shared = shared;
    const counted = countedEntries(own.entries);
    this.#counted = new Map(counted.entries.map(({ entry }) => [entry.seq, entry]));
    for (const { entry, strike } of counted.strikes) this.#strikes.set(entry.seq, strike.seq);
    for (const { entry, corrections } of counted.corrections)
      if (corrections.some(({ seq }) => seq >= shared)) this.#corrected.add(entry.seq);
    for (const entry of own.entries) this.#add(entry);
  }

  #add(entry: Entry): void {
    const { seq, origin, type, body } = entry;
    const leaf = this.#own.leaves[seq];
    if (leaf !== undefined) this.#byLeaf.set(leaf, seq);
    if (origin !== undefined) this.#byLeaf.set(origin.leaf, seq);
    if (seq < this.#shared) this.#used.add(seq);
    this.#byContent.set(contentOf(type, body), seq);
    if (type === 'evidence-received') this.#files.set(fileOf(body), entry);
    if (type !== 'reading-recorded') return;
    const now = this.#counted.get(seq);
    for (const said of new Set([sayingOf(body), sayingOf(now?.body ?? body)]))
      this.#readings.set(said, [...(this.#readings.get(said) ?? []), entry]);
  }

  /** The entry with this leaf, or that was taken over from it. */
  byLeaf(leaf: Sha256): number | undefined {
    return this.#byLeaf.get(leaf);
  }

  /** Whether a record was merged in before, or is an earlier state of this one. */
  merged({ size, root }: EntryOf<'record-merged'>['body']['other']): boolean {
    const { leaves } = this.#own;
    if (size <= leaves.length && treeHash(leaves.slice(0, size)) === root) return true;
    return this.#own.entries.some(
      ({ type, body }) => type === 'record-merged' && body.other.size === size && body.other.root === root,
    );
  }

  /** Whether each fingerprint of a record with these leaves can be proven: it is a beginning of one that is known. */
  provesAll(leaves: readonly Sha256[]): boolean {
    const known = [
      this.#own.leaves,
      ...mergedRecords(this.#own.entries, this.#own.leaves).map((one) => one.leaves),
    ];
    return known.some((all) => leaves.every((leaf, i) => all[i] === leaf));
  }

  /** The evidence with the same bytes, of the same kind. */
  file(received: ReceivedEvidence): EntryOf<'evidence-received'> | undefined {
    return this.#files.get(fileOf(received));
  }

  /** A reading that says the same as one of these, and was not matched before. */
  reading(...said: unknown[]): EntryOf<'reading-recorded'> | undefined {
    return said
      .flatMap((body) => this.#readings.get(sayingOf(body)) ?? [])
      .find(({ seq }) => !this.#used.has(seq));
  }

  /** An entry was matched, and no other is matched with it. */
  use(seq: number): void {
    this.#used.add(seq);
  }

  /** The entry of the same type and content. */
  entry(type: EntryType, body: unknown): number | undefined {
    return this.#byContent.get(contentOf(type, body));
  }

  isStruck(seq: number): boolean {
    return this.#strikes.has(seq);
  }

  /** The strike of an entry that is in force. */
  strikeOf(seq: number): number | undefined {
    return this.#strikes.get(seq);
  }

  isCorrected(seq: number): boolean {
    return this.#corrected.has(seq);
  }

  /** Whether an entry counts with this content. */
  countsAs(seq: number, body: unknown): boolean {
    const counted = this.#counted.get(seq);
    return counted !== undefined && contentOf(counted.type, counted.body) === contentOf(counted.type, body);
  }

  /** Whether evidence was withheld or admitted. */
  saysOf(type: 'evidence-withheld' | 'evidence-admitted', id: EvidenceId): boolean {
    return [...this.#counted.values()].some((one) => one.type === type && one.body.evidence === id);
  }

  /** A field of evidence that this record describes otherwise since the two went apart. */
  describedOtherwise(
    id: EvidenceId,
    there: EntryOf<'evidence-described'>['body'],
  ): { field: string; here: string; there: string } | undefined {
    for (const [field, said] of Object.entries(there)) {
      if (NOT_SAID.has(field)) continue;
      const mine = [...this.#counted.values()].flatMap((one) =>
        one.seq >= this.#shared && one.type === 'evidence-described' && one.body.evidence === id
          ? Object.entries(one.body).flatMap(([name, value]) => (name === field ? [textOf(value)] : []))
          : [],
      );
      const last = mine.at(-1);
      if (last !== undefined && last !== textOf(said)) return { field, here: last, there: textOf(said) };
    }
    return undefined;
  }

  /** A claim of the same claimant that came in on the same day. */
  claim({
    claimant,
    received,
  }: ClaimNoteOf<'received'>): { seq: number; body: ClaimNoteOf<'received'> } | undefined {
    for (const { seq, type, body } of this.#own.entries)
      if (
        type === 'claim-noted' &&
        body.is === 'received' &&
        body.claimant.name === claimant.name &&
        body.received.date === received.date
      )
        return { seq, body };
    return undefined;
  }

  /** Whether a claim note was replaced since the two records went apart. */
  isReplaced(note: number): boolean {
    return this.#own.entries.some(
      ({ seq, type, body }) => seq >= this.#shared && type === 'claim-noted' && body.replaces === note,
    );
  }
}

const fileOf = ({ kind, file }: ReceivedEvidence) => `${kind} ${file.sha256}`;

/** The content of a reading, whatever its id and source. */
function sayingOf(body: unknown): string {
  if (typeof body !== 'object' || body === null) return '';
  const said = Object.entries(body).filter(([name]) => name !== 'evidence' && name !== 'source');
  return textOf(Object.fromEntries(said));
}

const contentOf = (type: EntryType, body: unknown) => `${type} ${textOf(body)}`;

function textOf(value: unknown): string {
  return new TextDecoder().decode(canonicalBytes(asJsonKeeps(value)));
}
