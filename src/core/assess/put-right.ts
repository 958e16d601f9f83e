import { omitUndefined } from '../model/omit-undefined.js';
import type { SetPointStatement } from '../model/results.js';

/**
 * Marks statements of a wrong set point that were put right before departure: the same source, or the unit's display,
 * stated the instructed set point later and before the truck left; and nothing else of the compartment, the log in
 * transit included, says otherwise. A conflict that was over before the goods moved is none of the carriage.
 * @param same values this close are equal, K
 */
export function markPutRight(
  words: readonly SetPointStatement[],
  departedAt: number | undefined,
  same: number,
): SetPointStatement[] {
  if (departedAt === undefined) return [...words];
  const compartments = new Set(words.map(({ compartment }) => compartment));
  const marked = new Map<SetPointStatement, NonNullable<SetPointStatement['putRight']>>();
  for (const compartment of compartments) {
    const here = words.filter((word) => word.compartment === compartment);
    for (const [word, by] of putRightIn(here, departedAt, same)) marked.set(word, by);
  }
  return words.map((word) => ({ ...word, ...omitUndefined({ putRight: marked.get(word) }) }));
}

type PutRight = NonNullable<SetPointStatement['putRight']>;

function putRightIn(
  words: readonly SetPointStatement[],
  departedAt: number,
  same: number,
): [SetPointStatement, PutRight][] {
  const bills = words.filter(({ source }) => source === 'bill');
  const [bill] = bills;
  if (bill === undefined) return [];
  const agrees = ({ celsius }: SetPointStatement) => Math.abs(celsius - bill.celsius) <= same;
  // Lines with several instructions in one compartment have no one set point to be put right to.
  if (!bills.every(agrees)) return [];
  const found = words.flatMap((word): [SetPointStatement, PutRight][] => {
    const { at } = word;
    if (agrees(word) || at === undefined || at > departedAt) return [];
    const later = words.find(
      (other) =>
        (other.source === word.source || other.source === 'display') &&
        other.at !== undefined &&
        other.at > at &&
        other.at <= departedAt &&
        agrees(other),
    );
    if (later?.at === undefined) return [];
    const { source, evidence } = later;
    return [[word, { at: later.at, source, ...omitUndefined({ evidence }) }]];
  });
  const wrong = new Set(found.map(([word]) => word));
  const rest = words.filter((word) => !wrong.has(word));
  const ofUnit = rest.some(({ source }) => source === 'display' || source === 'log');
  return ofUnit && rest.every(agrees) ? found : [];
}
