import type { ChecklistBox } from '../../compose/checklist/box.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { approximateTime, type ChecklistContext, chosenWord, isUnloading, withUnit } from './context.js';
import { type BoxDraft, draft, missingCompanion } from './drafts.js';

type Question = ChecklistBox['question'];
type ParticularQuestion = Extract<Question, { is: 'particular' }>;
type RecorderQuestion = Extract<Question, { is: 'recorder' }>;
type IceQuestion = Extract<Question, { is: 'ice' }>;

/** The event that a particular of a stop is dated by. */
const eventAt = (stop: string, { delivery }: ChecklistContext) =>
  isUnloading(stop, delivery) ? 'unloaded' : 'loading-ended';

/** Who loaded or counted, how many were counted, or how the unit was set. */
export function particularDraft(
  number: number,
  { of, stop }: ParticularQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft {
  return draft([number], () => ({
    kind: 'particular',
    word: of,
    fields: {
      stop,
      ...approximateTime(stop, eventAt(stop, context), context),
      ...(of === 'loaded-by' || of === 'counted-by'
        ? { who: chosenWord('who', text, number) }
        : of === 'count'
          ? { howMany: text }
          : { words: text }),
    },
  }));
}

/** A portable recorder by its number, and where it was placed. */
export function recorderDrafts(
  number: number,
  { part, stop }: RecorderQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft[] {
  const of = (name: RecorderQuestion['part']) => (other: Question) =>
    other.is === 'recorder' && other.part === name && other.stop === stop;
  if (part === 'where') return missingCompanion(number, context, of('number'), 'the number of the recorder');
  const where = context.answer(of('where'));
  return [
    draft([number, ...(where === undefined ? [] : [where.number])], () => ({
      kind: 'instrument',
      word: text,
      fields: {
        stop,
        type: 'recorder',
        ...approximateTime(stop, eventAt(stop, context), context),
        ...omitUndefined({ where: where?.text }),
      },
    })),
  ];
}

/** What the thermometer of a stop showed in ice water: before use at loading, after it at delivery. */
export function iceDrafts(
  number: number,
  { stop }: IceQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft[] {
  const isThermometer = (other: Question) => other.is === 'thermometer' && other.stop === stop;
  const thermometer = context.answer(isThermometer);
  if (thermometer === undefined)
    return missingCompanion(number, context, isThermometer, 'the name of the thermometer');
  const shown = withUnit(text, context.delivery.show.temperature);
  return [
    draft([number], () => ({
      kind: 'instrument',
      word: thermometer.text,
      fields: {
        stop,
        type: 'thermometer',
        ...(isUnloading(stop, context.delivery) ? { iceAfter: shown } : { iceBefore: shown }),
        ...approximateTime(stop, eventAt(stop, context), context),
      },
    })),
  ];
}
