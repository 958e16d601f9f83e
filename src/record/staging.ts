import { asJsonKeeps } from '../core/ledger/canonical.js';
import { entryBytes, printRow } from '../core/ledger/ledger.js';
import { KnownReferences, referenceProblem } from '../core/ledger/references.js';
import { leafHash } from '../core/ledger/tree.js';
import { type Entry, type EntryOrigin, type EntryType, entry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import type { Sha256 } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Instant } from '../core/model/time.js';

/** An entry before it is checked, numbered and dated. */
export interface EntryDraft {
  type: EntryType;
  by: string;
  origin?: EntryOrigin | undefined;
  body: unknown;
}

/** An entry that is ready to be written. */
export interface StagedEntry {
  entry: Entry;
  row: Uint8Array;
  leaf: Sha256;
}

/**
 * Checks drafts against the schema and the earlier entries, and numbers them from `firstSeq`.
 * @throws DossierError 'bad-value' for the first that does not hold
 */
export function stageEntries(
  drafts: readonly EntryDraft[],
  at: Instant,
  firstSeq: number,
  known: KnownReferences,
): StagedEntry[] {
  const added = new KnownReferences(known);
  return drafts.map(({ type, by, origin, body }, i) => {
    const seq = firstSeq + i;
    const parsed = entry.safeParse({
      seq,
      at,
      by,
      type,
      ...omitUndefined({ origin }),
      body: asJsonKeeps(body),
    });
    if (!parsed.success) {
      const [issue] = parsed.error.issues;
      throw badEntry(type, issue?.message ?? '', issue?.path.join('.'));
    }
    const checked = parsed.data;
    const problem = referenceProblem(checked, added);
    if (problem !== undefined) throw badEntry(type, problem, undefined);
    added.add(checked);
    const bytes = entryBytes(checked);
    return { entry: checked, row: printRow(bytes), leaf: leafHash(bytes) };
  });
}

function badEntry(type: string, message: string, field: string | undefined): DossierError {
  return new DossierError('bad-value', `${type}: ${message}`, {
    where: omitUndefined({ field }),
    fix: 'Correct it and run the command again; nothing was recorded.',
  });
}
