import type { Delivery, Stop } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { type Place, type Position, position } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type EventTime, type Instant, milliseconds, toInstant, type Zone } from '../../core/model/time.js';
import { nearestWord } from '../../intake/settings/did-you-mean.js';
import { parseTypedTime } from '../../intake/typed.js';

/** A recorded event has happened; another clock may be slightly ahead of this machine's. */
const AHEAD_MILLISECONDS = 10 * 60_000;

/** An error for an unknown word, with the nearest known one and the choices. */
export function unknownWord(
  what: string,
  said: string,
  known: readonly string[],
  field = `--${what}`,
): DossierError {
  const close = nearestWord(said, known);
  return new DossierError('bad-value', `there is no ${what} "${said}"`, {
    where: { field },
    fix: `${close === undefined ? '' : `Did you mean ${close}? `}Use one of: ${known.join(', ')}.`,
    choices: known,
  });
}

/** The stop by its id, in any case. Throws DossierError `bad-value` with the choices. */
export function findStop(delivery: Delivery, named: string | undefined): Stop | undefined {
  if (named === undefined) return undefined;
  const found = delivery.stops.find((stop) => stop.id.toLowerCase() === named.toLowerCase());
  if (found === undefined)
    throw unknownWord(
      'stop',
      named,
      delivery.stops.map(({ id }) => id),
    );
  return found;
}

/** The line's id. Throws DossierError `bad-value` with the choices. */
export function findLine(delivery: Delivery, named: string | undefined): string | undefined {
  if (named === undefined) return undefined;
  const ids = delivery.lines.map(({ id }) => id);
  const found = ids.find((id) => id.toLowerCase() === named.toLowerCase());
  if (found === undefined) throw unknownWord('line', named, ids);
  return found;
}

/** Nose, middle or tail. Throws DossierError `bad-value` with the choices. */
export function findPosition(named: string | undefined): Position | undefined {
  if (named === undefined) return undefined;
  const read = position.safeParse(named.toLowerCase());
  if (!read.success) throw unknownWord('position', named, position.options);
  return read.data;
}

/** The compartment's id. Throws DossierError `bad-value` with the choices. */
export function findCompartment(delivery: Delivery, named: string | undefined): string | undefined {
  if (named === undefined) return undefined;
  const ids = (delivery.equipment.trailer.compartments ?? []).map(({ id }) => id);
  const found = ids.find((id) => id.toLowerCase() === named.toLowerCase());
  if (found !== undefined) return found;
  if (ids.length > 0) throw unknownWord('compartment', named, ids);
  throw new DossierError('bad-value', `there is no compartment "${named}": delivery.yaml lists none`, {
    where: { field: '--compartment' },
    fix: 'List them under equipment: trailer: compartments, or leave the option out.',
  });
}

export function typedPlace(
  stop: Stop | undefined,
  part: Position | undefined,
  compartment: string | undefined,
): Place | undefined {
  if (stop === undefined && part === undefined && compartment === undefined) return undefined;
  return {
    ...omitUndefined({ stop: stop?.id, position: part, compartment }),
  };
}

/**
 * The typed time, local to the stop; without a stop all places must share a zone, unless the time states its
 * offset. Throws DossierError `bad-value` with the choices.
 * @param field the option it was typed under
 */
export function typedTime(
  typed: string,
  delivery: Delivery,
  stop: Stop | undefined,
  now: Date,
  field: string,
): EventTime {
  const at = toInstant(now.getTime());
  const zones = stop === undefined ? [...new Set(delivery.stops.map((s) => s.zone))] : [stop.zone];
  const near = plannedWalls(stop === undefined ? delivery.stops : [stop]);
  const read = inOneZone(typed, zones, at, near, field);
  if (read === undefined) {
    const ids = delivery.stops.map(({ id }) => id);
    throw new DossierError('bad-value', `"${typed}" can be local time of ${zones.join(' or ')}`, {
      where: { field: '--stop' },
      fix: `Say at which stop: --stop ${ids.join(' or --stop ')}.`,
      choices: ids,
    });
  }
  if (read.is === 'known' && milliseconds(read.instant) > now.getTime() + AHEAD_MILLISECONDS)
    throw new DossierError('bad-value', `"${typed}" has not come yet by this machine’s clock`, {
      where: { field },
      fix: 'Write when it happened, or set the machine’s clock right.',
    });
  return read;
}

/** Planned times on the clocks of their places, milliseconds as if the clock were UTC. */
export function plannedWalls(stops: readonly Stop[]): number[] {
  return stops.flatMap(({ planned }) => (planned === undefined ? [] : [Date.parse(`${planned}Z`)]));
}

/** Undefined when the zones give different instants. An abbreviation used in only one of them decides. */
function inOneZone(
  typed: string,
  zones: readonly Zone[],
  now: Instant,
  near: readonly number[],
  field: string,
): EventTime | undefined {
  const readings = zones.map((zone) => parseTypedTime(typed, { now, zone, near, field }));
  const times = readings.flatMap((reading) => (reading.is === 'time' ? [reading.time] : []));
  const [first] = times;
  if (first === undefined) {
    const [problem] = readings.flatMap((reading) => (reading.is === 'problem' ? [reading.problem] : []));
    if (problem === undefined) throw new Error('a delivery without stops');
    throw new DossierError(problem.code, problem.message, problem);
  }
  const moments = new Set(times.map((time) => (time.is === 'known' ? time.instant : '')));
  return moments.size === 1 ? first : undefined;
}
