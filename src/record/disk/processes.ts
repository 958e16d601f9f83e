import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { errorCode } from './disk-error.js';

/** Who a process is, so that another one can tell later whether it is still there. */
export interface ProcessIdentity {
  pid: number;
  host: string;
  /** Tells two processes apart that had the same pid one after the other; 'unknown' where the system does not say. */
  started: string;
}

export interface Processes {
  self: ProcessIdentity;
  /** Whether that very process runs; true when it can't be told, as for another machine. */
  isRunning(who: ProcessIdentity): boolean;
}

const UNKNOWN = 'unknown';

/** The processes of this machine: by /proc on Linux, elsewhere by pid alone. */
export function thisMachine(): Processes {
  const self = { pid: process.pid, host: hostname(), started: startOf(process.pid).started };
  return {
    self,
    isRunning(who) {
      if (who.host !== self.host) return true;
      if (!pidExists(who.pid)) return false;
      const found = startOf(who.pid);
      if (found.ended) return false;
      return found.started === who.started || found.started === UNKNOWN || who.started === UNKNOWN;
    },
  };
}

function pidExists(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it is there and belongs to someone else.
    return errorCode(error) !== 'ESRCH';
  }
}

/** Start of a process as boot and clock ticks since boot (proc(5): stat, fields 3 and 22). */
function startOf(pid: number): { started: string; ended: boolean } {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    // The second field is the program's name in brackets and may hold spaces and brackets itself.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    const [state = ''] = fields;
    const ticks = fields[19];
    if (ticks === undefined) return { started: UNKNOWN, ended: false };
    // A killed process that nobody has waited for still has its pid.
    return { started: `${boot}:${ticks}`, ended: state === 'Z' || state === 'X' };
  } catch (error) {
    if (errorCode(error) === undefined) throw error;
    return { started: UNKNOWN, ended: false };
  }
}
