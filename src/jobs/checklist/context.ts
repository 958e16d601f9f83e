import { CHOICES, type ChecklistBox } from '../../compose/checklist/box.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { inZone } from '../../core/model/zoned-time.js';
import { typedTime } from '../place-options.js';
import type { ChecklistAnswers } from './file.js';

/** The answers of one form, and what is needed to read them. */
export interface ChecklistContext {
  boxes: readonly ChecklistBox[];
  delivery: Delivery;
  now: Date;
  /** The answer of the first box that asks this. */
  answer: (
    matches: (question: ChecklistBox['question']) => boolean,
  ) => { number: number; text: string } | undefined;
  name: string | undefined;
}

/** What every answer of one form is read against: its boxes, the delivery, the other answers, and who filled it in. */
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

/** The word behind a choice: its number as printed, or the word itself. */
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

/** A number without its unit is in the unit that the form prints. */
export function withUnit(said: string, unit: string): string {
  return /^[+\-−]?\d+(?:[.,]\d+)?$/.test(said.trim()) ? `${said.trim()} ${unit}` : said;
}

export const isUnloading = (stop: string, { stops }: Delivery) =>
  stops.find(({ id }) => id === stop)?.does === 'unload';

/** A time of day with the day of its part: as written, else as planned; a time with its own day is left as it is. */
function dated(clock: string, day: string | undefined, planned: string | undefined): string {
  const on = day ?? planned?.slice(0, 10);
  return on === undefined || /\d{4}-\d|\d+[-/.]\d+|[a-z]{3,}/i.test(clock) ? clock : `${on} ${clock}`;
}

export function typedEventTime(clock: string, stop: string, { answer, delivery }: ChecklistContext): string {
  const day = answer((question) => question.is === 'day' && question.stop === stop)?.text;
  return dated(clock, day, delivery.stops.find(({ id }) => id === stop)?.planned);
}

/** How far off a time can be that was taken from another box. A convention of this project. Seconds. */
export const BORROWED_SECONDS = 1800;

/**
 * Without a time box of its own, the time of a named event at the stop, else of the last that was written there;
 * the caption says so.
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
 * The time of a look on the way, by the clock of the first loading stop: the form says so. Of times without a day,
 * one that is earlier than that of the look before is of the next day: the form says that as well.
 */
export function unitCheckTime(count: number, context: ChecklistContext): string {
  const { delivery, answer, now } = context;
  const from = delivery.stops.find(({ does }) => does === 'load');
  const day = answer((question) => question.is === 'day' && question.stop === 'transit')?.text;
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

/** No way of fresh produce by road is longer. */
const MOST_DAYS = 14;

/** A statement was written after the last thing that it can speak of. */
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
