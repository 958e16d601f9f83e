import type { EvidenceId } from '../model/evidence.js';
import type { TimeRange } from '../model/results.js';
import type { ItemOf } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import { gapLimit } from './temperature/sampling-interval.js';
import { isNoAlarm } from './temperature/state-words.js';

/** One alarm: from when it is first seen until it is last seen without a break. */
export interface Alarm extends TimeRange {
  /** As the unit or the person wrote it. */
  text: string;
  evidence: EvidenceId;
  from: number;
  to: number;
  seen: 'in-log' | 'at-a-look';
}

/** What an alarm column says when there is none. */
const NO_ALARM = new Set([
  '',
  '-',
  '--',
  '0',
  '00',
  'no',
  'none',
  'n',
  'off',
  'ok',
  'false',
  'normal',
  'clear',
]);

const isAlarm = (text: string) => !NO_ALARM.has(text.trim().toLowerCase()) && !isNoAlarm(text);

/** Alarms from the logs' alarm columns and from unit checks, in order of time. A gap in a log ends an alarm. */
export function alarmsOf(logs: readonly UnitLog[], rounds: readonly ItemOf<'round'>[]): Alarm[] {
  // Logs of compartments of one download share its alarm column.
  const once = logs.filter(
    ({ states }, i) => logs.findIndex((other) => other.states.alarm === states.alarm) === i,
  );
  return [...once.flatMap(inLog), ...rounds.flatMap(atUnitCheck)].sort((a, b) => a.from - b.from);
}

/** Logs with an alarm column: only these can show that there was no alarm. */
export const logsWithAlarms = (logs: readonly UnitLog[]) =>
  logs.filter((log) => log.states.alarm !== undefined);

function inLog(log: UnitLog): Alarm[] {
  const texts = log.states.alarm;
  if (texts === undefined) return [];
  const longest = gapLimit(log.times).gapLimitSeconds * 1000;
  const found: Alarm[] = [];
  let open: Alarm | undefined;
  let row = 0;
  for (const text of texts) {
    const at = log.times.at(row);
    row += 1;
    if (at === undefined) continue;
    if (open !== undefined && (open.text !== text.trim() || at - open.to > longest)) open = undefined;
    if (!isAlarm(text)) continue;
    if (open === undefined) {
      open = { text: text.trim(), evidence: log.evidence, from: at, to: at, seen: 'in-log' };
      found.push(open);
    } else open.to = at;
  }
  return found;
}

function atUnitCheck(item: ItemOf<'round'>): Alarm[] {
  const at = knownMilliseconds(item.time);
  if (at === undefined) return [];
  return item.alarms
    .filter(isAlarm)
    .map((text) => ({ text, evidence: item.evidence, from: at, to: at, seen: 'at-a-look' as const }));
}
