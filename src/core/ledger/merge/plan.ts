import {
  type Entry,
  type EntryOf,
  type EntryOrigin,
  entry as entrySchema,
  firstEntered,
} from '../../model/entry.js';
import type { EvidenceId, Sha256 } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import { asJsonKeeps } from '../canonical.js';
import { countedEntries } from '../counted-entries.js';
import { dependentsOf } from '../dependents.js';
import { evidenceAdded } from '../references.js';
import { treeHash } from '../tree.js';
import type { MergeConflict } from './conflict.js';
import { type Decision, struckHere } from './decision.js';
import { HeldEntries } from './held-entries.js';
import type { MergedSide, MergePlan, RecordMerge, TakenEntry } from './merge-plan.js';
import { Names } from './names.js';
import { type RecordSide, sharedBeginning } from './record-side.js';

/**
 * Decides what of another record of the same delivery this one lacks. Entries that both hold are matched by their leaf
 * hash, files by their bytes, the rest by what it says; corrections, strikes and descriptions follow the entry that
 * they speak of. Where both say something else of the same thing, this record's word stays and the two are named.
 */
export function planMerge(own: RecordSide, other: MergedSide): MergePlan {
  return new MergePlanner(own, other).plan();
}

class MergePlanner {
  readonly #own: RecordSide;
  readonly #other: MergedSide;
  readonly #shared: number;
  readonly #merge: RecordMerge;
  readonly #held: HeldEntries;
  /** This record as it would be: its entries, the merge, and what is taken. */
  readonly #result: Entry[];
  readonly #names: Names;
  readonly #taken: TakenEntry[] = [];
  readonly #conflicts: MergeConflict[] = [];
  /** Entries of the other record that have no meaning here, by their number there. */
  readonly #leftThere = new Set<number>();
  #heldCount = 0;

