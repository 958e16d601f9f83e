import { boxesOf, type ChecklistBox, type ChecklistPart } from '../../compose/checklist/box.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { ReadingBody } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { RecordState } from '../../core/model/state.js';
import { requireRoom } from '../outcome-room.js';
import { parseReading, type ReadingInput } from '../record-reading.js';
import {
  approximateTime,
  BORROWED_SECONDS,
  type ChecklistContext,
  checklistContext,
  chosenWord,
  lastEventTime,
  typedEventTime,
  withUnit,
} from './context.js';
import {
  type BoxDraft,
  draft,
  firstPart,
  missingCompanion,
  patternDrafts,
  pulpDraft,
  unitCheckDraft,
} from './drafts.js';
import { exceptionDrafts } from './exception-drafts.js';
import type { ChecklistAnswers } from './file.js';
import { inspectionDrafts } from './inspection-drafts.js';
import { outcomeDrafts } from './outcome-drafts.js';
import { iceDrafts, particularDraft, recorderDrafts } from './particular-drafts.js';

/** One reading from the form, with its boxes. */
export interface ChecklistReading {
  boxes: number[];
  kind: ReadingInput['kind'];
  word: string | undefined;
  reading: ReadingBody;
}

/**
 * Readings from the answers, in the order of the boxes, each parsed like a typed reading. An answer that can't be
 * understood is a problem that names its box, and becomes no reading.
 */
export function checklistReadings(
  parts: readonly ChecklistPart[],
  answers: ChecklistAnswers,
  delivery: Delivery,
  now: Date,
  state?: RecordState,
): { readings: ChecklistReading[]; problems: Problem[] } {
  const context = checklistContext(boxesOf(parts), answers, delivery, now);
  const readings: ChecklistReading[] = [];
  const problems: Problem[] = [];
  for (const one of draftsOf(context)) {
    try {
      const { kind, word, fields } = one();
      const reading = widened(
        parseReading({ kind, word, fields: named(fields, context.name) }, delivery, now),
        fields,
      );
      if (state !== undefined)
        requireRoom(state, reading, now, { drafts: readings.map((earlier) => earlier.reading) });
      readings.push({ boxes: one.boxes, kind, word, reading });
    } catch (error) {
      if (!(error instanceof DossierError)) throw error;
      const problem = error.toProblem();
      const [box] = one.boxes;
      const field = fieldOf(problem, box);
      // A day that is none is wrong once, not with each time that it belongs to.
      if (problems.some((other) => other.where.field === field && other.message === problem.message))
        continue;
      problems.push({ ...problem, where: { ...problem.where, field } });
    }
  }
  return { readings, problems };
}

/** The faulty box, where it is known to be another than the first. */
function fieldOf({ where }: Problem, first: number | undefined): string {
  const { field } = where;
  return field !== undefined && /^box \d+$/.test(field) ? field : `box ${first ?? ''}`.trim();
}

/** A time taken from another box is less certain. */
function widened(reading: ReadingBody, { caption }: Record<string, unknown>): ReadingBody {
  if (caption === undefined || reading.time.is !== 'known') return reading;
  return { ...reading, time: { ...reading.time, uncertaintySeconds: BORROWED_SECONDS } };
}

const named = (fields: Record<string, unknown>, by: string | undefined) =>
  by === undefined || fields.by !== undefined ? fields : { ...fields, by };

/** Readings in the order of their first box; boxes that only complete another one make none of their own. */
function draftsOf(context: ChecklistContext): BoxDraft[] {
  const rows = patternDrafts(context);
  return [...context.boxes.flatMap((box) => draftOf(box, context)), ...rows].sort(
    (a, b) => (a.boxes[0] ?? 0) - (b.boxes[0] ?? 0),
  );
}

