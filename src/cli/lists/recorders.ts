import type { Assessment, RecorderComparison, RecorderIdentity } from '../../core/model/results.js';
import type { Zone } from '../../core/model/time.js';
import type { Format } from '../../core/words/format.js';
import type { Output } from '../output.js';
import { idInWords, printWrapped } from '../print.js';

/** The recorders beside each other, and where clocks were set on the way. */
export function printRecorders(
  output: Output,
  { recorders, temperatures }: Assessment,
  format: Format,
  zone: Zone,
): void {
  const seen = (recorders?.comparisons ?? []).flatMap(({ clockSteps }) => clockSteps);
  for (const { log, clockSteps = [], clockShifts = [] } of temperatures) {
    for (const { row, from, seconds, uncertaintySeconds, hiddenRows } of clockSteps)
      printWrapped(
        output,
        `${log}: the clock was put ${seconds < 0 ? 'back' : 'forward'} by ${format.duration(seconds)} (± ${format.duration(uncertaintySeconds)}) after ${format.time(from, zone)} by its own reading, line ${row} of the file${hiddenRows === 0 ? '' : `; ${hiddenRows} rows with times of others are left out`}. Nothing is corrected: say which part is wrong with dossier record clock-step ${row} --log ${log} --wrong before or after --why "…"`,
      );
    for (const { rows, addSeconds, seq } of clockShifts)
      output.line(
        `${log}: ${format.duration(addSeconds)} ${addSeconds < 0 ? 'taken from' : 'added to'} the times ${'from' in rows ? `from line ${rows.from} on` : `before line ${rows.before}`} (entry ${seq})`,
      );
  }
  for (const { log, at, seconds, uncertaintySeconds } of seen)
    printWrapped(
      output,
      `${log}: by the curve of another recorder the clock was put ${seconds < 0 ? 'back' : 'forward'} by ${format.duration(seconds)} (± ${format.duration(uncertaintySeconds)}) after ${format.time(at, zone)} by its own reading`,
    );
  if (recorders === undefined) return;
  output.line(output.style('bold', 'Recorders'));
  for (const one of recorders.identities)
    printWrapped(output, identity(one), { mark: '  ', further: '    ' });
  for (const one of recorders.comparisons)
    printWrapped(output, comparison(one, format), { mark: '  ', further: '    ' });
  output.line();
}

function identity({ log, instrument, serial, owner, place }: RecorderIdentity): string {
  const own = instrument === 'unit' ? 'the unit’s own log' : 'a portable recorder';
  const whose =
    instrument === 'unit' ? '' : `, owner ${owner ?? 'not on record'}, place ${place ?? 'not on record'}`;
  return `${log}: ${own}, serial number ${serial ?? 'not on record'}${whose}`;
}

function comparison(
  {
    difference: { first, second, mean, apartSeconds, knownSeconds, limitKelvin },
    clock,
    moved,
    verdict,
  }: RecorderComparison,
  format: Format,
): string {
  const clocks =
    clock === undefined
      ? 'clocks not to be compared by the curves'
      : moved
        ? `the clock of ${second.log} is ${format.duration(clock.seconds)} ${clock.seconds > 0 ? 'slow' : 'fast'} (± ${format.duration(clock.uncertaintySeconds)}), and the values are compared on one clock`
        : `clocks within ${format.duration(clock.uncertaintySeconds)}`;
  const apart = knownSeconds === 0 ? '-' : format.share(apartSeconds / knownSeconds);
  return `${first.log} ${idInWords(first.channel)} and ${second.log} ${idInWords(second.channel)} ${verdict}: mean ${format.difference(mean)}, more than ${format.difference(limitKelvin)} apart for ${apart} of the time; ${clocks}`;
}
