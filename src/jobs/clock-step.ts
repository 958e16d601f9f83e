import { logShifts } from '../core/assess/camera-clocks/points.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { ItemOf, RecordState } from '../core/model/state.js';
import { toInstant } from '../core/model/time.js';
import type { ClockStep } from '../core/model/unit-log.js';
import { readUnitLog } from '../intake/unit-log/read.js';
import { formatSpan, toTheSecond } from '../intake/unit-log/rows/step-words.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';

/** Which part of a log whose clock was set on the way is wrong, as a person says. */
export interface ClockStepInput extends OpenDelivery {
  /** Line in the file at which the clock was set; may be left out where the log shows one such line. */
  row: number | undefined;
  /** The unit log; may be left out where one log alone shows a step. */
  log: string | undefined;
  /** The part whose times are wrong. */
  wrong: 'before' | 'after';
  /** Seconds to add to that part, where the size of the step is not right; negative takes away. */
  addSeconds: number | undefined;
  why: string;
}

/** The part of a log's clock that was put right. */
export interface RecordedClockStep {
  /** Ledger entry. */
  entry: number;
  log: string;
  step: ClockStep;
  addSeconds: number;
  said: string;
}

/**
 * Records which part of a log whose clock was set on the way is wrong. Times in the file stay as they are; what is said is
 * added where times are used, and shown there. Throws DossierError `bad-value` when no log shows such a step, or
 * several do and none is named.
 */
export async function recordClockStep(input: ClockStepInput): Promise<RecordedClockStep> {
  return withDelivery(input, true, async (record) => {
    const { item, step } = await chosenStep(record, input);
    const addSeconds = input.addSeconds ?? (input.wrong === 'after' ? -step.seconds : step.seconds);
    if (addSeconds === 0)
      throw new DossierError('bad-value', 'nothing would be added to the clock', {
        where: { field: '--add' },
        fix: 'Say how much is to be added to the wrong part, such as 2 h or -2 h.',
      });
    const wrongTime = input.wrong === 'after' ? step.to : step.from;
    const entry = record.entries.length;
    await record.append([
      {
        type: 'clock-compared',
        by: input.by,
        body: {
          clock: { is: 'unit-log', evidence: item.evidence },
          at: toInstant(wrongTime + addSeconds * 1000),
          addSeconds,
          uncertaintySeconds: Math.ceil(step.uncertaintySeconds),
          from: `line ${step.row} of the log: from ${toTheSecond(step.from)} to ${toTheSecond(step.to)}, by its own clock; ${input.why}`,
          how: 'told',
          rows: input.wrong === 'after' ? { from: step.row } : { before: step.row },
        },
      },
    ]);
    const part = input.wrong === 'after' ? `from line ${step.row} on` : `before line ${step.row}`;
    const way = addSeconds < 0 ? 'taken from' : 'added to';
    return {
      entry,
      log: item.evidence,
      step,
      addSeconds,
      said: `${formatSpan(Math.abs(addSeconds))} is ${way} the times of ${item.evidence} ${part}`,
    };
  });
}

interface StepOfLog {
  item: ItemOf<'unit-log'>;
  step: ClockStep;
}

async function chosenStep(record: DeliveryRecord, input: ClockStepInput): Promise<StepOfLog> {
  const state = record.state();
  const logs = currentLogs(state);
  const named = input.log === undefined ? logs : logs.filter(({ evidence }) => evidence === input.log);
  if (named.length === 0)
    throw new DossierError('bad-value', `there is no unit log ${input.log ?? ''}`.trim(), {
      where: { field: '--log' },
      fix: `Use one of: ${logs.map(({ evidence }) => evidence).join(', ') || 'none yet'}.`,
    });
  const all: StepOfLog[] = [];
  for (const item of named) for (const step of await stepsOf(record, state, item)) all.push({ item, step });
  const fitting = input.row === undefined ? all : all.filter(({ step }) => step.row === input.row);
  const [only, other] = fitting;
  if (only !== undefined && other === undefined) return only;
  throw new DossierError(
    'bad-value',
    only !== undefined
      ? 'clocks were set at several lines'
      : input.row === undefined
        ? 'no unit log shows that its clock was set on the way, or all was put right'
        : `line ${input.row} is none at which the clock was set`,
    {
      where: { field: 'row' },
      fix:
        all.length === 0
          ? 'A clock that was wrong all the way is compared with dossier record clock.'
          : `Name the log and the line: ${all.map(({ item, step }) => `${step.row} --log ${item.evidence}`).join(', ')}.`,
    },
  );
}

/** Steps that are not put right yet: the log is read as it counts now. */
async function stepsOf(
  record: DeliveryRecord,
  state: RecordState,
  item: ItemOf<'unit-log'>,
): Promise<readonly ClockStep[]> {
  const path = await record.originalPath(item.file.sha256);
  if (path === undefined) return [];
  const shifts = logShifts(state.clocks, item.evidence);
  const log = await readUnitLog(path, item.mapping, {
    evidence: item.evidence,
    addedSeconds: 0,
    ...omitUndefined({ shifts }),
  });
  return log.clockSteps ?? [];
}

const currentLogs = ({ evidence }: RecordState): ItemOf<'unit-log'>[] =>
  evidence.filter(
    (item): item is ItemOf<'unit-log'> => item.kind === 'unit-log' && item.replacedBy === undefined,
  );
