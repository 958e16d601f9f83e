import type { ChecklistBox } from '../../compose/checklist/box.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { approximateTime, type ChecklistContext, chosenWord } from './context.js';
import { type BoxDraft, draft, lineOfLetter, missingCompanion } from './drafts.js';

const SIGNED_BY: Readonly<Record<string, readonly string[]>> = {
  shipper: ['shipper'],
  driver: ['driver'],
  'shipper-and-driver': ['shipper', 'driver'],
  nobody: [],
};

type ExceptionQuestion = Extract<ChecklistBox['question'], { is: 'exception' }>;

/** An exception that the form says was written on the bill of lading, with its line and who signed it. */
export function exceptionDrafts(
  number: number,
  { part, stop }: ExceptionQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft[] {
  const of = (name: ExceptionQuestion['part']) => (other: ChecklistBox['question']) =>
    other.is === 'exception' && other.part === name && other.stop === stop;
  if (part !== 'words') return missingCompanion(number, context, of('words'), 'the words on the bill');
  const [line, signed] = [context.answer(of('line')), context.answer(of('signed'))];
  return [
    draft([number, ...[line, signed].flatMap((one) => one?.number ?? [])], () => ({
      kind: 'exception',
      word: undefined,
      fields: {
        stop,
        words: text,
        on: 'bill of lading',
        ...approximateTime(stop, 'departed', context),
        ...omitUndefined({
          line: line === undefined ? undefined : lineOfLetter(line.text, context).id,
          signedBy:
            signed === undefined
              ? undefined
              : SIGNED_BY[chosenWord('exception-signed', signed.text, signed.number)],
        }),
      },
    })),
  ];
}
