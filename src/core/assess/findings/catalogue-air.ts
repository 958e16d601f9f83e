import { excursionsOfClass } from './fact-shapes.js';

/** Findings on excursions by their class, and on the run mode; see the catalogue. */
export const airCatalogue = {
  'excursions-normal-operation': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 50,
    facts: excursionsOfClass,
  },
  'excursions-handling': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 74,
    facts: excursionsOfClass,
  },
  'excursions-equipment': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 82,
    facts: excursionsOfClass,
  },
  'excursions-instruction': {
    weighs: 'hurts',
    element: 'instructions-followed',
    weight: 84,
    facts: excursionsOfClass,
  },
  'run-mode-as-instructed': {
    weighs: 'helps',
    element: 'instructions-followed',
    weight: 46,
    facts: { asked: 'text', lasted: 'duration' },
  },
  'run-mode-differs': {
    weighs: 'hurts',
    element: 'instructions-followed',
    weight: 76,
    facts: { asked: 'text', other: 'text', lasted: 'duration', share: 'share', firstAt: 'time' },
  },
} as const;
