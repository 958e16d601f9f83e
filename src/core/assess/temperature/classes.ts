import type { ExcursionCause, ExcursionClass } from '../../model/results.js';

/** The classes in the order in which they are shown. */
export const CLASSES = [
  'normal-operation',
  'handling',
  'equipment',
  'instruction',
  'not-explained',
] as const satisfies readonly ExcursionClass[];

/** What an excursion with this cause counts as. */
export function classOf({ is }: ExcursionCause): ExcursionClass {
  switch (is) {
    case 'defrost':
    case 'pull-down':
    case 'cycling':
      return 'normal-operation';
    case 'door-open':
      return 'handling';
    case 'unit-off':
    case 'alarm':
    case 'capacity-loss':
      return 'equipment';
    case 'set-point-change':
    case 'mode-change':
      return 'instruction';
    case 'unexplained':
      return 'not-explained';
  }
}
