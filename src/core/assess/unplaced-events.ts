import type { Stop } from '../model/delivery.js';
import type { EvidenceId } from '../model/evidence.js';
import type { MilestoneName } from '../model/milestone.js';

/** An event with a known time, and the stop that the record states for it. */
export interface UnplacedEvent {
  event: MilestoneName;
  at: number;
  uncertaintySeconds: number;
  evidence: EvidenceId;
  stop?: Stop;
  line?: string;
}

/** Events that show the truck at an unloading stop, stated or by their own nature. */
const SHOWS_UNLOADING: ReadonlySet<MilestoneName> = new Set([
  'arrived',
  'notice-of-arrival',
  'unloading-began',
  'unloaded',
  'refused',
  'accepted',
]);
/** Doors are opened this long before the unloading that follows, at most. Common practice, no source. */
const BEFORE_UNLOADING_MS = 12 * 3_600_000;

/**
 * Where an arrival or an opening of doors without a stop was, after the truck left its loading: at the unloading stop whose own events
 * came last before it; before the first of them it was on the way. Where no arrival is recorded it was at the last
 * unloading stop, unless the truck closed its doors or moved on after it, or unloading came much later.
 */
export function placeAfterLoading(
  item: UnplacedEvent,
  happened: readonly UnplacedEvent[],
  stops: readonly Stop[],
): Stop | 'on-the-way' | undefined {
  const last = stops.findLast(({ does }) => does === 'unload');
  const unloadingOf = (one: UnplacedEvent) =>
    one.stop?.does === 'unload'
      ? one.stop
      : one.stop === undefined && one !== item && SHOWS_UNLOADING.has(one.event)
        ? last
        : undefined;
  if (item.event !== 'arrived') {
    const before = happened.findLast((one) => one.at <= item.at && unloadingOf(one) !== undefined);
    if (before !== undefined) return before.event === 'departed' ? 'on-the-way' : unloadingOf(before);
  }
  const later = happened.filter((one) => one.at > item.at);
  const arrives = later.some((one) => one.event === 'arrived' && unloadingOf(one) !== undefined);
  if (arrives) return 'on-the-way';
  const goesOn = later.some(
    ({ event, stop }) =>
      stop?.does !== 'unload' && (event === 'doors-closed' || event === 'departed' || event === 'resumed'),
  );
  const unloading = later.find((one) => unloadingOf(one) !== undefined);
  const tooLong = unloading !== undefined && unloading.at - item.at > BEFORE_UNLOADING_MS;
  return goesOn || tooLong ? 'on-the-way' : last;
}

/** Whether doors are closed, or the truck leaves, after something that opened or stopped them on the way. */
export function isClosedAgain(
  item: UnplacedEvent,
  happened: readonly UnplacedEvent[],
  left: number,
): boolean {
  if (item.event !== 'doors-closed' && item.event !== 'departed') return false;
  return happened.some(
    ({ event, stop, at }) => event === 'doors-opened' && stop?.does !== 'load' && at > left && at < item.at,
  );
}
