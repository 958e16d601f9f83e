import { omitUndefined } from '../../model/omit-undefined.js';
import type { RecorderIdentity } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
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

/**
 * What the record says of the instrument behind a log: the numbers that its download states, and the instrument that
 * was recorded with this log among its papers, or with the same number.
 */
export function recorderIdentity(log: UnitLog, { evidence, delivery }: RecordState): RecorderIdentity {
  const item = evidence.find((one) => one.evidence === log.evidence);
  const stated = log.stated?.recorder ?? log.stated?.unit;
  const recorded = evidence.filter(
    (one): one is ItemOf<'instrument'> =>
      one.kind === 'instrument' &&
      (one.documents.includes(log.evidence) ||
        sameNumber(stated, one.serial) ||
        sameNumber(stated, one.name)),
  );
  const listed = (delivery.instruments ?? []).find(
    (one) => sameNumber(stated, one.serial) || sameNumber(stated, one.name),
  );
  /** The last word on each part. */
  const last = <T>(part: (one: ItemOf<'instrument'>) => T | undefined): T | undefined =>
    recorded.flatMap((one) => part(one) ?? []).at(-1);
  return {
    log: log.evidence,
    instrument: instrumentOf(log),
    ...omitUndefined({
      compartment: log.compartment,
      serial: last(({ serial }) => serial) ?? listed?.serial ?? stated,
      place: last(({ where }) => where) ?? item?.place?.position,
      owner: last(({ owner }) => owner?.name ?? owner?.party) ?? listed?.owner,
    }),
    evidence: [log.evidence, ...recorded.map((one) => one.evidence)],
  };
}

/** Numbers are compared without blanks, dashes and case. */
function sameNumber(one: string | undefined, other: string | undefined): boolean {
  const plain = (text: string) => text.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
  return one !== undefined && other !== undefined && plain(one) !== '' && plain(one) === plain(other);
}
