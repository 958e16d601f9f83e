import { CHOICES, type ChecklistBox } from '../../compose/checklist/box.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { inZone } from '../../core/model/zoned-time.js';
import { dateParts } from '../../intake/time/wall-time.js';
import { typedTime } from '../typed/place-options.js';
import { parseDay } from './day.js';
import type { ChecklistAnswers } from './file.js';

/** The answers of one form, and the context for reading them. */
export interface ChecklistContext {
  boxes: readonly ChecklistBox[];
  delivery: Delivery;
  now: Date;
  /** The answer of the first box that matches. */
  answer: (
    matches: (question: ChecklistBox['question']) => boolean,
  ) => { number: number; text: string } | undefined;
  name: string | undefined;
}

/** The context of every answer: the form's boxes, the delivery, the other answers, and who filled it in. */
export function checklistContext(
  boxes: readonly ChecklistBox[],
  answers: ChecklistAnswers,
  delivery: Delivery,
  now: Date,
): ChecklistContext {
  const answer: ChecklistContext['answer'] = (matches) => {
    const box = boxes.find(({ question }) => matches(question));
    const text = box === undefined ? undefined : answers.get(box.number);
    return box === undefined || text === undefined ? undefined : { number: box.number, text };
  };
  return {
    boxes: boxes.filter(({ number }) => answers.has(number)),
    delivery,
    now,
    answer,
    name: answer((question) => question.is === 'name')?.text,
  };
}

/** The word of a choice: its printed number, or the word itself. */
export function chosenWord(list: keyof typeof CHOICES, said: string, box?: number): string {
  const options: readonly string[] = CHOICES[list];
  const [, number] = /^(\d)\b/.exec(said) ?? [];
  const found =
    number === undefined ? options.find((one) => one === said.toLowerCase()) : options[Number(number) - 1];
  if (found !== undefined) return found;
  throw new DossierError('bad-value', `"${said}" is none of the choices`, {
    where: box === undefined ? {} : { field: `box ${box}` },
    fix: `Use a number: ${options.map((name, i) => `${i + 1} ${name}`).join(', ')}.`,
  });
}

/** A number without a unit is in the form's unit. */
export function withUnit(said: string, unit: string): string {
  return /^[+\-−]?\d+(?:[.,]\d+)?$/.test(said.trim()) ? `${said.trim()} ${unit}` : said;
}

export const isUnloading = (stop: string, { stops }: Delivery) =>
  stops.find(({ id }) => id === stop)?.does === 'unload';

/**
 * A time of day on the day of its part: the day written there, else the planned one; a time with a day of its own
 * stays.
 */
function dated(clock: string, day: string | undefined, planned: string | undefined): string {
  const on = day ?? planned?.slice(0, 10);
  // What holds no figure is no time; it is told as it was written.
  const hasDay =
    !/\d/.test(clock) || /^\s*(?:today|yesterday)\b/i.test(clock) || dateParts(clock.trim()) !== undefined;
  return on === undefined || hasDay ? clock : `${on} ${clock}`;
}

export function typedEventTime(clock: string, stop: string, context: ChecklistContext): string {
  const planned = context.delivery.stops.find(({ id }) => id === stop)?.planned;
  return dated(clock, dayOfPart(stop, context), planned);
}

/** The day written for a part of the form, by its box; undefined where the box is empty. */
function dayOfPart(part: string, context: ChecklistContext): string | undefined {
  const day = context.answer((question) => question.is === 'day' && question.stop === part);
  return day === undefined ? undefined : parseDay(day.text, part, day.number, context);
}

/** Uncertainty of a time taken from another box, seconds. A convention of this project. */
export const BORROWED_SECONDS = 1800;

/**
 * Time of an answer without a time box: that of a named event at the stop, else of the last one written there; the
 * caption says so.
 */
export function approximateTime(
  stop: string,
  event: string,
  context: ChecklistContext,
): { at: string; caption: string } {
  const at =
    context.answer(
      (question) => question.is === 'event' && question.stop === stop && question.event === event,
    ) ?? lastEvent(stop, context);
  if (at !== undefined)
    return {
      at: typedEventTime(at.text, stop, context),
      caption: `no time of its own on the checklist; taken from box ${at.number}`,
    };
  throw new DossierError('bad-value', `no time was written at ${stop}`, {
    where: {},
    fix: 'Answer at least one box with a time there.',
  });
}

function lastEvent(stop: string, { boxes, answer }: ChecklistContext) {
  const last = boxes.findLast(({ question }) => question.is === 'event' && question.stop === stop);
  return last === undefined ? undefined : answer((question) => question === last.question);
}

/**
 * Time of a unit check in transit, by the clock of the first loading stop, as the form says. A time without a day
 * that is earlier than the check before is on the next day, as the form also says.
 */
export function unitCheckTime(count: number, context: ChecklistContext): string {
  const { delivery, answer, now } = context;
  const from = delivery.stops.find(({ does }) => does === 'load');
  const day = dayOfPart('transit', context);
  let before: string | undefined;
  for (let i = 1; i <= count; i += 1) {
    const clock = answer(
      (question) => question.is === 'unit-check' && question.part === 'at' && question.count === i,
    )?.text;
    if (clock === undefined) continue;
    const typed = dated(clock, day, from?.planned);
    const read = typedTime(typed, delivery, from, now, '--at');
    if (read.is !== 'known') return clock;
    let at = inZone(read.instant, read.zone);
    for (
      let days = 0;
      typed !== clock && days < MOST_DAYS && before !== undefined && at.toISO() !== null;
      days += 1
    ) {
      if (at.toMillis() >= Date.parse(before)) break;
      at = at.plus({ days: 1 });
    }
    before = at.toISO() ?? clock;
  }
  return before ?? '';
}

/** Longer than any road transport of fresh produce. */
const MOST_DAYS = 14;

/** A statement is dated after the last event that it can concern. */
export function lastEventTime(context: ChecklistContext): string {
  const last = context.boxes.findLast(({ question }) => question.is === 'event');
  if (last?.question.is !== 'event') return 'now';
  const { stop } = last.question;
  const text = context.answer((question) => question === last.question)?.text ?? '';
  const at = typedTime(
    typedEventTime(text, stop, context),
    context.delivery,
    context.delivery.stops.find(({ id }) => id === stop),
    context.now,
    '--at',
  );
  return at.is === 'known' ? (inZone(at.instant, at.zone).toISO() ?? 'now') : 'now';
}
