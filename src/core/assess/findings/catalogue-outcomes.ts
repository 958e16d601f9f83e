/** Findings on what became of the goods at their stops; see the catalogue. */
export const outcomesCatalogue = {
  // The receiver's act: it says nothing of the goods until somebody looked at them.
  refused: {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 98,
    facts: {
      at: 'time?',
      stop: 'stop?',
      /** A line; absent: everything for the stop. */
      line: 'line?',
      amount: 'amount?',
      /** Taken in the end, of the same line. */
      accepted: 'amount?',
      /** Everything of the line was refused before a part was taken. */
      allFirst: 'flag?',
      acceptedAt: 'time?',
      /** Goods for other stops were not refused. */
      ofOneStop: 'flag?',
      reasons: 'text?',
      reason: 'text?',
      saidBy: 'text?',
      sinceArrival: 'duration?',
      notices: 'count',
    },
  },
  'refused-no-written-notice': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 69,
    facts: { stop: 'stop?' },
  },
  'refused-not-inspected': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 67,
    facts: { requested: 'flag', stop: 'stop?' },
  },
  'accepted-at-delivery': {
    weighs: 'helps',
    element: 'condition-at-delivery',
    weight: 86,
    facts: { line: 'line', stop: 'stop', amount: 'amount?', at: 'time?', saidBy: 'text?' },
  },
  'short-at-delivery': {
    weighs: 'hurts',
    element: 'condition-at-delivery',
    weight: 93,
    facts: { line: 'line', stop: 'stop', amount: 'amount', at: 'time?', reason: 'text?', saidBy: 'text?' },
  },
  'over-at-delivery': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 78,
    facts: { line: 'line', stop: 'stop', amount: 'amount', at: 'time?', reason: 'text?', saidBy: 'text?' },
  },
  'exception-at-delivery': {
    weighs: 'hurts',
    element: 'condition-at-delivery',
    weight: 90,
    facts: {
      line: 'line',
      stop: 'stop',
      amount: 'amount?',
      at: 'time?',
      reasons: 'text?',
      reason: 'text?',
      saidBy: 'text?',
    },
  },
} as const;
