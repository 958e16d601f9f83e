import { changesBetween, fieldsOf } from '../../core/assess/trail/fields.js';
import type { MergeConflict } from '../../core/ledger/merge/conflict.js';
import type { Entry } from '../../core/model/entry.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';

/** Fields of delivery.yaml in which two records differ, by what each heard last. */
export function factConflicts(own: readonly Entry[], other: readonly Entry[]): MergeConflict[] {
  return changesBetween(lastFacts(own), lastFacts(other)).map(({ field, before, after }) => ({
    is: 'facts',
    field,
    ...omitUndefined({ here: before, there: after }),
  }));
}

function lastFacts(entries: readonly Entry[]) {
  const last = entries.findLast(({ type }) => type === 'delivery-facts');
  return last?.type === 'delivery-facts' ? fieldsOf(last.body.facts) : [];
}
