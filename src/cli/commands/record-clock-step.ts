import { Command, Option } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';

export const CLOCK_STEP_EXAMPLE =
  'dossier record clock-step --wrong after --why "set to Pacific time at the shop"';

interface Options {
  delivery?: string;
  enteredBy?: string;
  log?: string;
  wrong: 'before' | 'after';
  add?: string;
  why: string;
  json?: boolean;
}

export function clockStepCommand({ output, now }: CliContext): Command {
  return new Command('clock-step')
    .description('Say which part of a unit log is wrong whose clock was set on the way.')
    .argument('[line]', 'line of the file at which it was set, where the log shows several')
    .addOption(DELIVERY)
    .option('--log <id>', 'the unit log, where several show it')
    .addOption(
      new Option('--wrong <part>', 'the part whose times are wrong, before or after that line')
        .choices(['before', 'after'])
        .makeOptionMandatory(),
    )
    .option('--add <time>', 'what to add to it, such as "2 h" or "-90 min" (default: the size of the step)')
    .requiredOption('--why <text>', 'how you know')
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  ${CLOCK_STEP_EXAMPLE}
  dossier record clock-step 145 --log e5 --wrong before --add "-2 h" --why "photo e14 of the display"

A clock that was set shows by rows against their order; dossier collect and dossier temps tell it. Times in the
file stay as they are: what you say is added where times are used, and shown there. To take it back, strike
the entry: dossier strike #44 --why "…".`,
    )
    .action(async (line: string | undefined, options: Options) => {
      const { recordClockStep } = await import('../../jobs/clock-step.js');
      const recorded = await recordClockStep({
        folder: deliveryFolder(options.delivery),
        by: resolveEnteredBy(options.enteredBy),
        now,
        row: line === undefined ? undefined : lineNumber(line),
        log: options.log,
        wrong: options.wrong,
        addSeconds: options.add === undefined ? undefined : seconds(options.add),
        why: options.why,
      });
      if (options.json === true) return output.json(recorded);
      output.line(`entry ${recorded.entry}  ${recorded.said}`);
    });
}

function lineNumber(text: string): number {
  if (/^\d{1,9}$/.test(text) && Number(text) > 0) return Number(text);
  throw new DossierError('bad-usage', `"${text}" is not a line of a file`, {
    where: { field: 'line' },
    fix: 'Write its number, counted from 1, as dossier collect tells it, such as 145.',
  });
}

const UNITS = { s: 1, min: 60, h: 3600 } as const;
/** No clock is set by more, hours: a day and an hour. */
const MOST_HOURS = 25;

function seconds(text: string): number {
  const match = /^([+-]?)(\d{1,5}(?:\.\d{1,3})?) ?(s|min|h)$/.exec(text.trim().replace('−', '-'));
  const [, sign, amount, unit] = match ?? [];
  const size = unit === 's' || unit === 'min' || unit === 'h' ? Number(amount) * UNITS[unit] : Number.NaN;
  if (size <= MOST_HOURS * 3600) return sign === '-' ? -size : size;
  throw new DossierError('bad-value', `"${text}" is not a length of time of at most ${MOST_HOURS} h`, {
    where: { field: '--add' },
    fix: 'Write it like "2 h", "-90 min" or "7200 s".',
  });
}
