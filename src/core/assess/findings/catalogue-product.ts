import { ends } from './fact-shapes.js';

const freezing = {
  line: 'line',
  goods: 'text',
  channel: 'text',
  lowest: 'temperature',
  at: 'time',
  point: 'temperature',
  margin: 'difference',
  below: 'duration',
  source: 'text',
  secondary: 'flag',
  differ: 'flag',
  published: 'published',
} as const;
const product = {
  ...ends,
  shortest: 'duration',
  longest: 'duration',
  basis: 'text',
  matters: 'text',
} as const;

/**
 * Findings on published limits of the goods, on consistency of pulps and air, and on excluded values; see the
 * catalogue.
 */
export const productCatalogue = {
  'air-above-freezing-point': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 46,
    facts: freezing,
  },
  'air-below-freezing-point': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 81,
    facts: freezing,
  },
  'air-in-chilling-range': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 64,
    facts: {
      line: 'line',
      goods: 'text',
      low: 'temperature',
      high: 'temperature',
      band: 'flag',
      below: 'duration',
      belowLowest: 'duration',
      asInstructed: 'flag',
      asRecommended: 'flag',
      published: 'published',
      secondary: 'flag',
    },
  },
  'pulps-go-with-air': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 56,
    facts: product,
  },
  'pulps-warmer-than-air-allows': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 77,
    facts: { ...product, beyond: 'difference' },
  },
  'pulps-colder-than-air-allows': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 70,
    facts: { ...product, beyond: 'difference' },
  },
  'log-values-left-out': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 22,
    facts: { count: 'count', limit: 'difference', highest: 'temperature', lowest: 'temperature' },
  },
} as const;
