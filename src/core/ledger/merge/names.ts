import { type ClaimId, claimId } from '../../model/claim.js';
import type { Entry } from '../../model/entry.js';
import { type EvidenceId, evidenceId } from '../../model/evidence.js';
import { asJsonKeeps } from '../canonical.js';
import { evidenceAdded } from '../references.js';
import { renumbered } from './renumber.js';

/** What the entries, evidence and claims of another record are called in this one. */
export class Names {
  readonly #seqs = new Map<number, number>();
  readonly #ids = new Map<EvidenceId, EvidenceId>();
  readonly #claims = new Map<ClaimId, ClaimId>();
  #lastEvidence: number;
  #lastClaim: number;

  /** @param own entries of this record, whose names are taken */
  constructor(own: readonly Entry[]) {
    this.#lastEvidence = own.reduce((last, one) => Math.max(last, numberOf(evidenceAdded(one)?.id)), 0);
    this.#lastClaim = own.reduce((last, one) => Math.max(last, numberOf(claimBegun(one))), 0);
  }

  /** An entry of the other record is this one here, and so is what it brings in. */
  same(there: Entry, here: Entry): void {
    this.#seqs.set(there.seq, here.seq);
    const [id, as] = [evidenceAdded(there)?.id, evidenceAdded(here)?.id];
    if (id !== undefined && as !== undefined) this.#ids.set(id, as);
    const [claim, known] = [claimBegun(there), claimBegun(here)];
    if (claim !== undefined && known !== undefined) this.#claims.set(claim, known);
  }

  entry(there: number): number | undefined {
    return this.#seqs.get(there);
  }

  evidence(there: EvidenceId): EvidenceId | undefined {
    return this.#ids.get(there);
  }

  /** Gives evidence of the other record the next free id. */
  addEvidence(there: EvidenceId): void {
    this.#lastEvidence += 1;
    this.#ids.set(there, evidenceId.parse(`e${this.#lastEvidence}`));
  }

  addClaim(there: ClaimId): void {
    this.#lastClaim += 1;
    this.#claims.set(there, claimId.parse(`c${this.#lastClaim}`));
  }

  sameClaim(there: ClaimId, here: ClaimId): void {
    this.#claims.set(there, here);
  }

  /** A body of the other record with the names of this one. */
  renumber(body: unknown): unknown {
    return asJsonKeeps(
      renumbered(body, {
        evidence: (id) => this.#ids.get(id) ?? id,
        claim: (id) => this.#claims.get(id) ?? id,
        entry: (seq) => this.#seqs.get(seq) ?? seq,
      }),
    );
  }
}

const numberOf = (id: string | undefined) => (id === undefined ? 0 : Number(id.slice(1)));

function claimBegun(entry: Entry): ClaimId | undefined {
  return entry.type === 'claim-noted' && entry.body.is === 'received' ? entry.body.claim : undefined;
}
