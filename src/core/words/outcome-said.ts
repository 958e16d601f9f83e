import type { Signatory } from '../model/evidence.js';
import type { LineOutcome, OutcomeStatement } from '../model/results.js';
import type { Labels } from './labels.js';

/** Why goods were refused or excepted, then the words of those who said so: `decay; “soft, mold on top”`. */
export function outcomeReasons(
  labels: Labels,
  { reasons, statements }: Pick<LineOutcome, 'reasons' | 'statements'>,
): string {
  const words = [...new Set(statements.flatMap((one) => one.words ?? []))].map((said) => `“${said}”`);
  return [...reasons.map((reason) => labels(`outcome-reason.${reason}`)), ...words].join('; ');
}

/** Who said it, to whom and how: a word to the driver is no notice to the consignor. */
export function outcomeSayers(labels: Labels, statements: readonly OutcomeStatement[]): string {
  const said = statements.flatMap(({ saidBy, told, toldName, how, document }) => [
    ...(saidBy === undefined ? [] : [saidBy]),
    ...(told === undefined && toldName === undefined
      ? []
      : [
          `${labels('goods-outcome.told')} ${[told === undefined ? undefined : labels(`outcome-told.${told}`), toldName].filter((one) => one !== undefined).join(', ')}`,
        ]),
    ...(how === undefined ? [] : [labels(`outcome-how.${how}`)]),
    ...(document === undefined ? [] : [document]),
  ]);
  return [...new Set(said)].join('; ');
}

/** `the shipper (J. Ortiz)`: who wrote or signed something, and for whom. */
export function signatoryWords(labels: Labels, { party, name }: Signatory): string {
  const whom = labels(`signing-party.${party}`);
  return name === undefined ? whom : `${whom} (${name})`;
}
