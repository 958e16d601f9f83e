import { boxesOf, type SheetBox, type SheetPart } from '../../compose/checklist/box.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type JudgedReading, judgeReading, type NoteInput } from '../record-reading.js';
import {
  about,
  BORROWED_SECONDS,
  type Context,
  chosen,
  contextOf,
  lastMoment,
  moment,
  withUnit,
} from './context.js';
import { type Draft, draft, firstPart, missing, patternDrafts, pulpDraft, roundDraft } from './drafts.js';
import type { Answers } from './file.js';

/** One reading that the form tells, with the boxes it rests on. */
export interface SheetReading {
  boxes: number[];
  kind: NoteInput['kind'];
  word: string | undefined;
  judged: JudgedReading;
}

/**
 * What the answers tell, in the order of the boxes, each judged like a reading typed on its own. An answer that
 * can't be understood is a problem that names its box; nothing of it becomes a reading.
 */
export function sheetReadings(
  parts: readonly SheetPart[],
  answers: Answers,
  delivery: Delivery,
  now: Date,
): { readings: SheetReading[]; problems: Problem[] } {
  const context = contextOf(boxesOf(parts), answers, delivery, now);
  const readings: SheetReading[] = [];
  const problems: Problem[] = [];
  for (const one of draftsOf(context)) {
    try {
      const { kind, word, fields } = one();
      const judged = widened(
        judgeReading({ kind, word, fields: named(fields, context.name) }, delivery, now),
        fields,
      );
      readings.push({ boxes: one.boxes, kind, word, judged });
    } catch (error) {
      if (!(error instanceof DossierError)) throw error;
      const problem = error.toProblem();
      const [box] = one.boxes;
      problems.push({ ...problem, where: { ...problem.where, field: fieldOf(problem, box) } });
    }
  }
  return { readings, problems };
}

/** The box that is at fault, where that is known better than by the first. */
function fieldOf({ where }: Problem, first: number | undefined): string {
  const { field } = where;
  return field !== undefined && /^box \d+$/.test(field) ? field : `box ${first ?? ''}`.trim();
}

/** A time taken from another box is known less well. */
function widened(judged: JudgedReading, { caption }: Record<string, unknown>): JudgedReading {
  if (caption === undefined || judged.time.is !== 'known') return judged;
  return { ...judged, time: { ...judged.time, uncertaintySeconds: BORROWED_SECONDS } };
}

const named = (fields: Record<string, unknown>, by: string | undefined) =>
  by === undefined || fields.by !== undefined ? fields : { ...fields, by };

/** Readings in the order of their first box; boxes that only help another one make none of their own. */
function draftsOf(context: Context): Draft[] {
  const rows = patternDrafts(context);
  return [...context.boxes.flatMap((box) => draftOf(box, context)), ...rows].sort(
    (a, b) => (a.boxes[0] ?? 0) - (b.boxes[0] ?? 0),
  );
}

function draftOf({ number, ask }: SheetBox, context: Context): Draft[] {
  const { answer, delivery } = context;
  const text = answer((other) => other === ask)?.text ?? '';
  const degrees = (said: string) => withUnit(said, delivery.show.temperature);
  switch (ask.is) {
    case 'event':
      return [
        draft([number], () => ({
          kind: 'event',
          word: ask.event,
          fields: { stop: ask.stop, at: moment(text, ask.stop, context) },
        })),
      ];
    case 'pulp':
      return [pulpDraft(number, ask, text, context)];
    case 'set-point': {
      const run = answer((other) => other.is === 'run' && other.stop === ask.stop);
      const display = ask.shownBy === 'display' && run !== undefined;
      return [
        draft(display ? [number, run.number] : [number], () => ({
          kind: 'set-point',
          word: degrees(text),
          fields: {
            stop: ask.stop,
            shownBy: ask.shownBy,
            ...about(ask.stop, 'doors-closed', context),
            ...omitUndefined({ run: display ? chosen('run', run.text, run.number) : undefined }),
          },
        })),
      ];
    }
    case 'look': {
      const air = answer((other) => other.is === 'look' && other.at === 'box-air' && other.stop === ask.stop);
      const fuel = answer((other) => other.is === 'look' && other.at === 'fuel' && other.stop === ask.stop);
      if (ask.at === 'fuel' && air !== undefined) return [];
      return [
        draft(
          [air, fuel].flatMap((one) => one?.number ?? []),
          () => ({
            kind: 'round',
            word: air === undefined ? undefined : degrees(air.text),
            fields: {
              stop: ask.stop,
              ...about(ask.stop, 'departed', context),
              ...omitUndefined({ fuel: fuel?.text }),
            },
          }),
        ),
      ];
    }
    case 'seal': {
      const state = answer((other) => other.is === 'seal-state' && other.stop === ask.stop);
      return [
        draft(ask.state === 'found' && state !== undefined ? [number, state.number] : [number], () => ({
          kind: 'seal',
          word: text,
          fields: {
            stop: ask.stop,
            ...about(ask.stop, ask.state === 'applied' ? 'doors-closed' : 'doors-opened', context),
            state:
              ask.state === 'applied' ? 'applied' : chosen('seal-state', state?.text ?? '', state?.number),
          },
        })),
      ];
    }
    case 'bracing': {
      if (ask.part === 'note')
        return missing(
          number,
          context,
          (other) => other.is === 'bracing' && other.part === 'device' && other.stop === ask.stop,
          'the number of what held the load',
        );
      const note = answer(
        (other) => other.is === 'bracing' && other.part === 'note' && other.stop === ask.stop,
      );
      return [
        draft([number, ...(note === undefined ? [] : [note.number])], () => ({
          kind: 'bracing',
          word: chosen('bracing', text),
          fields: {
            stop: ask.stop,
            ...about(ask.stop, 'doors-closed', context),
            ...omitUndefined({ note: note?.text }),
          },
        })),
      ];
    }
    case 'told': {
      const part = (name: 'with' | 'at' | 'about') =>
        answer((other) => other.is === 'told' && other.part === name && other.stop === ask.stop);
      if (ask.part !== 'with')
        return missing(
          number,
          context,
          (other) => other.is === 'told' && other.part === 'with' && other.stop === ask.stop,
          'the number of who was told',
        );
      const [at, aboutWhat] = [part('at'), part('about')];
      return [
        draft([number, ...[at, aboutWhat].flatMap((one) => one?.number ?? [])], () => ({
          kind: 'contact',
          word: chosen('told', text),
          fields: {
            stop: ask.stop,
            ...(at === undefined
              ? about(ask.stop, 'departed', context)
              : { at: moment(at.text, ask.stop, context) }),
            about: aboutWhat?.text,
          },
        })),
      ];
    }
    case 'round':
      return ask.part === firstPart(ask.count, context) ? [roundDraft(ask.count, context, degrees)] : [];
    case 'statement':
      return [
        draft([number], () => ({
          kind: 'statement',
          word: text,
          fields: { at: lastMoment(context) },
        })),
      ];
    case 'seal-state':
      return missing(
        number,
        context,
        (other) => other.is === 'seal' && other.state === 'found' && other.stop === ask.stop,
        'the number of the seal that was found',
      );
    case 'run':
      return missing(
        number,
        context,
        (other) => other.is === 'set-point' && other.shownBy === 'display' && other.stop === ask.stop,
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
