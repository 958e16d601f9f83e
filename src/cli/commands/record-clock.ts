import { Command } from 'commander';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';

export const CLOCK_EXAMPLE = 'dossier record clock 04:32 --photo e14';

interface Options {
  delivery?: string;
  enteredBy?: string;
  photo?: string;
  true?: string;
  log?: string;
  camera?: string;
  zone?: string;
  json?: boolean;
}

export function clockCommand({ output, now }: CliContext): Command {
  return new Command('clock')
    .description("Compare a clock with the true time: the unit's, or a camera's.")
    .argument('<display-time>', 'what the clock showed, such as 04:32 or 04:32:10')
    .addOption(DELIVERY)
    .option('--photo <id>', 'the photo that shows the display; its own time is the true time')
    .option('--true <time>', 'what time it really was')
    .option('--log <id>', "which unit log's clock (default: every log of the delivery)")
    .option('--camera <name>', "a camera's clock, by make and model, instead of the unit's")
    .option(
      '--zone <zone>',
      "the zone that the clock is set to (default: the log's, else that of the true time)",
    )
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  ${CLOCK_EXAMPLE}
  dossier record clock 04:32:10 --true 2026-07-14T04:36:00-07:00

Nothing is changed: the difference is added where times are used, and shown there.
Comparing again later in the trip shows whether the clock drifts.`,
    )
    .action(async (display: string, options: Options) => {
      const { recordClock } = await import('../../jobs/compare-clock.js');
      const compared = await recordClock({
        folder: deliveryFolder(options.delivery),
        by: resolveEnteredBy(options.enteredBy),
        now,
        display,
        photo: options.photo,
        true: options.true,
        log: options.log,
        camera: options.camera,
        zone: options.zone,
      });
      if (options.json === true) return output.json(compared);
      output.line(`entry ${compared.entry}  ${compared.said}`);
    });
}
