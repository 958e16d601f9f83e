import type { Problem } from '../core/model/error.js';
import type { BoxCheck, ChecklistQuestion } from '../jobs/checklist/enter.js';
import { escapeControls } from './output.js';

/** Asks one line. */
export type Ask = (question: string, fallback?: string) => Promise<string>;

export interface Sitting {
  /** Answers so far; what is typed goes in here. */
  answers: Map<number, string>;
  check: BoxCheck;
  ask: Ask;
  /** Tells of a problem, or what can be typed. */
  tell(what: Problem | string): void;
  save(answers: ReadonlyMap<number, string>): Promise<void>;
  /** Whether more lines were pasted than were asked for: they belong to the boxes that follow. */
  pasted(): boolean;
  /** A box was answered again with the answer that it had. */
  repeated(number: number): void;
}

const HOW =
  'Enter keeps what stands in brackets, or leaves the box empty; - empties it; b goes back, s skips the rest of this part, q saves and stops, ? says this again.';

/** Seconds that a box takes a person who has the form before him: own judgement, no source. */
const SECONDS = 6;

/** What the form is and how long it takes. */
export function opening(boxes: number, answered: number): string[] {
  const minutes = Math.max(1, Math.round(((boxes - answered) * SECONDS) / 60));
  return [
    `The dock form, box by box: ${boxes} boxes, ${answered === 0 ? 'none filled in yet' : `${answered} filled in before`}, about ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}. Nothing is recorded before the end.`,
    HOW,
  ];
}

/**
 * Prompts for boxes in turn; each answer is checked as it is typed and saved when it can be understood.
 * @param begin index of the first box asked about
 */
export async function promptForBoxes(
  boxes: readonly ChecklistQuestion[],
  begin: number,
  sitting: Sitting,
): Promise<'answered' | 'stopped'> {
  const { answers, ask, tell, check } = sitting;
  for (let at = begin; at < boxes.length; ) {
    const box = boxes[at];
    if (box === undefined) break;
    const { number, words } = box;
    const before = answers.get(number);
    const typed = (await ask(`${number} ${escapeControls(words)}`, before)).trim();
    switch (typed.toLowerCase()) {
      case 'q':
        return 'stopped';
      case '?':
        tell(HOW);
        continue;
      case 'b':
        at = Math.max(0, at - 1);
        continue;
      case 's':
        at = nextPart(boxes, at);
        continue;
      case '':
      case '-':
        if (answers.delete(number)) await sitting.save(answers);
        at = box.opens === true ? nextPart(boxes, at) : at + 1;
        continue;
    }
    const problem = check(number, typed, answers);
    // Asked again at once, the box would take the line of the next; what is wrong is asked at the end.
    if (problem !== undefined && !sitting.pasted()) {
      tell(problem);
      // What is wrong may be the day above it.
      const other = boxes.findIndex((one) => problem.where.field === `box ${one.number}`);
      if (other >= 0) at = other;
      continue;
    }
    if (typed === before) sitting.repeated(number);
    else {
      answers.set(number, typed);
      await sitting.save(answers);
    }
    at += 1;
  }
  return 'answered';
}

function nextPart(boxes: readonly ChecklistQuestion[], at: number): number {
  const part = boxes[at]?.part;
  const next = boxes.findIndex((box, i) => i > at && box.part !== part);
  return next < 0 ? boxes.length : next;
}
