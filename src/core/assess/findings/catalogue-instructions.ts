import { published, setPoints } from './fact-shapes.js';

/** Findings on set points and on what the bill of lading instructs; see the catalogue. */
export const instructionsCatalogue = {
  'set-point-agrees': {
    weighs: 'helps',
    element: 'instructions-followed',
    weight: 82,
    facts: { setPoint: 'temperature', sources: 'text', count: 'count' },
  },
  'set-point-put-right': {
    weighs: 'helps',
    element: 'instructions-followed',
    weight: 81,
    facts: {
      source: 'text',
      wrong: 'temperature',
      by: 'text',
      setPoint: 'temperature',
      rightAt: 'time',
      sources: 'text',
      count: 'count',
    },
  },
  'set-point-differs': {
    weighs: 'hurts',
    element: 'instructions-followed',
    weight: 93,
    facts: setPoints,
  },
  'set-point-told-differs': {
    weighs: 'open',
    element: 'instructions-followed',
    weight: 75,
    facts: setPoints,
  },
  'set-point-unproven': {
    weighs: 'open',
    element: 'instructions-followed',
    weight: 73,
    facts: { sources: 'text', count: 'count' },
  },
  'set-point-steady': {
    weighs: 'helps',
    element: 'instructions-followed',
    weight: 60,
    facts: { setPoint: 'temperature', custody: 'duration' },
  },
  'set-point-changed': {
    weighs: 'open',
    element: 'instructions-followed',
    weight: 76,
    facts: { changes: 'count', lowest: 'temperature', highest: 'temperature', firstChangeAt: 'time' },
  },
  'no-instruction-on-bill': {
    weighs: 'open',
    element: 'instructions-followed',
    weight: 62,
    facts: { line: 'line' },
  },
  'instruction-in-published-range': {
    weighs: 'helps',
    element: 'instructions-followed',
    weight: 30,
    facts: published,
  },
  'instruction-where-sources-differ': {
    weighs: 'open',
    element: 'instructions-followed',
    weight: 42,
    facts: { ...published, outside: 'published' },
  },
  'instruction-outside-published-range': {
    weighs: 'open',
    element: 'act-of-shipper',
    weight: 74,
    facts: { ...published, beyond: 'difference', side: 'text' },
  },
  'instruction-below-freezing': {
    weighs: 'helps',
    element: 'act-of-shipper',
    weight: 90,
    facts: {
      line: 'line',
      goods: 'text',
      instruction: 'temperature',
      recommended: 'published?',
      published: 'published',
      secondary: 'flag',
    },
  },
  'instruction-near-freezing': {
    weighs: 'open',
    element: 'act-of-shipper',
    weight: 43,
    facts: {
      line: 'line',
      instruction: 'temperature',
      freezing: 'temperature',
      colder: 'difference',
      source: 'text',
      secondary: 'flag',
    },
  },
} as const;
