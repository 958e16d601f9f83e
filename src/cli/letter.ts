import { relative, resolve } from 'node:path';
import type { Command } from 'commander';
import type { LetterKind } from '../core/model/claim.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { CliContext } from './context.js';
import { resolveEnteredBy } from './entered-by.js';
import { escapeControls, pathForShell, quotedForShell } from './output.js';
import { type PassphraseOptions, readPassphrase } from './passphrase.js';
import { printWrapped } from './print.js';

/** Options of `answer` that prepare a letter. */
export interface LetterOptions extends PassphraseOptions {
  letter?: string;
  out?: string;
  claim?: string;
  to?: string;
  amount?: string;
  reason?: string[];
  item?: string[];
  firm?: boolean;
  disallowRest?: boolean;
  loading?: boolean;
  language?: string;
  paper?: string;
  for?: string;
  /** False with --no-dossier; by default it depends on the kind of letter. */
  dossier?: boolean;
  assessment?: boolean;
  certificate?: boolean;
  maxSize?: string;
  by?: string;
  identity?: string;
  templates?: string;
  json?: boolean;
}

const more = (value: string, before: string[] = []) => [...before, value];

export function addLetterOptions(command: Command): Command {
  return command
    .option(
      '--letter <kind>',
      'put a letter together: acknowledgement, request-for-papers, status-report, denial, offer, notice-to-shipper, notice-to-insurer, inspection-request, inspection-appeal, reservation, rejection-notice, refused-load, similar-claims or recourse',
    )
    .option('-o, --out <folder>', 'new or empty folder that the letter and what goes with it is written to')
    .option('--to <name>', 'whom the letter goes to (default: the claimant, shipper or insurer)')
    .option('--amount <money>', 'amount that is offered, or the part that is denied, such as "3000.00 USD"')
    .option('--reason <text>', 'a reason, or what is asked for; may be given several times', more)
    .option(
      '--item <text>',
      'one item of the claim and why it is declined, such as "salvage-cost: no account"; may be given several times',
      more,
    )
    .option('--firm', 'the offer is firm')
    .option(
      '--disallow-rest',
      'the offer disallows the rest of the claim; without it, it says that it does not',
    )
    .option('--loading', 'also how the load was placed, where the shipper loaded')
    .option('--language <code>', 'en or es (default: what delivery.yaml says)')
    .option('--paper <paper>', 'Letter or A4 (default: what delivery.yaml says)')
    .option('--for <reader>', 'whose copy of the dossier goes with it (default: by the kind of letter)')
    .option('--no-dossier', 'no dossier goes with it')
    .option('--assessment', 'the confidential assessment too: with a notice to the insurer, or to counsel')
    .option('--certificate', 'also a draft of a certificate of records, for a qualified person to complete')
    .option('--max-size <size>', 'what the dossier may take, such as 10MB')
    .option('--by <name>', 'who enters it (default: DOSSIER_BY or your account)')
    .option('--identity <folder>', 'signing identity of the dossier (default: as for dossier build)')
    .option('--passphrase-file <file>', 'file that holds the passphrase of its key')
    .option('--passphrase-fd <number>', 'open file descriptor to read it from');
}

/** Options that require --letter. */
const OF_LETTER = [
  'out',
  'to',
  'amount',
  'reason',
  'item',
  'firm',
  'disallowRest',
  'loading',
  'assessment',
  'certificate',
  'for',
] as const;

/** Throws DossierError `bad-usage` when an option of a letter is given without --letter. */
export function requireNoLetterOptions(options: LetterOptions): void {
  const found = OF_LETTER.find((name) => options[name] !== undefined);
  if (found === undefined) return;
  const field = `--${found.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  throw new DossierError('bad-usage', `${field} belongs to a letter`, {
    where: { field },
    fix: 'Say which with --letter, or leave it out.',
  });
}

/** Prepares one letter, and reports the files written, the places to fill in, and what the letter does not say. */
export async function prepareLetter(
  { output, now, interruption }: CliContext,
  folder: string,
  letter: string,
  options: LetterOptions,
): Promise<void> {
  if (options.out === undefined)
    throw new DossierError('bad-usage', 'a letter needs a folder', {
      where: { field: '--out' },
      fix: 'Name a new one, such as --out answer-to-c1.',
    });
  const { writeLetterPackage } = await import('../jobs/letter-package.js');
  const report = await writeLetterPackage({
    folder,
    by: resolveEnteredBy(options.by),
    now,
    letter,
    out: options.out,
    reasons: options.reason ?? [],
    items: options.item ?? [],
    firm: options.firm === true,
    disallowsRest: options.disallowRest === true,
    loading: options.loading === true,
    identityFolder: options.identity,
    passphrase: (isNew) => readPassphrase(options, isNew),
    progress: (at) => output.progress(at),
    signal: interruption(),
    ...omitUndefined({
      claim: options.claim,
      to: options.to,
      amount: options.amount,
      language: options.language,
      paper: options.paper,
      for: options.for,
      assessment: options.assessment,
      certificate: options.certificate,
      maxSize: options.maxSize,
      templates: options.templates,
      dossier: options.dossier === false ? false : undefined,
    }),
  });
  if (options.json === true) return output.json(report);
  for (const notice of report.notices) output.note(escapeControls(notice));
  const where = escapeControls(relative(process.cwd(), options.out) || options.out);
  output.line(
    `${where}: ${report.letter}${report.to === undefined ? '' : ` to ${escapeControls(report.to)}`}`,
  );
  for (const { name, bytes, sha256 } of report.files) output.line(`  ${name}  ${bytes} bytes  ${sha256}`);
  const list = (title: string, items: readonly string[]) => {
    if (items.length === 0) return;
    output.line(title);
    for (const item of items) printWrapped(output, item, { mark: '  - ' });
  };
  list('To fill in before it is signed:', report.toFillIn);
  list('To fill in on the certificate, by a qualified person:', report.certificateToFillIn ?? []);
  list(
    'What speaks against you or is open, and is not in the letter:',
    report.weak.map(({ weighs, says }) => `${weighs === 'hurts' ? 'against' : 'open'}: ${says}`),
  );
  list('Evidence that is missing and weakens the position:', report.missing);
  list('What speaks for you, but rests on what the reader’s copy leaves out:', report.kept);
  list('Keep in mind:', report.cautions);
  const at = resolve(folder) === process.cwd() ? '' : ` -d ${pathForShell(relative(process.cwd(), folder))}`;
  output.note(
    `Nothing was sent; entry ${report.entry} of the record notes the files. When you have sent it: dossier record claim letter ${report.letter} --way sent --with ${quotedForShell(report.to ?? 'NAME')}${at}`,
  );
  const also = followUpEntry(report.letter, options);
  if (also !== undefined) output.note(`And what it says: dossier record claim ${also}${at}`);
}

/** The claim entry to record when a letter that decides something is sent, so that the deadlines follow. */
function followUpEntry(
  letter: LetterKind,
  { reason, item = [], amount, firm }: LetterOptions,
): string | undefined {
  if (letter === 'denial') {
    const part = amount === undefined ? '' : ` --part ${quotedForShell(amount)}`;
    const items = item.map((one) => ` --item ${quotedForShell(one)}`).join('');
    return `declined ${quotedForShell(reason?.[0] ?? 'REASON')} --in-writing${part}${items}`;
  }
  if (letter === 'offer')
    return `offer ${quotedForShell(amount ?? 'AMOUNT')}${firm === true ? ' --firm' : ''}`;
  return undefined;
}
