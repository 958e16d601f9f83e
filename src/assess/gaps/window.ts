import type { Line } from '../../model/delivery.js';
import type { NearMiss } from '../../model/results.js';
import type { Moment } from '../../model/rule-set.js';
import type { EvidenceItem } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { type Known, notBefore, pastBy, type Side, sideOf, stopsOf } from '../moments.js';
import type { RuleContext } from './context.js';

/** Where and when evidence must lie to count. */
export interface Window {
  at?: 'loading-stop' | 'unloading-stop' | undefined;
  after?: Moment | undefined;
  before?: Moment | undefined;
}

export const sideAt = (at: Window['at']): Side | undefined =>
  at === undefined ? undefined : at === 'loading-stop' ? 'load' : 'unload';

/** A window's ends in time for evidence at one stop. An end that nothing in the record shows is open. */
export interface Ends {
  after?: Known;
  before?: Known;
  /** Which events stand in for ones that are not recorded. */
  notes: string[];
}

/**
 * The ends of a window as the record knows them. The moments are those of the evidence's own stop where it is of
 * the right side, else of the line's stop, else of the first stop of that side (after) or the last (before). A moment
 * that is not recorded is bounded by its nearest recorded neighbour in the course of the delivery.
 */
export function endsOf(
  context: RuleContext,
  window: Window,
  stop: string | undefined,
  line: Line | undefined,
): Ends {
  const { moments, stage } = context;
  const stopFor = (moment: Moment, end: 'after' | 'before') => {
    const side = sideOf(moment, sideAt(window.at), stage);
    const stops = stopsOf(moments, side);
    const wanted = stop ?? (side === 'load' ? line?.from : line?.to);
    const own = stops.find((one) => one.id === wanted);
    const ofLine = stops.find((one) => one.id === (side === 'load' ? line?.from : line?.to));
    return (own ?? ofLine ?? (end === 'after' ? stops[0] : stops.at(-1)))?.id;
  };
  const find = (moment: Moment | undefined, end: 'after' | 'before') => {
    if (moment === undefined) return undefined;
    const at = stopFor(moment, end);
    if (at === undefined) return undefined;
    return end === 'after' ? notBefore(moments, at, moment) : pastBy(moments, at, moment);
  };
  const after = find(window.after, 'after');
  const before = find(window.before, 'before');
  const notes = [
    [window.after, after],
    [window.before, before],
  ] as const;
  return {
    ...(after === undefined ? {} : { after }),
    ...(before === undefined ? {} : { before }),
    notes: notes.flatMap(([moment, known]) => (moment === undefined ? [] : standInNote(moment, known))),
  };
}

/** Says when a neighbouring event had to stand in for a moment that is not recorded. */
export function standInNote(moment: Moment, known: Known | undefined): string[] {
  if (known?.standIn === undefined) return [];
  return [`the time of "${say(moment)}" is not recorded, "${say(known.standIn)}" stands in for it`];
}

/** Why evidence does not lie inside the ends; undefined when it does. Stated uncertainties are granted. */
export function outsideOf(ends: Ends, item: EvidenceItem): NearMiss['why'] | undefined {
  if (ends.after === undefined && ends.before === undefined) return undefined;
  const at = knownMilliseconds(item.time);
  if (at === undefined || item.time.is !== 'known') return 'no-time';
  const own = item.time.uncertaintySeconds;
  const room = (end: Known) => (own + end.uncertaintySeconds) * 1000;
  if (ends.after !== undefined && at + room(ends.after) < ends.after.at) return 'too-early';
  if (ends.before !== undefined && at - room(ends.before) > ends.before.at) return 'too-late';
  return undefined;
}

/** An identifier of the model as words. */
export const say = (name: string) => name.replaceAll('-', ' ').replace('pre trip', 'pre-trip');