function draftOf({ number, question }: ChecklistBox, context: ChecklistContext): BoxDraft[] {
  const { answer, delivery } = context;
  const text = answer((other) => other === question)?.text ?? '';
  const degrees = (said: string) => withUnit(said, delivery.show.temperature);
  switch (question.is) {
    case 'event':
      return [
        draft([number], () => ({
          kind: 'event',
          word: question.event,
          fields: { stop: question.stop, at: typedEventTime(text, question.stop, context) },
        })),
      ];
    case 'pulp':
      return [pulpDraft(number, question, text, context)];
    case 'set-point': {
      const run = answer((other) => other.is === 'run' && other.stop === question.stop);
      const display = question.shownBy === 'display' && run !== undefined;
      return [
        draft(display ? [number, run.number] : [number], () => ({
          kind: 'set-point',
          word: degrees(text),
          fields: {
            stop: question.stop,
            shownBy: question.shownBy,
            ...approximateTime(question.stop, 'doors-closed', context),
            ...omitUndefined({ run: display ? chosenWord('run', run.text, run.number) : undefined }),
          },
        })),
      ];
    }
    case 'departure-reading': {
      const air = answer(
        (other) => other.is === 'departure-reading' && other.at === 'box-air' && other.stop === question.stop,
      );
      const fuel = answer(
        (other) => other.is === 'departure-reading' && other.at === 'fuel' && other.stop === question.stop,
      );
      if (question.at === 'fuel' && air !== undefined) return [];
      return [
        draft(
          [air, fuel].flatMap((one) => one?.number ?? []),
          () => ({
            kind: 'round',
            word: air === undefined ? undefined : degrees(air.text),
            fields: {
              stop: question.stop,
              ...approximateTime(question.stop, 'departed', context),
              ...omitUndefined({ fuel: fuel?.text }),
            },
          }),
        ),
      ];
    }
    case 'seal': {
      const state = answer((other) => other.is === 'seal-state' && other.stop === question.stop);
      return [
        draft(question.state === 'found' && state !== undefined ? [number, state.number] : [number], () => ({
          kind: 'seal',
          word: text,
          fields: {
            stop: question.stop,
            ...approximateTime(
              question.stop,
              question.state === 'applied' ? 'doors-closed' : 'doors-opened',
              context,
            ),
            state:
              question.state === 'applied'
                ? 'applied'
                : chosenWord('seal-state', state?.text ?? '', state?.number),
          },
        })),
      ];
    }
    case 'bracing': {
      if (question.part === 'note')
        return missingCompanion(
          number,
          context,
          (other) => other.is === 'bracing' && other.part === 'device' && other.stop === question.stop,
          'the number of what held the load',
        );
      const note = answer(
        (other) => other.is === 'bracing' && other.part === 'note' && other.stop === question.stop,
      );
      return [
        draft([number, ...(note === undefined ? [] : [note.number])], () => ({
          kind: 'bracing',
          word: chosenWord('bracing', text),
          fields: {
            stop: question.stop,
            ...approximateTime(question.stop, 'doors-closed', context),
            ...omitUndefined({ note: note?.text }),
          },
        })),
      ];
    }
    case 'notice': {
      const part = (name: 'with' | 'at' | 'about') =>
        answer((other) => other.is === 'notice' && other.part === name && other.stop === question.stop);
      if (question.part !== 'with')
        return missingCompanion(
          number,
          context,
          (other) => other.is === 'notice' && other.part === 'with' && other.stop === question.stop,
          'the number of who was told',
        );
      const [at, aboutWhat] = [part('at'), part('about')];
      return [
        draft([number, ...[at, aboutWhat].flatMap((one) => one?.number ?? [])], () => ({
          kind: 'contact',
          word: chosenWord('notice', text),
          fields: {
            stop: question.stop,
            ...(at === undefined
              ? approximateTime(question.stop, 'departed', context)
              : { at: typedEventTime(at.text, question.stop, context) }),
            about: aboutWhat?.text,
          },
        })),
      ];
    }
    case 'unit-check':
      return question.part === firstPart(question.count, context)
        ? [unitCheckDraft(question.count, context, degrees)]
        : [];
    case 'statement':
      return [
        draft([number], () => ({
          kind: 'statement',
          word: text,
          fields: { at: lastEventTime(context) },
        })),
      ];
    case 'outcome':
      return outcomeDrafts(number, question, text, context);
    case 'outcome-said':
      return missingCompanion(
        number,
        context,
        (other) => other.is === 'outcome' && other.part !== 'why' && other.stop === question.stop,
        'how much was taken or refused',
      );
    case 'particular':
      return [particularDraft(number, question, text, context)];
    case 'recorder':
      return recorderDrafts(number, question, text, context);
    case 'ice':
      return iceDrafts(number, question, text, context);
    case 'exception':
      return exceptionDrafts(number, question, text, context);
    case 'inspection':
      return inspectionDrafts(number, question, text, context);
    case 'seal-state':
      return missingCompanion(
        number,
        context,
        (other) => other.is === 'seal' && other.state === 'found' && other.stop === question.stop,
        'the number of the seal that was found',
      );
    case 'run':
      return missingCompanion(
        number,
        context,
        (other) => other.is === 'set-point' && other.shownBy === 'display' && other.stop === question.stop,
        'the set point that the display showed',
      );
    case 'name':
    case 'day':
    case 'thermometer':
    case 'pulp-at':
    case 'row':
      return [];
  }
}