  constructor(own: RecordSide, other: MergedSide) {
    this.#own = own;
    this.#other = other;
    this.#shared = sharedBeginning(own.leaves, other.leaves);
    this.#held = new HeldEntries(own, this.#shared);
    this.#merge = {
      other: { delivery: other.delivery, size: other.leaves.length, root: treeHash(other.leaves) },
      own: { size: own.leaves.length, root: treeHash(own.leaves) },
      shared: this.#shared,
      leaves: other.leaves.slice(this.#shared),
      ledger: other.ledger,
    };
    const { at, by } = other.entries.at(-1) ?? own.entries.at(-1) ?? raise();
    this.#result = [
      ...own.entries,
      { seq: own.entries.length, at, by, type: 'record-merged', body: this.#merge },
    ];
    this.#names = new Names(own.entries);
    for (const entry of own.entries.slice(0, this.#shared)) this.#names.same(entry, entry);
  }

  plan(): MergePlan {
    const { entries, leaves } = this.#other;
    for (const entry of entries.slice(this.#shared)) {
      const leaf = leaves[entry.seq];
      if (leaf === undefined) throw new Error(`no leaf for entry ${entry.seq}`);
      const decision = this.#decide(entry, leaf);
      switch (decision.is) {
        case 'stays-there':
          this.#leftThere.add(entry.seq);
          break;
        case 'held':
          this.#heldCount += 1;
          this.#match(entry, decision.as);
          break;
        case 'conflict':
          this.#conflicts.push(decision.conflict);
          this.#match(entry, decision.as);
          break;
        case 'take':
          this.#take(entry, decision.body, leaf);
      }
    }
    return {
      result: this.#result,
      merge: this.#merge,
      taken: this.#taken,
      held: this.#heldCount,
      conflicts: this.#conflicts,
      isKnown: this.#held.provesAll(leaves),
    };
  }

  #decide(entry: Entry, leaf: Sha256): Decision {
    const known = this.#held.byLeaf(leaf) ?? (entry.origin && this.#held.byLeaf(entry.origin.leaf));
    if (known !== undefined) return { is: 'held', as: known };
    switch (entry.type) {
      case 'delivery-facts':
      case 'fingerprint-published':
      case 'time-stamp-received':
      case 'dossier-built':
        return { is: 'stays-there' };
      case 'record-merged':
        return this.#held.merged(entry.body.other) ? { is: 'held' } : { is: 'take', body: entry.body };
      case 'evidence-received':
        return this.#received(entry);
      case 'reading-recorded':
        return this.#reading(entry);
      case 'evidence-described':
        return this.#described(entry);
      case 'evidence-withheld':
      case 'evidence-admitted':
        return this.#ofEvidence(entry);
      case 'clock-compared':
        // What photos tell of a camera's clock is compared anew over all of them.
        return entry.body.how === 'satellite-time' ? { is: 'stays-there' } : this.#said(entry);
      case 'claim-noted':
        return this.#claim(entry);
      case 'entry-corrected':
        return this.#corrected(entry);
      case 'entry-struck':
        return this.#struck(entry);
    }
  }

  #received(entry: EntryOf<'evidence-received'>): Decision {
    const same = this.#held.file(entry.body);
    if (same === undefined) return { is: 'take', body: this.#newEvidence(entry.body) };
    if (this.#isStruckHereAlone(same.seq, entry.seq)) return struckHere(same.seq, same.body.evidence);
    const reads = (one: typeof entry.body) => (one.kind === 'unit-log' ? textOf(one.mapping) : '');
    return reads(same.body) === reads(entry.body)
      ? { is: 'held', as: same.seq }
      : {
          is: 'conflict',
          as: same.seq,
          conflict: { is: 'read-otherwise', entry: same.seq, evidence: same.body.evidence },
        };
  }

  #reading(entry: EntryOf<'reading-recorded'>): Decision {
    const body = this.#names.renumber(entry.body);
    const same = this.#held.reading(body, this.#effective(entry));
    if (same === undefined) return { is: 'take', body: this.#newEvidence(entry.body) };
    return this.#isStruckHereAlone(same.seq, entry.seq)
      ? struckHere(same.seq, same.body.evidence)
      : { is: 'held', as: same.seq };
  }

  /** What this record says of the same evidence since the two went apart stays. */
  #described(entry: EntryOf<'evidence-described'>): Decision {
    const said = this.#said(entry);
    const id = this.#names.evidence(entry.body.evidence);
    if (said.is !== 'take' || id === undefined) return said;
    const other = this.#held.describedOtherwise(id, entry.body);
    return other === undefined
      ? said
      : { is: 'conflict', conflict: { is: 'described', evidence: id, ...other } };
  }

  #ofEvidence(entry: EntryOf<'evidence-withheld'> | EntryOf<'evidence-admitted'>): Decision {
    const id = this.#names.evidence(entry.body.evidence);
    return id !== undefined && this.#held.saysOf(entry.type, id) ? { is: 'held' } : this.#said(entry);
  }

  #claim(entry: EntryOf<'claim-noted'>): Decision {
    const { body } = entry;
    if (body.is === 'received' && body.replaces === undefined) {
      const same = this.#held.claim(body);
      if (same === undefined) {
        this.#names.addClaim(body.claim);
        return { is: 'take', body: this.#names.renumber(body) };
      }
      this.#names.sameClaim(body.claim, same.body.claim);
      const said = this.#said(entry);
      return said.is === 'take'
        ? { is: 'conflict', as: same.seq, conflict: { is: 'claim', entry: same.seq, claim: same.body.claim } }
        : said;
    }
    const replaced = body.replaces === undefined ? undefined : this.#names.entry(body.replaces);
    if (body.replaces !== undefined && replaced === undefined) return this.#unmatched(entry, body.replaces);
    const said = this.#said(entry);
    return said.is === 'take' && replaced !== undefined && this.#held.isReplaced(replaced)
      ? { is: 'conflict', conflict: { is: 'corrected', entry: replaced } }
      : said;
  }

  #corrected(entry: EntryOf<'entry-corrected'>): Decision {
    const target = this.#names.entry(entry.body.entry);
    if (target === undefined) return this.#unmatched(entry, entry.body.entry);
    if (this.#held.isStruck(target))
      return { is: 'conflict', conflict: { is: 'struck-here', entry: target } };
    const there = this.#other.entries[entry.body.entry];
    if (there !== undefined && this.#held.countsAs(target, this.#effective(there))) return { is: 'held' };
    if (!this.#held.isCorrected(target)) return { is: 'take', body: this.#names.renumber(entry.body) };
    return this.#isStruckThere(entry.seq)
      ? { is: 'stays-there' }
      : { is: 'conflict', conflict: { is: 'corrected', entry: target } };
  }

  #struck(entry: EntryOf<'entry-struck'>): Decision {
    if (this.#leftThere.has(entry.body.entry)) return { is: 'stays-there' };
    const target = this.#names.entry(entry.body.entry);
    if (target === undefined) return this.#unmatched(entry, entry.body.entry);
    const strike = this.#held.strikeOf(target);
    if (strike !== undefined) return { is: 'held', as: strike };
    const struck = this.#result[target];
    if (struck?.type === 'entry-struck' && target >= this.#shared && target < this.#own.entries.length)
      return { is: 'conflict', conflict: { is: 'struck-here', entry: struck.body.entry } };
    const resting = struck === undefined ? [] : dependentsOf(struck, this.#result);
    return resting.length === 0
      ? { is: 'take', body: this.#names.renumber(entry.body) }
      : {
          is: 'conflict',
          conflict: { is: 'carries-others', entry: target, others: resting.map(({ seq }) => seq) },
        };
  }

  /** An entry whose whole content this record may have. */
  #said(entry: Entry): Decision {
    const body = this.#names.renumber(entry.body);
    const as = this.#held.entry(entry.type, body);
    return as === undefined ? { is: 'take', body } : { is: 'held', as };
  }

  /** It speaks of an entry that was not taken. */
  #unmatched(entry: Entry, of: number): Decision {
    return { is: 'conflict', conflict: { is: 'of-what-is-not-here', entryThere: entry.seq, of } };
  }

  /** The merge itself comes before what it brings. */
  #take(from: Entry, body: unknown, leaf: Sha256): void {
    const merge = this.#own.entries.length;
    const seq = merge + 1 + this.#taken.length;
    const brought = evidenceAdded(from)?.id;
    const origin: EntryOrigin = {
      merge,
      entry: from.seq,
      leaf,
      ...firstEntered(from),
      ...omitUndefined({ evidence: from.origin?.evidence ?? brought }),
    };
    const taken = entrySchema.parse({
      seq,
      at: from.at,
      by: from.by,
      origin,
      type: from.type,
      body: asJsonKeeps(body),
    });
    this.#taken.push({ entry: taken, origin });
    this.#result.push(taken);
    this.#names.same(from, taken);
  }

  #match(from: Entry, as: number | undefined): void {
    const here = as === undefined ? undefined : this.#result[as];
    if (as === undefined || here === undefined) return;
    this.#held.use(as);
    this.#names.same(from, here);
  }

  #newEvidence(body: { evidence: EvidenceId }): unknown {
    this.#names.addEvidence(body.evidence);
    return this.#names.renumber(body);
  }

  #countedThere: Map<number, Entry> | undefined;
  #counted(): Map<number, Entry> {
    this.#countedThere ??= new Map(
      countedEntries(this.#other.entries).entries.map(({ entry }) => [entry.seq, entry]),
    );
    return this.#countedThere;
  }

  /** What an entry of the other record says after its corrections. */
  #effective(entry: Entry): unknown {
    return this.#names.renumber((this.#counted().get(entry.seq) ?? entry).body);
  }

  #isStruckThere(seq: number): boolean {
    return !this.#counted().has(seq);
  }

  #isStruckHereAlone(here: number, there: number): boolean {
    return this.#held.isStruck(here) && !this.#isStruckThere(there);
  }
}

function raise(): never {
  throw new Error('a record without entries');
}

const textOf = (value: unknown) => JSON.stringify(asJsonKeeps(value));
