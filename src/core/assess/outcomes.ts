import type { Delivery, Line } from '../model/delivery.js';
import type { EvidenceId, OutcomeReason } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { LineOutcome, OutcomeStatement } from '../model/results.js';
import type { EvidenceItem, ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import { LineTally, shippedOf } from './line-tally.js';
import type { Milestones } from './milestones.js';

/**
 * What became of each line at the stop where it is delivered, from the outcomes on record in the order of their times.
 * The events `refused` and `unloaded` are understood as outcomes of their whole stop, or of the line they name; where
 * an outcome says what of the line was refused, it holds in place of a `refused`. What is dated after `now` has not happened.
 */
export function outcomesOf(state: RecordState, milestones: Milestones): LineOutcome[] {
  return statementsByLine(state, milestones).map(({ line, statements }) => outcomeOf(line, statements));
}

/** A statement that speaks of more goods than there were left to speak of, or of none at all. */
export interface OutcomeExcess {
  line: string;
  evidence: EvidenceId;
  /** In thousandths of the statement's unit. */
  excess: number;
  counted: boolean;
  /** What was shipped of the unit, where the record says so. */
  shipped: number | undefined;
  /** The other outcomes of the line. */
  others: EvidenceId[];
}

/** Statements that exceed the goods of their line, or add nothing to what was said before. */
export function outcomeExcesses(state: RecordState, milestones: Milestones): OutcomeExcess[] {
  return statementsByLine(state, milestones).flatMap(({ line, statements }) => {
    const tally = new LineTally(line);
    return statements.flatMap((statement): OutcomeExcess[] => {
      const { excess, counted } = tally.add(statement);
      if (excess === 0 && counted) return [];
      const { evidence, quantity } = statement;
      const shipped = quantity && shippedOf(line).get(quantity.unit);
      return [
        {
          line: line.id,
          evidence,
          excess,
          counted,
          shipped: shipped === undefined ? undefined : shipped / 1000,
          others: statements.flatMap((one) => (one.evidence === evidence ? [] : [one.evidence])),
        },
      ];
    });
  });
}

function statementsByLine(
  state: RecordState,
  milestones: Milestones,
): { line: Line; statements: OutcomeStatement[] }[] {
  const said = state.evidence
    .filter(isAboutGoods)
    .filter(({ time }) => (knownMilliseconds(time) ?? 0) <= milestones.now);
  const stopOf = stopFinder(state.delivery, milestones);
  return state.delivery.lines.map((line) => {
    const about = said.filter((item) => isOf(item, line, stopOf(item)));
    const told = about.some((item) => item.kind === 'outcome' && refuses(item));
    const statements = about
      .filter((item) => !told || !isEvent(item, 'refused'))
      .flatMap(statementOf)
      .sort(byTime);
    return { line, statements };
  });
}

/** Whether an outcome is about a line: it names the line, or the whole stop where the line is delivered. */
function isOf(item: ItemOf<'outcome' | 'event'>, line: Line, stop: string | undefined): boolean {
  return (item.line === undefined || item.line === line.id) && (stop ?? line.to) === line.to;
}

/** Whether any of a line is refused still. */
export const isRefused = ({ is }: LineOutcome): boolean => is === 'refused' || is === 'refused-in-part';

/**
 * The acceptance that took back a part of a line of which everything had been refused first; undefined where the
 * refusal was of a part from the beginning.
 */
export function partTakenBack({ is, statements }: LineOutcome): OutcomeStatement | undefined {
  if (is !== 'refused-in-part') return undefined;
  const first = statements.findIndex(({ outcome }) => outcome === 'refused');
  const whole = statements[first];
  if (whole === undefined || whole.quantity !== undefined || first > 0) return undefined;
  return statements.slice(first + 1).find(({ outcome }) => outcome !== 'refused' && outcome !== 'unloaded');
}

const refuses = ({ outcome, rest }: ItemOf<'outcome'>) => outcome === 'refused' || rest === 'refused';

const isEvent = (item: EvidenceItem, event: 'refused' | 'unloaded') =>
  item.kind === 'event' && item.event === event;

const isAboutGoods = (item: EvidenceItem): item is ItemOf<'outcome' | 'event'> =>
  item.kind === 'outcome' || isEvent(item, 'refused') || isEvent(item, 'unloaded');

/** The stop of an outcome: its own, its line's, or the one where an event without a stop was put. */
function stopFinder({ lines, stops }: Delivery, { events }: Milestones) {
  return (item: EvidenceItem): string | undefined =>
    stops.find(({ id }) => id === item.place?.stop)?.id ??
    lines.find(({ id }) => id === item.line)?.to ??
    events.find(({ evidence }) => evidence === item.evidence)?.stop;
}

function statementOf(item: EvidenceItem): OutcomeStatement[] {
  const at = knownMilliseconds(item.time);
  const common = { evidence: item.evidence, ofStop: item.line === undefined, ...omitUndefined({ at }) };
  if (item.kind === 'outcome') {
    const { outcome, quantity, all, rest, reasons, words, saidBy, told, toldName, how, documents, document } =
      item;
    return [
      {
        ...common,
        outcome,
        reasons,
        documents,
        ...omitUndefined({ quantity, all, rest, words, saidBy, told, toldName, how, document }),
      },
    ];
  }
  if (item.kind !== 'event' || (item.event !== 'refused' && item.event !== 'unloaded')) return [];
  const words = item.event === 'refused' ? item.note : undefined;
  return [{ ...common, outcome: item.event, reasons: [], documents: [], ...omitUndefined({ words }) }];
}

/** Statements without a time come first: what has one holds over them. Being unloaded says nothing of acceptance. */
function byTime(a: OutcomeStatement, b: OutcomeStatement): number {
  const late = (one: OutcomeStatement) => (one.outcome === 'unloaded' ? 1 : 0);
  return late(a) - late(b) || (a.at ?? 0) - (b.at ?? 0);
}

function outcomeOf(line: Line, statements: OutcomeStatement[]): LineOutcome {
  const tally = new LineTally(line);
  for (const statement of statements) tally.add(statement);
  const is = tally.verdict();
  return {
    stop: line.to,
    line: line.id,
    is,
    amounts: tally.amounts(),
    reasons: reasonsOf(is, statements),
    statements,
  };
}

/** Reasons of what is still refused or noted; goods that were all taken in the end have none. */
function reasonsOf(is: LineOutcome['is'], statements: readonly OutcomeStatement[]): OutcomeReason[] {
  const counts = (one: OutcomeStatement): boolean => {
    if (one.outcome === 'accepted-with-exceptions') return true;
    return one.outcome === 'refused' && (is === 'refused' || is === 'refused-in-part');
  };
  return [...new Set(statements.filter(counts).flatMap(({ reasons }) => reasons))];
}
