import { shocks } from './fact-shapes.js';

/** Findings on rough handling, pallets, doors and axle weights; see the catalogue. */
export const handlingCatalogue = {
  'shocks-over-threshold': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 87,
    facts: shocks,
  },
  'shocks-below-threshold': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 41,
    facts: shocks,
  },
  'shocks-recorded': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 51,
    facts: shocks,
  },
  'shocks-outside-transit': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 33,
    facts: { before: 'count', after: 'count' },
  },
  'hard-braking-recorded': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 52,
    facts: { count: 'count', what: 'text', strongest: 'acceleration?', at: 'time?' },
  },
  'pallets-not-standing': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 88,
    facts: {
      state: 'text',
      count: 'count?',
      rows: 'text?',
      position: 'text?',
      stop: 'stop?',
      photos: 'count',
    },
  },
  'doors-open-between-stops': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 60,
    facts: { count: 'count', total: 'duration', at: 'time?' },
  },
  'doors-open-at-stop': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 39,
    facts: { stop: 'stop', noted: 'duration?', logged: 'duration?' },
  },
  'axle-over-limit': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 53,
    facts: {
      group: 'text',
      stop: 'stop',
      weight: 'weight',
      limit: 'weight',
      over: 'weight',
      scale: 'flag',
    },
  },
  'axles-within-limits': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 31,
    facts: { stop: 'stop', groups: 'text' },
  },
  'axle-estimate-differs': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 36,
    facts: { group: 'text', stop: 'stop', scale: 'weight', estimate: 'weight' },
  },
} as const;
