import type { Stop } from '../../core/model/delivery.js';
import type { RecordState } from '../../core/model/state.js';
import { knownMilliseconds } from '../../core/model/time.js';
import { type OpenDelivery, withDelivery } from '../delivery.js';

export interface StopSuggestion {
  stop: string;
  /** The basis of the suggestion, in words. */
  because: string;
}

/**
 * Where the truck seems to be at an instant, as a suggestion and never assumed: the stop where it arrived last and
 * has not departed, or the only stop.
 * @param at milliseconds UTC
 */
export function suggestStop(state: RecordState, at: number): StopSuggestion | undefined {
  let here: { stop: Stop; because: string } | undefined;
  const moves = state.evidence
    .flatMap((item) => {
      const time = item.kind === 'event' ? knownMilliseconds(item.time) : undefined;
      return item.kind === 'event' && time !== undefined && time <= at ? [{ item, time }] : [];
    })
    .sort((a, b) => a.time - b.time);
  for (const { item } of moves) {
    const stop = state.delivery.stops.find(({ id }) => id === item.place?.stop);
    if (item.event === 'departed') {
      if (stop === undefined || stop === here?.stop) here = undefined;
    } else if (item.event === 'arrived' && stop !== undefined)
      here = { stop, because: `arrived (${item.evidence}) and not departed` };
  }
  return here === undefined ? undefined : { stop: here.stop.id, because: here.because };
}

/** The stops of a delivery, and the one where the truck seems to be now. */
export async function stopChoices(
  open: OpenDelivery,
): Promise<{ stops: string[]; likely: StopSuggestion | undefined }> {
  return withDelivery(open, false, async (record) => {
    const state = record.state();
    return {
      stops: state.delivery.stops.map(({ id }) => id),
      likely: suggestStop(state, open.now().getTime()),
    };
  });
}
