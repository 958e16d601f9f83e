import { omitUndefined } from '../../model/omit-undefined.js';
import type { CompartmentColumns, UnitLog } from '../../model/unit-log.js';
import { loadAirChannels } from '../temperature/channels.js';

/**
 * One log for each compartment that a download has columns of, and one for sensors of the air that are of none. Ambient
 * air and states of the whole unit are of each compartment; a set point that names none is of no compartment, because
 * nothing says which one it is for.
 * @param placed the compartment that a recorder lay in, where its download is of one alone
 */
export function logsByCompartment(
  { compartments, ...log }: UnitLog & { compartments: readonly CompartmentColumns[] },
  placed?: string,
): UnitLog[] {
  if (compartments.length === 0) return [{ ...log, ...omitUndefined({ compartment: placed }) }];
  const { ambient, ...others } = log.channels;
  const shared = omitUndefined({ ambient });
  const own = compartments.map(
    ({ compartment, channels, states }): UnitLog => ({
      ...log,
      compartment,
      channels: { ...shared, ...channels },
      states: { ...log.states, ...states },
    }),
  );
  const rest: UnitLog = { ...log, channels: others };
  return loadAirChannels(rest).length === 0 ? own : [...own, rest];
}

/** What names a log: its evidence, and the compartment whose air it is where the download has several. */
export interface LogName {
  log: string;
  compartment?: string;
}

/** The log of a result. */
export function logNamed<L extends Pick<UnitLog, 'evidence' | 'compartment'>>(
  logs: readonly L[],
  { log, compartment }: LogName,
): L | undefined {
  return logs.find((one) => one.evidence === log && one.compartment === compartment);
}

/** Name of the file with the rows of a log: `log-e5.csv`, or `log-e5-front.csv` for what is of one compartment. */
export const logFileName = ({ evidence, compartment }: Pick<UnitLog, 'evidence' | 'compartment'>): string =>
  compartment === undefined ? `log-${evidence}.csv` : `log-${evidence}-${compartment}.csv`;

/** Whether a log is of the air around a line: that of its compartment, or of the whole trailer. */
export function isAround(
  log: Pick<UnitLog, 'compartment'>,
  line: { compartment?: string | undefined },
): boolean {
  return (
    log.compartment === undefined || line.compartment === undefined || log.compartment === line.compartment
  );
}
