import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { RunModeResult, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { firstIndexFrom } from './segments.js';

/**
 * Usual swing of the controlled air to either side of the set point, kelvin, outside defrosts and open doors.
 * Common practice, no source: a continuous unit throttles around the set point, a start-stop unit lets the air rise
 * before it starts again.
 */
const USUAL_SWING = { continuous: 1.5, 'start-stop': 4 } as const;

/** Run mode instructed by the lines, run mode logged, and the usual swing of that mode. */
export function runModeOf(
  log: UnitLog,
  lines: readonly Line[],
  window: TimeRange,
): RunModeResult | undefined {
  const asks = [...new Set(lines.flatMap((line) => line.instruction?.run ?? []))];
  const asked = asks.length === 1 ? asks[0] : undefined;
  const logged = loggedMode(log, window);
  const mode = logged ?? asked;
  if (mode === undefined) return undefined;
  return {
    ...omitUndefined({ asked, logged }),
    usualSwingKelvin: USUAL_SWING[mode],
  };
}

/** The mode stated by most rows of the window. */
function loggedMode(log: UnitLog, window: TimeRange): RunModeResult['logged'] {
  const texts = log.states.mode;
  if (texts === undefined) return undefined;
  const counts = { continuous: 0, 'start-stop': 0 };
  const known = new Map<string, keyof typeof counts | undefined>();
  for (let i = firstIndexFrom(log.times, window.from); i < texts.length; i++) {
    if ((log.times[i] as number) > window.to) break;
    const text = texts[i] ?? '';
    if (!known.has(text)) known.set(text, readMode(text));
    const mode = known.get(text);
    if (mode !== undefined) counts[mode] += 1;
  }
  if (counts.continuous + counts['start-stop'] === 0) return undefined;
  return counts.continuous >= counts['start-stop'] ? 'continuous' : 'start-stop';
}

function readMode(text: string): RunModeResult['logged'] {
  const plain = text.toLowerCase();
  if (plain.includes('contin')) return 'continuous';
  return /start.?stop|cycl|on.?off/.test(plain) ? 'start-stop' : undefined;
}
