import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, LineOutcome, OutcomeStatement } from '../../model/results.js';
import { amount, type FindingContext, finding, lineRef, stopRef, time, zoneOf } from './make.js';

const BY = 'outcomes at the stops';

/**
 * Findings on goods that were taken: accepted, short, over, or with an exception noted against them. Goods that were
 * only unloaded say nothing of acceptance.
 */
export function outcomeFindings(context: FindingContext): Finding[] {
  return context.outcomes.flatMap((one) => [
    ...acceptance(context, one),
    ...one.amounts.flatMap((of) => differences(context, one, of)),
    ...exceptions(context, one),
  ]);
}

function acceptance(context: FindingContext, one: LineOutcome): Finding[] {
  const said = one.statements.filter(({ outcome, rest }) => outcome === 'accepted' || rest === 'accepted');
  if (said.length === 0 || one.is === 'refused') return [];
  const part = one.amounts.find(({ accepted }) => accepted !== undefined);
  if (one.is !== 'accepted' && part?.accepted === undefined) return [];
  const taken = part?.accepted === undefined ? undefined : amount(part.accepted, part.unit, part.shipped);
  return [
    finding('accepted-at-delivery', BY, idsOf(said), {
      ...common(context, one, said),
      ...omitUndefined({ amount: taken }),
    }),
  ];
}

function differences(
  context: FindingContext,
  one: LineOutcome,
  { unit, shipped, short, over }: LineOutcome['amounts'][number],
): Finding[] {
  const noted = (reason: 'shortage' | 'overage') =>
    one.statements.filter(({ reasons, quantity }) => reasons.includes(reason) && quantity?.unit === unit);
  const found = (id: 'short-at-delivery' | 'over-at-delivery', count: number | undefined) => {
    if (count === undefined) return [];
    const said = noted(id === 'short-at-delivery' ? 'shortage' : 'overage');
    return [
      finding(id, BY, idsOf(said), {
        ...common(context, one, said),
        ...wordsOf(said),
        amount: amount(count, unit, id === 'short-at-delivery' ? shipped : undefined),
      }),
    ];
  };
  return [...found('short-at-delivery', short), ...found('over-at-delivery', over)];
}

function exceptions(context: FindingContext, one: LineOutcome): Finding[] {
  const said = one.statements.filter(
    ({ outcome, reasons }) =>
      outcome === 'accepted-with-exceptions' && !reasons.includes('shortage') && !reasons.includes('overage'),
  );
  if (said.length === 0 || one.is === 'refused') return [];
  const part = one.amounts.find(({ excepted }) => excepted !== undefined);
  const reasons = [...new Set(said.flatMap((statement) => statement.reasons))].filter(
    (reason) => reason !== 'other',
  );
  return [
    finding('exception-at-delivery', BY, idsOf(said), {
      ...common(context, one, said),
      ...wordsOf(said),
      ...omitUndefined({
        amount: part?.excepted === undefined ? undefined : amount(part.excepted, part.unit, part.shipped),
        reasons: reasons.length === 0 ? undefined : reasons.join(', '),
      }),
    }),
  ];
}

const idsOf = (said: readonly OutcomeStatement[]) => said.map(({ evidence }) => evidence);

function common({ state }: FindingContext, { line, stop }: LineOutcome, said: readonly OutcomeStatement[]) {
  const [first] = said;
  return {
    line: lineRef(line),
    stop: stopRef(stop),
    ...omitUndefined({
      at: first?.at === undefined ? undefined : time(first.at, zoneOf(state, stop)),
      saidBy: first?.saidBy,
    }),
  };
}

function wordsOf(said: readonly OutcomeStatement[]): { reason?: string } {
  const words = [...new Set(said.flatMap((one) => one.words ?? []))];
  return omitUndefined({ reason: words.length === 0 ? undefined : words.join('; ') });
}
