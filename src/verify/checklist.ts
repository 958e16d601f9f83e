import type { Check } from '../model/verification.js';
import { Malformed } from './malformed.js';

/** Everything that is checked, in the order of the report: stable id and what it asks. */
export const QUESTIONS = {
  'pdf.header': 'The file is a PDF from its first byte',
  'pdf.structure': 'The file was written in one piece, with nothing hidden in it and nothing appended',
  'pdf.active-content': 'Nothing in the file runs, opens or loads anything by itself',
  'signature.present': 'There is exactly one signature',
  'signature.certification': 'The signature certifies the file and forbids every change',
  'signature.range': 'The signature covers every byte but its own',
  'signature.padding': 'The unused room of the signature holds zeros',
  'signature.structure': 'The signature is built as PAdES baseline B-B wants it',
  'signature.algorithms': 'Hash, signature algorithm and key are strong enough',
  'signature.digest': 'The covered bytes have the hash that was signed',
  'signature.certificate': 'The signature names the certificate that it came with',
  'signature.value': 'The signature was made with the key of that certificate',
  'signature.time': 'The signing time is stated and not in the future',
  'signature.time-stamp': 'A time-stamp server confirms the signing time',
  'time-stamp.trusted': 'The time-stamp server, or its issuer, is one that you trust',
  'certificate.validity': 'The certificate was valid at the claimed signing time',
  'certificate.usage': 'The certificate may be used for signing',
  'signer.trusted': 'The certificate, or its issuer, is one that you trust',
  'attachments.list': 'The attachments can be listed, each under one name',
  'manifest.present': 'The manifest is attached, complete and in its one written form',
  'attachments.complete': 'Exactly the attachments of the manifest are inside',
  'attachments.bytes': 'Every attachment has the size and hash of the manifest',
  'record.root': 'The record has the size and tree hash that its leaves give',
  'ledger.readable': 'The ledger is attached, and every line is an entry in its one written form',
  'ledger.leaves': 'Every ledger line has the leaf hash of the manifest',
  'exhibits.ledger': 'Every exhibit is the evidence that the ledger received',
  'exhibits.complete': 'Every file that the ledger received is listed as an exhibit or as left out',
  'exhibits.originals': 'Every exhibit that is a file is attached, or listed as left out',
  'delivery.same': 'Manifest, ledger and attached facts speak of the same delivery',
  'rule-set.same': 'The attached rule set is the one that was applied',
  'fingerprint.matches': 'The record begins with the one whose fingerprint you have',
  'check.finished': 'Every check came to its end',
} as const;
export type CheckId = keyof typeof QUESTIONS;

/** Collects results; a question without one counts as not checked. */
export class Checklist {
  private readonly results = new Map<CheckId, { result: Check['result']; detail: string }>();

  pass(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'passed', detail });
  }

  fail(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'failed', detail });
  }

  skip(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'not-checked', detail });
  }

  /** Fails with the list, or passes when it is empty. */
  judge(id: CheckId, wrong: readonly string[], good: string): void {
    if (wrong.length === 0) this.pass(id, good);
    else
      this.fail(
        id,
        wrong.length > 20
          ? `${wrong.slice(0, 20).join('; ')}; and ${wrong.length - 20} more`
          : wrong.join('; '),
      );
  }

  /** Runs a reader: what it refuses fails the check and gives undefined, what it returns passes it. */
  ask<T>(id: CheckId, read: () => T, good: (value: T) => string): T | undefined {
    try {
      const value = read();
      this.pass(id, good(value));
      return value;
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      this.fail(id, error.message);
      return undefined;
    }
  }

  has(result: Check['result'], id?: CheckId): boolean {
    if (id !== undefined) return this.results.get(id)?.result === result;
    return [...this.results.values()].some((one) => one.result === result);
  }

  checks(): Check[] {
    return Object.entries(QUESTIONS).map(([id, what]) => ({
      id,
      what,
      ...(this.results.get(id as CheckId) ?? {
        result: 'not-checked',
        detail: 'An earlier check failed that this one needs.',
      }),
    }));
  }
}
