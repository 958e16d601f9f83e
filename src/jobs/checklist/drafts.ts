import { CHOICES, type SheetBox } from '../../compose/checklist/box.js';
import { letterOf } from '../../compose/checklist/parts.js';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { NoteInput } from '../record-reading.js';
import { about, type Context, chosen, isUnloading, moment, wayMoment, withUnit } from './context.js';

export interface Typed {
  kind: NoteInput['kind'];
  word: string | undefined;
  fields: Record<string, unknown>;
}
/** One reading to be made, with the numbers of its boxes; making it may throw DossierError. */
export type Draft = (() => Typed) & { boxes: number[] };

export const draft = (boxes: number[], make: () => Typed): Draft => Object.assign(make, { boxes });

type PulpAsk = Extract<SheetBox['ask'], { is: 'pulp' }>;

export function pulpDraft(number: number, ask: PulpAsk, text: string, context: Context): Draft {
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
        ? about(ask.stop, event, context)
        : { at: moment(taken.text, ask.stop, context) }),
      ...omitUndefined({
        instrument: thermometer === undefined || ask.from === 'receiver' ? undefined : thermometer.text,
      }),
    },
  }));
}

/** A box that says nothing without another: an answer in it alone is a problem, not silence. */
export function missing(
  number: number,
  { answer }: Context,
  needs: (ask: SheetBox['ask']) => boolean,
  what: string,
): Draft[] {
  if (answer(needs) !== undefined) return [];
  return [
    draft([number], () => {
      throw new DossierError('bad-value', `it says nothing without ${what}`, { where: {} });
    }),
  ];
}

export function firstPart(count: number, { boxes }: Context) {
  const first = boxes.find(({ ask }) => ask.is === 'round' && ask.count === count);
  return first?.ask.is === 'round' ? first.ask.part : undefined;
}

export function roundDraft(count: number, context: Context, degrees: (said: string) => string): Draft {
  const part = (name: string) =>
    context.answer((other) => other.is === 'round' && other.count === count && other.part === name);
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
          at: wayMoment(count, context),
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

/** Rows that follow each other with the same answer are one reading. */
export function patternDrafts(context: Context): Draft[] {
  const runs: { from: number; to: number; stop: string; text: string; boxes: number[] }[] = [];
  for (const { number, ask } of context.boxes) {
    if (ask.is !== 'row') continue;
    const text = (context.answer((other) => other === ask)?.text ?? '').toUpperCase().replaceAll(' ', '');
    const last = runs.at(-1);
    if (last !== undefined && last.stop === ask.stop && last.to === ask.row - 1 && last.text === text) {
      last.to = ask.row;
      last.boxes.push(number);
    } else runs.push({ from: ask.row, to: ask.row, stop: ask.stop, text, boxes: [number] });
  }
  return runs.map((run) =>
    draft(run.boxes, () => {
      const [, pattern = '', letter = ''] = /^(\d)([A-Z]?)$/.exec(run.text) ?? [];
      const lines = context.delivery.lines;
      const line = lines.find(({ id }) => letterOf(id, lines) === letter);
      if (pattern === '' || (letter !== '' && line === undefined))
        throw new DossierError('bad-value', `"${run.text}" is not a row`, {
          where: {},
          fix: `Write the number of the pattern and the letter of the line, such as 1A (${CHOICES.row.map((name, i) => `${i + 1} ${name}`).join(', ')}).`,
        });
      return {
        kind: 'pattern',
        word: chosen('row', pattern),
        fields: {
          stop: run.stop,
          rows: `${run.from}-${run.to}`,
          ...about(run.stop, 'loading-ended', context),
          ...omitUndefined({ line: line?.id }),
        },
      };
    }),
  );
}
