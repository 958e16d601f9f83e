import type { BoxQuestion, ChecklistBox, ChecklistRow } from './box.js';

/** Numbers the boxes from 1, in the order in which they are printed. */
export type Numbered = (question: BoxQuestion) => ChecklistBox;

/** Boxes side by side, each with its share of the width. */
export const boxes = (...list: [box: ChecklistBox, width: number][]): ChecklistRow => ({
  is: 'boxes',
  boxes: list.map(([box, width]) => ({ box, width })),
});
