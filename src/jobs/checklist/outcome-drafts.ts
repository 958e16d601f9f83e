import type { ChecklistBox, OutcomePart } from '../../compose/checklist/box.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { approximateTime, type ChecklistContext, chosenWord } from './context.js';
import { type BoxDraft, draft, missingCompanion } from './drafts.js';

const VERDICT_OF = {
  accepted: 'accepted',
  refused: 'refused',
  short: 'accepted-with-exceptions',
  damaged: 'accepted-with-exceptions',
} as const;

type OutcomeQuestion = Extract<ChecklistBox['question'], { is: 'outcome' }>;

/** What the form says of a line at its stop: how much was taken, refused, short or damaged, with the reason of its box. */
export function outcomeDrafts(
  number: number,
  { part, line, stop }: OutcomeQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft[] {
  const { answer } = context;
  const of = (name: OutcomePart) =>
    answer(
      (other) => other.is === 'outcome' && other.part === name && other.line === line && other.stop === stop,
    );
  if (part === 'why')
    return of('refused') === undefined && of('damaged') === undefined
      ? missingCompanion(number, context, () => false, 'how much was refused or damaged')
      : [];
  const why =
    part === 'refused' || (part === 'damaged' && of('refused') === undefined) ? of('why') : undefined;
  return [
    draft(why === undefined ? [number] : [number, why.number], () => ({
      kind: 'outcome',
      word: text,
      fields: {
        stop,
        line,
        outcome: VERDICT_OF[part],
        ...approximateTime(stop, part === 'refused' ? 'refused' : 'unloaded', context),
        ...saidOf(stop, context),
        ...omitUndefined({
          reason:
            part === 'short'
              ? 'shortage'
              : why === undefined
                ? part === 'damaged'
                  ? 'damage'
                  : undefined
                : chosenWord('outcome-why', why.text, why.number),
        }),
      },
    })),
  ];
}

/** Who at the receiver said so, to whom and how, where the form says it of the stop. */
function saidOf(stop: string, { answer }: ChecklistContext): Record<string, string> {
  const of = (part: 'by' | 'told' | 'told-name' | 'how') =>
    answer((other) => other.is === 'outcome-said' && other.part === part && other.stop === stop);
  const [told, how] = [of('told'), of('how')];
  return omitUndefined({
    saidBy: of('by')?.text,
    told: told === undefined ? undefined : chosenWord('outcome-told', told.text, told.number),
    toldName: of('told-name')?.text,
    how: how === undefined ? undefined : chosenWord('outcome-how', how.text, how.number),
  });
}
