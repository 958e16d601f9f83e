import { comparedRecorders, excursionsOfClass } from './fact-shapes.js';

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
  'log-clock-step': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 78,
    facts: {
      size: 'duration',
      within: 'duration',
      forward: 'flag',
      at: 'time',
      row: 'count?',
      hidden: 'count?',
      seen: 'count?',
    },
  },
  'log-clock-step-corrected': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 21,
    facts: { size: 'duration', added: 'flag', after: 'flag', row: 'count' },
  },
  'recorder-air': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 59,
    facts: {
      share: 'share',
      coverage: 'share',
      min: 'temperature',
      max: 'temperature',
      low: 'temperature',
      high: 'temperature',
      serial: 'text?',
      owner: 'text?',
      place: 'text?',
    },
  },
  'recorders-agree': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 63,
    facts: comparedRecorders,
  },
  'recorders-disagree': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 79,
    facts: comparedRecorders,
  },
  'recorder-clock-off': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 24,
    facts: { size: 'duration', slow: 'flag', within: 'duration' },
  },
} as const;
