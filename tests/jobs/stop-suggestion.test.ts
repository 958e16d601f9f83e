import { describe, expect, it } from 'vitest';
import type { EventName } from '../../src/core/model/evidence.js';
import { evidenceId } from '../../src/core/model/evidence.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import type { RecordState } from '../../src/core/model/state.js';
import { toInstant, zone } from '../../src/core/model/time.js';
import { suggestStop } from '../../src/jobs/typed/stop-suggestion.js';
import { delivery, someHash } from '../intake/a-delivery.js';

const HOUR = 3_600_000;

/** A record of events, each with its hour and stop. */
function stateOf(events: readonly [hour: number, event: EventName, stop?: string][]): RecordState {
  return {
    delivery,
    deliveryHash: someHash,
    evidence: events.map(([hour, event, stop], i) => ({
      kind: 'event',
      evidence: evidenceId.parse(`e${i + 1}`),
      event,
      time: {
        is: 'known',
        instant: toInstant(hour * HOUR),
        zone: zone.parse('UTC'),
        basis: 'typed',
        uncertaintySeconds: 60,
      },
      ...omitUndefined({ place: stop === undefined ? undefined : { stop } }),
      source: { is: 'typed' },
      seq: i + 1,
      enteredAt: toInstant(0),
      enteredBy: 'Test',
      describedBy: [],
      correctedBy: [],
    })),
    notCounted: [],
    corrections: [],
    strikes: [],
    merges: [],
    clocks: [],
    published: [],
    timeStamps: [],
    dossiers: [],
    claims: [],
    size: events.length + 1,
    root: someHash,
  };
}

describe('where the truck seems to stand', () => {
  it.each<[string, [number, EventName, string?][], string | undefined]>([
    ['nothing happened', [], undefined],
    ['arrived', [[1, 'arrived', 'load-1']], 'load-1'],
    [
      'arrived, whatever the order of entry',
      [
        [3, 'arrived', 'drop-1'],
        [1, 'arrived', 'load-1'],
        [2, 'departed', 'load-1'],
      ],
      'drop-1',
    ],
    [
      'departed',
      [
        [1, 'arrived', 'load-1'],
        [2, 'departed', 'load-1'],
      ],
      undefined,
    ],
    [
      'departed, the stop not said',
      [
        [1, 'arrived', 'load-1'],
        [2, 'departed'],
      ],
      undefined,
    ],
    ['arrived after now', [[9, 'arrived', 'load-1']], undefined],
  ])('%s', (_, events, stop) => expect(suggestStop(stateOf(events), 5 * HOUR)?.stop).toBe(stop));
});
