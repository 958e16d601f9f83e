import type { MergeConflict } from '../../core/ledger/merge/conflict.js';
import type { Problem } from '../../core/model/error.js';

/** A conflict of two records in words, with what a person can do about it. */
export function conflictProblem(conflict: MergeConflict, other: string): Problem {
  const { field, message, fix } = wordsOf(conflict, other);
  return { code: 'bad-value', message, where: { field }, fix };
}

const nothing = '(nothing)';

function wordsOf(conflict: MergeConflict, other: string): { field: string; message: string; fix: string } {
  switch (conflict.is) {
    case 'facts':
      return {
        field: `delivery.yaml, ${conflict.field}`,
        message: `here ${conflict.here ?? nothing}, there ${conflict.there ?? nothing}`,
        fix: 'The facts stay as they are here. Where the other is right, change delivery.yaml.',
      };
    case 'described':
      return {
        field: conflict.evidence,
        message: `${conflict.field}: here ${conflict.here}, there ${conflict.there}`,
        fix: `The word here stays. Where the other is right: dossier describe ${conflict.evidence} --why WHY …`,
      };
    case 'read-otherwise':
      return {
        field: conflict.evidence,
        message: 'the same log, read there with other columns, units or zone',
        fix: 'The reading here stays. Where the other is right: dossier collect the log with --map or --log-zone.',
      };
    case 'corrected':
      return {
        field: `entry ${conflict.entry}`,
        message: 'it was put right in both, and not alike',
        fix: `The value here stays. What the other says: dossier trail ${other}. Where that is right: dossier correct.`,
      };
    case 'struck-here':
      return {
        field: conflict.evidence ?? `entry ${conflict.entry}`,
        message: 'it was struck here, and counts there',
        fix: 'It stays struck. Where the other is right, strike the strike by its number in: dossier trail',
      };
    case 'carries-others':
      return {
        field: `entry ${conflict.entry}`,
        message: `it was struck there, and here carries ${conflict.others.map((seq) => `entry ${seq}`).join(', ')}`,
        fix: `It counts here. Where the other is right: dossier strike #${conflict.entry} --with-dependents --why WHY`,
      };
    case 'claim':
      return {
        field: conflict.claim,
        message: 'the same claimant and day, and not the same words',
        fix: `The claim here stays. What the other says: dossier trail ${other}. To put it right: dossier record claim received … --correct ${conflict.entry}`,
      };
    case 'of-what-is-not-here':
      return {
        field: `entry ${conflict.entryThere} there`,
        message: `it speaks of entry ${conflict.of} there, which was not taken over`,
        fix: `What it says: dossier trail ${other}`,
      };
  }
}
