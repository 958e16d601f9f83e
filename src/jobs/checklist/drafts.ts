import { CHOICES, type ChecklistBox } from '../../compose/checklist/box.js';
import { lineLetter } from '../../compose/checklist/stop-parts.js';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { ReadingInput } from '../record-reading.js';
import {
  approximateTime,
  type ChecklistContext,
  chosenWord,
  isUnloading,
  typedEventTime,
  unitCheckTime,
  withUnit,
} from './context.js';

export interface TypedReading {
  kind: ReadingInput['kind'];
  word: string | undefined;
  fields: Record<string, unknown>;
}
/** A reading to be made, with the numbers of its boxes; making it may throw DossierError. */
export type BoxDraft = (() => TypedReading) & { boxes: number[] };

export const draft = (boxes: number[], make: () => TypedReading): BoxDraft => Object.assign(make, { boxes });

type PulpQuestion = Extract<ChecklistBox['question'], { is: 'pulp' }>;

export function pulpDraft(
  number: number,
  ask: PulpQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft {
  const { answer, delivery } = context;
  const thermometer = answer((other) => other.is === 'thermometer' && other.stop === ask.stop);
  const taken = answer((other) => other.is === 'pulp-at' && other.stop === ask.stop);
  const event = isUnloading(ask.stop, delivery) ? 'doors-opened' : 'loading-began';
  return draft([number], () => ({
    kind: 'pulp',
    word: withUnit(text, delivery.show.temperature),
    fields: {
      stop: ask.stop,
      line: ask.line,
      position: ask.position,
      from: ask.from,
      ...(taken === undefined
        ? approximateTime(ask.stop, event, context)
        : { at: typedEventTime(taken.text, ask.stop, context) }),
      ...omitUndefined({
        instrument: thermometer === undefined || ask.from === 'receiver' ? undefined : thermometer.text,
      }),
    },
  }));
}

/** A box that means nothing without another: an answer in it alone is a problem, never ignored. */
export function missingCompanion(
  number: number,
  { answer }: ChecklistContext,
  needs: (question: ChecklistBox['question']) => boolean,
  what: string,
): BoxDraft[] {
  if (answer(needs) !== undefined) return [];
  return [
    draft([number], () => {
      throw new DossierError('bad-value', `it says nothing without ${what}`, { where: {} });
    }),
  ];
}

export function firstPart(count: number, { boxes }: ChecklistContext) {
  const first = boxes.find(({ question }) => question.is === 'unit-check' && question.count === count);
  return first?.question.is === 'unit-check' ? first.question.part : undefined;
}

export function unitCheckDraft(
  count: number,
  context: ChecklistContext,
  degrees: (said: string) => string,
): BoxDraft {
  const part = (name: string) =>
    context.answer((other) => other.is === 'unit-check' && other.count === count && other.part === name);
  const [at, air, set, fuel, alarm] = ['at', 'box-air', 'set-point', 'fuel', 'alarm'].map(part);
  return draft(
    [at, air, set, fuel, alarm].flatMap((one) => one?.number ?? []),
    () => {
      if (at === undefined)
        throw new DossierError('bad-value', 'a look at the unit without its time', { where: {} });
      return {
        kind: 'round',
        word: air === undefined ? undefined : degrees(air.text),
        fields: {
          at: unitCheckTime(count, context),
          ...omitUndefined({
            setPoint: set && degrees(set.text),
            fuel: fuel?.text,
            alarm: alarm?.text.split(/\s*;\s*/),
          }),
        },
      };
    },
  );
}

/** The pattern of a row and its line: `1A`. Throws DossierError for another text. */
export function parseRow(text: string, { delivery: { lines } }: Pick<ChecklistContext, 'delivery'>) {
  const [, pattern = '', letter = ''] = /^(\d)([A-Z]?)$/.exec(text.toUpperCase().replaceAll(' ', '')) ?? [];
  const line = lines.find(({ id }) => lineLetter(id, lines) === letter);
  if (pattern === '' || (letter !== '' && line === undefined))
    throw new DossierError('bad-value', `"${text}" is not a row`, {
      where: {},
      fix: `Write the number of the pattern and the letter of the line, such as 1A (${CHOICES.row.map((name, i) => `${i + 1} ${name}`).join(', ')}).`,
    });
  return { pattern: chosenWord('row', pattern), line };
}

/** The line of a letter on the form. Throws DossierError for a letter of no line. */
export function lineOfLetter(text: string, { delivery: { lines } }: Pick<ChecklistContext, 'delivery'>) {
  const letter = text.trim().toUpperCase();
  const line = lines.find(({ id }) => lineLetter(id, lines) === letter || id.toUpperCase() === letter);
  if (line !== undefined) return line;
  throw new DossierError('bad-value', `"${text}" is the letter of no line`, {
    where: {},
    fix: `Use one of: ${lines.map(({ id }) => `${lineLetter(id, lines)} ${id}`).join(', ')}; empty for all of them.`,
  });
}

/** Consecutive rows with the same answer are one reading. */
export function patternDrafts(context: ChecklistContext): BoxDraft[] {
  const runs: { from: number; to: number; stop: string; text: string; boxes: number[] }[] = [];
  for (const { number, question } of context.boxes) {
    if (question.is !== 'row') continue;
    const text = (context.answer((other) => other === question)?.text ?? '')
      .toUpperCase()
      .replaceAll(' ', '');
    const last = runs.at(-1);
    if (
      last !== undefined &&
      last.stop === question.stop &&
      last.to === question.row - 1 &&
      last.text === text
    ) {
      last.to = question.row;
      last.boxes.push(number);
    } else runs.push({ from: question.row, to: question.row, stop: question.stop, text, boxes: [number] });
  }
  return runs.map((run) =>
    draft(run.boxes, () => {
      const { pattern, line } = parseRow(run.text, context);
      return {
        kind: 'pattern',
        word: pattern,
        fields: {
          stop: run.stop,
          rows: `${run.from}-${run.to}`,
          ...approximateTime(run.stop, 'loading-ended', context),
          ...omitUndefined({ line: line?.id }),
        },
      };
    }),
  );
}
