import { boxesOf, type ChecklistBox, type ChecklistPart } from '../../compose/checklist/box.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import { inspectionBody } from '../typed/inspection-options.js';
import { typedTime } from '../typed/place-options.js';
import { readingBody } from '../typed/reading-options.js';
import { type ChecklistContext, checklistContext, chosenWord, typedEventTime, withUnit } from './context.js';
import { parseDay } from './day.js';
import { lineOfLetter, parseRow } from './drafts.js';
import type { ChecklistAnswers } from './file.js';

/**
 * What is wrong with one answer by itself, before the boxes that belong to it are filled in; undefined when nothing is.
 * What it needs beside it is seen when all are there.
 */
export function checkBox(
  box: ChecklistBox,
  text: string,
  answers: ChecklistAnswers,
  parts: readonly ChecklistPart[],
  delivery: Delivery,
  now: Date,
): Problem | undefined {
  const all = new Map([...answers, [box.number, text]]);
  try {
    parseAnswer(box, text, checklistContext(boxesOf(parts), all, delivery, now));
    return undefined;
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    const problem = error.toProblem();
    return {
      ...problem,
      where: { field: problem.where.field?.startsWith('box ') ? problem.where.field : `box ${box.number}` },
    };
  }
}

/** Throws DossierError for an answer that its box cannot hold. */
function parseAnswer({ number, question }: ChecklistBox, text: string, context: ChecklistContext): void {
  const { delivery, now } = context;
  const degrees = () => void readingBody('pulp', withUnit(text, delivery.show.temperature), {});
  const timeAt = (stopId: string) => {
    const stop = delivery.stops.find(({ id }) => id === stopId);
    typedTime(typedEventTime(text, stopId, context), delivery, stop, now, '--at');
  };
  const fuel = () => void readingBody('round', undefined, { fuel: text });
  switch (question.is) {
    case 'day':
      parseDay(text, question.stop, number, context);
      return;
    case 'event':
    case 'pulp-at':
      timeAt(question.stop);
      return;
    case 'pulp':
    case 'set-point':
      degrees();
      return;
    case 'departure-reading':
      if (question.at === 'fuel') fuel();
      else degrees();
      return;
    case 'run':
      chosenWord('run', text);
      return;
    case 'seal-state':
      chosenWord('seal-state', text);
      return;
    case 'bracing':
      if (question.part === 'device') chosenWord('bracing', text);
      return;
    case 'notice':
      if (question.part === 'with') chosenWord('notice', text);
      if (question.part === 'at') timeAt(question.stop);
      return;
    case 'unit-check':
      if (question.part === 'at') timeAt(delivery.stops.find(({ does }) => does === 'load')?.id ?? '');
      else if (question.part === 'fuel') fuel();
      else if (question.part !== 'alarm') degrees();
      return;
    case 'row':
      parseRow(text, context);
      return;
    case 'particular':
      if (question.of === 'loaded-by' || question.of === 'counted-by') chosenWord('who', text);
      if (question.of === 'count') readingBody('particular', 'count', { howMany: text });
      return;
    case 'ice':
      degrees();
      return;
    case 'recorder':
      return;
    case 'exception':
      if (question.part === 'signed') chosenWord('exception-signed', text);
      if (question.part === 'line') lineOfLetter(text, context);
      return;
    case 'outcome-said':
      if (question.part === 'told') chosenWord('outcome-told', text);
      if (question.part === 'how') chosenWord('outcome-how', text);
      return;
    case 'inspection':
      if (question.part === 'line') lineOfLetter(text, context);
      if (question.part === 'at' || question.part === 'requested-at') timeAt(question.stop);
      if (question.part === 'low' || question.part === 'high') degrees();
      if (question.part === 'defects') inspectionBody(undefined, { defect: text });
      if (question.part === 'count') inspectionBody(undefined, { count: text });
      if (question.part === 'samples') inspectionBody(undefined, { samples: text });
      return;
    case 'seal':
    case 'name':
    case 'thermometer':
    case 'statement':
      return;
  }
}
