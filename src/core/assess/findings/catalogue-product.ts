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
  asInstructed: 'flag',
  published: 'published',
} as const;
const counterfactual = {
  line: 'line',
  places: 'text',
  cold: 'flag',
  loadMin: 'temperature',
  loadMax: 'temperature',
  deliveryMin: 'temperature',
  deliveryMax: 'temperature',
  instructedLow: 'temperature',
  instructedHigh: 'temperature',
  measuredLow: 'temperature',
  measuredHigh: 'temperature',
  airAlone: 'share',
  otherPlaces: 'flag',
  shortest: 'duration',
  longest: 'duration',
  basis: 'text',
  draws: 'count',
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
  'arrival-supports-origin': {
    weighs: 'helps',
    element: 'act-of-shipper',
    weight: 95,
    facts: counterfactual,
  },
  'arrival-supports-transit': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 94,
    facts: counterfactual,
  },
  'arrival-does-not-discriminate': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 56,
    facts: counterfactual,
  },
  'arrival-fits-neither': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 77,
    facts: counterfactual,
  },
  'log-values-left-out': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 22,
    facts: { count: 'count', limit: 'difference', highest: 'temperature', lowest: 'temperature' },
  },
} as const;
