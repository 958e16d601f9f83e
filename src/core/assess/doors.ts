import { omitUndefined } from '../model/omit-undefined.js';
import type { LoggedOpening, NotedOpening, StopDoors } from '../model/results.js';
import type { UnitLog } from '../model/unit-log.js';
import type { MilestoneEvent, Milestones } from './milestones.js';
import { gapLimit } from './temperature/sampling-interval.js';
import { loggedStates } from './temperature/states.js';

/** The clock of a log and that of a person may be this far apart, milliseconds. Convention of this project. */
const CLOCKS_APART = 15 * 60_000;

/**
 * Openings of the doors by stop, in the order of the bill: as events and notes tell them, and as the logs' own column of
 * doors shows them. What a log shows open between stops is listed apart. Openings before the truck came to the first
 * stop are of another load.
 */
export function doorOpenings(milestones: Milestones, logs: readonly UnitLog[]): StopDoors[] {
  const logged = logsWithDoors(logs).flatMap(openingsIn);
  const visits = milestones.stops.map((stop) => visitOf(milestones, stop.id));
  const first = visits[0]?.from ?? Number.NEGATIVE_INFINITY;
  const atStops = milestones.stops.map((stop, i): StopDoors => {
    const visit = visits[i];
    const here = logged.filter((one) => visit !== undefined && overlaps(one, visit));
    return {
      stop: stop.id,
      noted: notedAt(milestones, stop.id),
      logged: here,
      loggedSeconds: secondsOf(here),
    };
  });
  const between = logged.filter(
    (one) =>
      one.to >= first - CLOCKS_APART && !visits.some((visit) => visit !== undefined && overlaps(one, visit)),
  );
  const known = visits.some((visit) => visit !== undefined);
  return [
    ...atStops.filter((one) => one.noted.length + one.logged.length > 0),
    ...(known && between.length > 0
      ? [{ noted: [], logged: between, loggedSeconds: secondsOf(between) }]
      : []),
  ];
}

/** Logs of compartments of one download share its column of doors. */
const logsWithDoors = (logs: readonly UnitLog[]) =>
  logs.filter(
    ({ states }, i) =>
      states.door !== undefined && logs.findIndex((other) => other.states.door === states.door) === i,
  );

function openingsIn(log: UnitLog): LoggedOpening[] {
  const [from, to] = [log.times.at(0), log.times.at(-1)];
  if (from === undefined || to === undefined) return [];
  return loggedStates(log, { from, to }, gapLimit(log.times).gapLimitSeconds)
    .filter(({ is }) => is === 'door-open')
    .map((one) => ({
      from: one.from,
      to: one.to,
      log: log.evidence,
      ...omitUndefined({ compartment: log.compartment }),
    }));
}

/** From the first to the last known event at a stop; the last stop has no known end, the first no known beginning. */
function visitOf({ events, stops }: Milestones, stop: string): { from: number; to: number } | undefined {
  const here = events.filter((one) => one.stop === stop).map(({ at }) => at);
  if (here.length === 0) return undefined;
  const arrived = events.some((one) => one.stop === stop && one.event === 'arrived');
  const left = events.some((one) => one.stop === stop && one.event === 'departed');
  const isFirst = stops[0]?.id === stop;
  const isLast = stops.at(-1)?.id === stop;
  return {
    from: isFirst && !arrived ? Number.NEGATIVE_INFINITY : Math.min(...here),
    to: isLast && !left ? Number.POSITIVE_INFINITY : Math.max(...here),
  };
}

const overlaps = (one: { from: number; to: number }, visit: { from: number; to: number }): boolean =>
  one.to >= visit.from - CLOCKS_APART && one.from <= visit.to + CLOCKS_APART;

const secondsOf = (all: readonly LoggedOpening[]): number =>
  all.reduce((sum, { from, to }) => sum + (to - from) / 1000, 0);

/** Each opening that was noted at a stop, with the closing that follows it; a closing alone has no known beginning. */
function notedAt({ events }: Milestones, stop: string): NotedOpening[] {
  const doors = events.filter(
    (one) => one.stop === stop && (one.event === 'doors-opened' || one.event === 'doors-closed'),
  );
  const found: NotedOpening[] = [];
  let open: MilestoneEvent | undefined;
  for (const one of doors) {
    if (one.event === 'doors-opened') {
      if (open !== undefined) found.push({ from: open.at, evidence: [open.evidence] });
      open = one;
      continue;
    }
    found.push({
      to: one.at,
      ...omitUndefined({ from: open?.at }),
      evidence: [...(open === undefined ? [] : [open.evidence]), one.evidence],
    });
    open = undefined;
  }
  if (open !== undefined) found.push({ from: open.at, evidence: [open.evidence] });
  return found;
}
