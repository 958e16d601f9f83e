import type { Labels } from '../../core/words/labels.js';
import { type BoxQuestion, CHOICES } from './box.js';

/** What stands over a box, or what is asked for on a terminal. */
export function boxLabel(ask: BoxQuestion, labels: Labels): string {
  switch (ask.is) {
    case 'event':
      return labels(`event.${ask.event}`);
    case 'set-point':
      return labels(`box.set-point-${ask.shownBy}`);
    case 'departure-reading':
      return labels(`box.${ask.at}`);
    case 'row':
      return `${labels('box.row')} ${ask.row}`;
    case 'bracing':
      return labels(`box.bracing-${ask.part}`);
    case 'seal':
      return labels(`box.seal-${ask.state}`);
    case 'notice':
      return labels(`box.notice-${ask.part}`);
    case 'unit-check':
      return labels(`unit-check.${ask.part}`);
    case 'pulp':
      return labels(`position.${ask.from === 'receiver' ? 'receiver-' : ''}${ask.position}`);
    default:
      return labels(`box.${ask.is}`);
  }
}

/** `1 continuous · 2 start-stop`: the choices of a box with the numbers to write; undefined when it has none. */
export function choicesOf(ask: BoxQuestion, labels: Labels): string | undefined {
  const offered =
    ask.is === 'notice'
      ? ask.part === 'with'
        ? 'notice'
        : undefined
      : ask.is === 'bracing'
        ? ask.part === 'device'
          ? 'bracing'
          : undefined
        : ask.is === 'run' || ask.is === 'row' || ask.is === 'seal-state'
          ? ask.is
          : undefined;
  if (offered === undefined) return undefined;
  return CHOICES[offered]
    .map((name, i) => `${i + 1}\u00a0${labels(`choice-${offered}.${name}`).replaceAll(' ', '\u00a0')}`)
    .join('  ');
}
