import { relative } from 'node:path';
import { Command } from 'commander';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { readPassphrase } from '../passphrase.js';
import { counted } from '../print.js';
import { type TimeStampOptions, timeStampsAt } from '../time-stamps.js';

interface Options extends TimeStampOptions {
  delivery?: string;
  out?: string;
  by?: string;
  identity?: string;
  passphraseFile?: string;
  passphraseFd?: string;
  bag?: boolean;
  paper?: string;
  for?: string;
  assessment?: boolean;
  maxSize?: string;
  templates?: string;
  json?: boolean;
}

export function buildCommand({ output, now, interruption }: CliContext): Command {
  return new Command('build')
    .description('Render the signed PDF dossier of a delivery, or the assessment of the last one.')
    .argument('[folder]', 'the delivery (default: the folder you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('-o, --out <file>', 'where to write it (default: the delivery’s folder dossiers, or assessments)')
    .option('--by <name>', 'who builds it (default: DOSSIER_BY or your account)')
    .option('--paper <paper>', 'Letter or A4 (default: what delivery.yaml says)')
    .option(
      '--identity <folder>',
      'signing identity (default: DOSSIER_IDENTITY, or .config/load-dossier in your home)',
    )
    .option('--passphrase-file <file>', 'file that holds the passphrase of the identity’s key')
    .option('--passphrase-fd <number>', 'open file descriptor to read it from')
    .option('--tsa <url>', 'have a time-stamp server (RFC 3161) confirm the signature')
    .option('--tsa-policy <oid>', 'policy that is asked of it')
    .option('--bag', 'pack all originals into a bag beside it, also when they fit inside')
    .option('--for <reader>', 'a copy for a reader named in copies.yaml: receiver, insurer, counsel; or own')
    .option(
      '--assessment',
      'the confidential assessment of the last dossier: findings, what is missing, position and amounts',
    )
    .option('--max-size <size>', 'what the file may take, such as 10MB', '20MB')
    .option(
      '--templates <folder>',
      'words, pages, letterhead or order of sections of your own, over the shipped',
    )
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier build
  dossier build -d deliveries/4711 --paper A4
  dossier build --for receiver --max-size 10MB
  dossier build --assessment --for counsel
  dossier build --templates our-templates
  dossier build --passphrase-file ~/.dossier-passphrase --json

The dossier holds what was instructed, measured, seen, said and signed, and
figures computed from that. What the carrier makes of it stands in a file of its
own: --assessment builds it over the fingerprint of the last dossier. It is
confidential, and never for the other side.

The first build makes a signing identity: a certificate of your own with an
encrypted key. It shows that nothing was changed after signing; who the signer
is, a stranger learns only when you give them the certificate by another way.
The passphrase is asked for, or read from --passphrase-file or DOSSIER_PASSPHRASE.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { build } = await import('../../jobs/build.js');
      const report = await build({
        folder: deliveryFolder(options.delivery ?? folder),
        out: options.out,
        by: resolveEnteredBy(options.by),
        now,
        paper: options.paper,
        identityFolder: options.identity,
        passphrase: (isNew) => readPassphrase(options, isNew),
        progress: (at) => output.progress(at),
        signal: interruption(),
        ...(await timeStampsAt(options)),
        ...omitUndefined({
          bag: options.bag,
          for: options.for,
          assessment: options.assessment,
          maxSize: options.maxSize,
          templates: options.templates,
        }),
      });
      if (options.json === true) return output.json(report);
      const { bytes } = (await import('../../core/words/numbers.js')).numbersFor('en');
      for (const notice of report.notices) output.note(escapeControls(notice));
      const file = escapeControls(relative(process.cwd(), report.file) || report.file);
      output.line(file);
      if (report.volume === 'assessment')
        output.line('Assessment, confidential: for the carrier, its insurer and counsel');
      output.line(`${counted(report.pages, 'page')}, ${bytes(report.bytes)}, SHA-256 ${report.sha256}`);
      output.line(
        `Fingerprint ${report.fingerprint.delivery} ${report.fingerprint.size} ${report.fingerprint.root}`,
      );
      output.line(
        `Signed by ${escapeControls(report.signer.name)}, certificate SHA-256 ${report.signer.certificateSha256}`,
      );
      const { sizing, copy } = report;
      if (copy !== undefined)
        output.line(
          `Copy for ${escapeControls(copy.title)}: ${copy.evidenceLeftOut} pieces of evidence left out, ${copy.entriesLeftOut} ledger entries as hash only`,
        );
      if (report.volume === 'dossier')
        output.line(
          `Pictures up to ${sizing.picture.longest} pixels, JPEG quality ${sizing.picture.quality}; ${sizing.originalsInside} originals inside, ${sizing.originalsNotInside} not`,
        );
      if (report.stampedTime !== undefined) output.line(`Time stamp ${report.stampedTime}`);
      if (report.bag !== undefined)
        output.line(
          `Bag of originals ${escapeControls(relative(process.cwd(), report.bag.file))}: ${counted(report.bag.payloadFiles, 'file')}, ${bytes(report.bag.payloadBytes)}; send it with the dossier`,
        );
      output.note(`Next: dossier verify "${file}"`);
    });
}
