import { omitUndefined } from '../../model/omit-undefined.js';
import type { RecorderIdentity } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import type { UnitLog } from '../../model/unit-log.js';

/**
 * Whether a log is the unit's own: it has air that goes to or from the unit, or a set point. A recorder in the load has
 * neither, whoever put it there.
 */
export const instrumentOf = ({ channels }: UnitLog): RecorderIdentity['instrument'] =>
  channels['return-air'] === undefined &&
  channels['supply-air'] === undefined &&
  channels['set-point'] === undefined
    ? 'recorder'
    : 'unit';

/** What the record says of the instrument behind a log: the numbers that its download states, and where it was put. */
export function recorderIdentity(log: UnitLog, { evidence }: RecordState): RecorderIdentity {
  const item = evidence.find((one) => one.evidence === log.evidence);
  const serial = log.stated?.recorder ?? log.stated?.unit;
  return {
    log: log.evidence,
    instrument: instrumentOf(log),
    ...omitUndefined({
      compartment: log.compartment,
      serial,
      place: item?.place?.position,
    }),
    evidence: [log.evidence],
  };
}
