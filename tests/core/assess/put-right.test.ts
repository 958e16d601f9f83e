import { describe, expect, it } from 'vitest';
import { markPutRight } from '../../../src/core/assess/put-right.js';
import type { SetPointStatement } from '../../../src/core/model/results.js';

const DEPARTED = 100;
const bill: SetPointStatement = { source: 'bill', celsius: 2 };
const log: SetPointStatement = { source: 'log', celsius: 2 };
const said = (source: SetPointStatement['source'], celsius: number, at?: number): SetPointStatement => ({
  source,
  celsius,
  ...(at === undefined ? {} : { at }),
});

describe('a wrong set point is put right before departure', () => {
  it.each<[string, SetPointStatement[], number]>([
    [
      'by the same source, with the log in transit as instructed',
      [said('dispatcher', 5, 10), said('dispatcher', 2, 20), log],
      1,
    ],
    ['by the display', [said('dispatcher', 5, 10), said('display', 2, 90)], 1],
    [
      'two of them by one display',
      [said('dispatcher', 5, 10), said('shipper', 4, 11), said('display', 2, 90)],
      2,
    ],
    [
      'not by words alone: nothing shows what the unit was set to',
      [said('dispatcher', 5, 10), said('dispatcher', 2, 20)],
      0,
    ],
    ['not when it was stated last', [said('display', 2, 10), said('dispatcher', 5, 20), log], 0],
    [
      'not when the unit ran otherwise',
      [said('dispatcher', 5, 10), said('display', 2, 90), { ...log, celsius: 5 }],
      0,
    ],
    ['not after departure', [said('dispatcher', 5, 10), said('display', 2, 101), log], 0],
    ['not when nobody knows when it was said', [said('dispatcher', 5), said('display', 2, 90), log], 0],
    ['not by another party', [said('dispatcher', 5, 10), said('shipper', 2, 20), log], 0],
    [
      'not where lines are instructed differently',
      [said('dispatcher', 5, 10), said('display', 2, 90), said('bill', 8)],
      0,
    ],
  ])('%s', (_, words, count) => {
    const marked = markPutRight([bill, ...words], DEPARTED, 0.28);
    expect(marked.filter(({ putRight }) => putRight !== undefined)).toHaveLength(count);
  });

  it('in one compartment, and not in the other', () => {
    const of = (compartment: string, words: SetPointStatement[]) =>
      words.map((word) => ({ ...word, compartment }));
    const marked = markPutRight(
      [
        ...of('front', [bill, said('dispatcher', 5, 10), said('display', 2, 90)]),
        ...of('rear', [bill, said('dispatcher', 5, 10)]),
      ],
      DEPARTED,
      0.28,
    );
    expect(marked.filter(({ putRight }) => putRight !== undefined).map((word) => word.compartment)).toEqual([
      'front',
    ]);
  });
});
