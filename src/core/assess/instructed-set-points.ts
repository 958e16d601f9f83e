import type { Line } from '../model/delivery.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { SetPointStatement } from '../model/results.js';
import type { RecordState } from '../model/state.js';
import { celsius } from '../model/temperature.js';

/** Whether a statement of the bill says this value for this compartment. */
const isSameWord = (word: SetPointStatement, celsius: number, compartment: string | undefined): boolean =>
  Math.abs(word.celsius - celsius) < 1e-9 && word.compartment === compartment;

/**
 * The set points that the lines' instructions ask for, each once. One whose paper is on record and was compared with it
 * is the bill's; any other is as the carrier entered it.
 */
export function instructedSetPoints(
  lines: readonly Pick<Line, 'id' | 'instruction' | 'compartment'>[],
  { evidence }: Pick<RecordState, 'evidence'>,
): SetPointStatement[] {
  const words: SetPointStatement[] = [];
  for (const { id, instruction, compartment } of lines) {
    if (instruction === undefined) continue;
    const { run, document } = instruction;
    const value = celsius(instruction.setPoint);
    const paper = evidence.find((item) => item.kind === 'document' && item.evidence === document)?.evidence;
    const like = words.find(
      (word) => isSameWord(word, value, compartment) && word.run === run && word.evidence === paper,
    );
    if (like === undefined)
      words.push({
        source: 'bill',
        celsius: value,
        lines: [id],
        ...omitUndefined({ compartment, run, evidence: paper, asEntered: paper === undefined || undefined }),
      });
    else like.lines?.push(id);
  }
  return words;
}
