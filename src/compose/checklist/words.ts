import type { Labels } from '../../core/words/labels.js';
import { type BoxQuestion, CHOICES } from './box.js';

/** The label of a box, on the form and as a prompt. */
export function boxLabel(question: BoxQuestion, labels: Labels): string {
  switch (question.is) {
    case 'event':
      return labels(`event.${question.event}`);
    case 'set-point':
      return labels(`box.set-point-${question.shownBy}`);
    case 'departure-reading':
      return labels(`box.${question.at}`);
    case 'row':
      return `${labels('box.row')} ${question.row}`;
    case 'bracing':
      return labels(`box.bracing-${question.part}`);
    case 'seal':
      return labels(`box.seal-${question.state}`);
    case 'notice':
      return labels(`box.notice-${question.part}`);
    case 'outcome-said':
      return labels(`box.said-${question.part}`);
    case 'particular':
      return labels(`box.${question.of}`);
    case 'recorder':
      return labels(`box.recorder-${question.part}`);
    case 'exception':
      return labels(`box.exception-${question.part}`);
    case 'inspection':
      return labels(`box.inspection-${question.part}`);
    case 'unit-check':
      return labels(`unit-check.${question.part}`);
    case 'outcome':
      return labels(`outcome.${question.part}`);
    case 'pulp':
      return labels(`position.${question.from === 'receiver' ? 'receiver-' : ''}${question.position}`);
    default:
      return labels(`box.${question.is}`);
  }
}

/** `1 continuous · 2 start-stop`: the choices of a box with their numbers; undefined when it has none. */
export function choicesOf(question: BoxQuestion, labels: Labels): string | undefined {
  const offered = offeredChoices(question);
  if (offered === undefined) return undefined;
  return CHOICES[offered]
    .map((name, i) => `${i + 1}\u00a0${labels(`choice-${offered}.${name}`).replaceAll(' ', '\u00a0')}`)
    .join('  ');
}

function offeredChoices(question: BoxQuestion): keyof typeof CHOICES | undefined {
  switch (question.is) {
    case 'outcome':
      return question.part === 'why' ? 'outcome-why' : undefined;
    case 'outcome-said':
      return question.part === 'told' ? 'outcome-told' : question.part === 'how' ? 'outcome-how' : undefined;
    case 'notice':
      return question.part === 'with' ? 'notice' : undefined;
    case 'bracing':
      return question.part === 'device' ? 'bracing' : undefined;
    case 'particular':
      return question.of === 'loaded-by' || question.of === 'counted-by' ? 'who' : undefined;
    case 'exception':
      return question.part === 'signed' ? 'exception-signed' : undefined;
    case 'run':
    case 'row':
    case 'seal-state':
      return question.is;
    default:
      return undefined;
  }
}
