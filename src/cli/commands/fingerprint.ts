import { Command } from 'commander';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { type TimeStampOptions, timeStampsAt } from '../time-stamps.js';

interface Options extends TimeStampOptions {
  delivery?: string;
  to?: string;
  how?: string;
  by?: string;
  json?: boolean;
}

export function fingerprintCommand({ output, now }: CliContext): Command {
  return new Command('fingerprint')
    .description('Print the one line that proves later what the record held now.')
    .argument('[folder]', 'the delivery (default: the folder you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('--to <name>', 'record that it is sent to this person')
    .option('--how <way>', 'how it is sent: text, e-mail, letter …')
    .option('--tsa <url>', 'have a time-stamp server (RFC 3161) confirm it')
    .option('--tsa-policy <oid>', 'policy that is asked for')
    .option('--by <name>', 'who enters it (default: DOSSIER_BY or your account)')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier fingerprint my-delivery
  dossier fingerprint --to "R. Vela, shipper" --how text
  dossier fingerprint --tsa https://tsa.example.org/tsr

Whoever got the line can check any later dossier or record against it:
  dossier verify dossier.pdf --fingerprint "LINE"`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { fingerprint } = await import('../../jobs/fingerprint.js');
      const report = await fingerprint({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(options.by),
        now,
        ...omitUndefined({ to: options.to, how: options.how }),
        ...(await timeStampsAt(options)),
      });
      if (options.json === true) {
        output.json(report);
        return;
      }
      for (const notice of report.notices) output.note(escapeControls(notice));
      output.line(escapeControls(report.line));
      if (report.stamped !== undefined)
        output.note(
          `Time stamp ${report.stamped.at} by ${escapeControls(report.stamped.server)}; kept in the record.`,
        );
      if (options.to !== undefined) output.note(`Recorded as sent to ${escapeControls(options.to)}.`);
    });
}
