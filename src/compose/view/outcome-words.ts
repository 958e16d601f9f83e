import { partTakenBack } from '../../core/assess/outcomes.js';
import type { LineOutcome } from '../../core/model/results.js';
import { formatAmount } from '../../core/words/amounts.js';
import { MarkdownText } from '../../core/words/facts.js';
import type { View } from './context.js';

/**
 * What became of the goods, for the first sentence of a dossier: one clause for a whole delivery with one outcome, else
 * stop by stop, and line by line where the lines of a stop differ. Undefined when no outcome is on record.
 */
export function outcomeHeadline(view: View): MarkdownText | undefined {
  const { outcomes } = view.input.assessment;
  const stops = [...new Set(outcomes.map(({ stop }) => stop))];
  if (outcomes.every(({ is }) => is === 'not-recorded')) return undefined;
  const [first] = outcomes;
  if (first !== undefined && stops.length === 1 && sameForAll(outcomes)) {
    const whole = wholeClause(view, first, undefined);
    if (whole !== undefined) return new MarkdownText(whole);
  }
  return new MarkdownText(stops.flatMap((stop) => stopClauses(view, outcomes, stop)).join('; '));
}

/** Whether lines share one outcome that no amounts divide. */
const sameForAll = (lines: readonly LineOutcome[]): boolean =>
  new Set(lines.map(({ is }) => is)).size === 1 && lines.every(({ amounts }) => amounts.length === 0);

function stopClauses(view: View, outcomes: readonly LineOutcome[], stop: string): string[] {
  const here = outcomes.filter((one) => one.stop === stop);
  const [first] = here;
  if (first !== undefined && sameForAll(here)) {
    const whole = wholeClause(view, first, stop);
    if (whole !== undefined) return [whole];
  }
  return here.map((line) => lineClause(view, line));
}

/** `refused Tue Jul 14`, or `Omaha: accepted`; undefined for an outcome that is told line by line. */
function wholeClause(view: View, one: LineOutcome, stop: string | undefined): string | undefined {
  if (one.is === 'refused-in-part') return undefined;
  const clause = view.words.markdown('cover-whole', {
    stop: stop && view.names.stop(stop),
    ...verdictFlags(one),
    at: timeOf(view, one),
  });
  return clause.trim();
}

/** `8 of 18 pallets of strawberries refused at Denver; 10 accepted`. */
function lineClause(view: View, one: LineOutcome): string {
  const { labels, format } = view;
  const divided = one.amounts.find(({ refused, accepted, excepted }) => refused ?? accepted ?? excepted);
  const number = (count: number) => format.number(count, Number.isInteger(count) ? 0 : 2);
  const others = one.amounts.flatMap(({ unit, shipped, ...fates }) =>
    (['accepted', 'excepted', 'unloaded', 'open', 'short', 'over'] as const).flatMap((fate) => {
      const count = fates[fate];
      if (count === undefined) return [];
      // What is left beside a shortage or an overage goes without saying.
      if (fate === 'accepted' && one.is === 'accepted-with-exceptions') return [];
      if (fate === 'accepted' && one.is === 'accepted') return [];
      const isRest = unit === divided?.unit && divided.refused !== undefined && fate !== 'over';
      const amount = isRest
        ? number(count)
        : formatAmount(labels, format, {
            value: count,
            unit,
            ...(shipped === undefined || fate === 'over' ? {} : { of: shipped }),
          });
      return [`${amount} ${labels(`goods-fate.${fate}`)}`];
    }),
  );
  const refused = divided?.refused;
  const takenBack = partTakenBack(one);
  const clause = view.words.markdown('cover-line', {
    goods: view.names.line(one.line),
    stop: view.names.stop(one.stop),
    ...verdictFlags(one),
    amount:
      divided === undefined || one.is === 'refused' || (refused === undefined && one.is !== 'accepted')
        ? undefined
        : {
            is: 'amount',
            value: refused ?? divided.accepted ?? 0,
            unit: divided.unit,
            ...(divided.shipped === undefined ? {} : { of: divided.shipped }),
          },
    others: others.length === 0 ? undefined : others.join('; '),
    at: timeOf(view, one),
    allFirst: takenBack !== undefined,
    acceptedAt:
      takenBack?.at === undefined ? undefined : { is: 'time', at: takenBack.at, zone: view.zoneOf(one.stop) },
  });
  return clause.trim();
}

const verdictFlags = ({ is }: LineOutcome) => ({
  refused: is === 'refused' || is === 'refused-in-part',
  accepted: is === 'accepted',
  exceptions: is === 'accepted-with-exceptions',
  unloaded: is === 'unloaded',
});

/** The time of the statement that the outcome rests on. */
function timeOf(view: View, one: LineOutcome) {
  const refused = one.is === 'refused' || one.is === 'refused-in-part';
  const said = one.statements.find(
    ({ at, outcome, rest }) =>
      at !== undefined && (refused ? outcome === 'refused' || rest === 'refused' : outcome !== 'refused'),
  );
  return said?.at === undefined
    ? undefined
    : { is: 'time' as const, at: said.at, zone: view.zoneOf(one.stop) };
}
