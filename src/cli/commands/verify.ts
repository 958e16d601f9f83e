import { Command } from 'commander';
import type { Volume } from '../../core/model/manifest.js';
import type {
  Check,
  CheckedItem,
  CheckResult,
  Verdict,
  VerificationReport,
} from '../../core/model/verification.js';
import type { CliContext } from '../context.js';
import { EXIT } from '../exit.js';
import { escapeControls, type Output } from '../output.js';
import { printWrapped } from '../print.js';

interface Options {
  trust?: string[];
  requireTrust?: boolean;
  fingerprint?: string[];
  pictures?: boolean;
  brief?: boolean;
  json?: boolean;
}

export function verifyCommand({ output, exit, now }: CliContext): Command {
  return new Command('verify')
    .description('Check a dossier, an assessment, a bag or a record, with no trust in whoever made it.')
    .argument('<files...>', 'PDFs of dossiers and assessments, bags (zip or folder), delivery folders')
    .option('--trust <certificates...>', 'certificates (PEM or DER) that you vouch for')
    .option('--require-trust', 'an intact dossier of a signer not vouched for is a no')
    .option('--fingerprint <lines...>', 'lines that you were sent earlier, each in quotes')
    .option('--pictures', 'also compare printed pictures with the originals inside, which takes longer')
    .option('--brief', 'only what is not in order')
    .option('--json', 'the answer as JSON (docs/schemas/verification.schema.json)')
    .addHelpText(
      'after',
      `
Examples:
  dossier verify dossier.pdf
  dossier verify dossier.pdf --trust carrier.crt.pem --require-trust
  dossier verify dossier.pdf assessment.pdf
  dossier verify dossier.pdf dossier.bag.zip my-delivery
  dossier verify dossier.pdf --fingerprint "2026-0714-A 12 5d41402a…"

Exits with 1 when anything fails. What it can't show: that what was recorded is
true, and who signed, without a certificate that you got by another way.`,
    )
    .action(async (paths: string[], options: Options) => {
      const { verify } = await import('../../jobs/verify.js');
      const report = await verify({
        paths,
        trust: options.trust ?? [],
        fingerprints: options.fingerprint ?? [],
        pictures: options.pictures === true,
        now,
      });
      if (!isSound(report.verdict, options)) exit(EXIT.no);
      if (options.json === true) output.json(report);
      else printReport(output, report, options);
    });
}

function isSound(verdict: Verdict, { requireTrust }: Options): boolean {
  return verdict === 'intact' || (verdict === 'intact-signer-not-vouched-for' && requireTrust !== true);
}

const VERDICT = {
  intact: ['green', 'INTACT'],
  'intact-signer-not-vouched-for': ['yellow', 'INTACT, SIGNER NOT VOUCHED FOR'],
  broken: ['red', 'BROKEN'],
} as const;
const VOLUME = {
  dossier: 'A dossier: what was recorded, and figures computed from it',
  assessment:
    'An assessment, confidential: what the signer makes of the record; its exhibits are in the dossier',
} as const satisfies Record<Volume, string>;
const UNSIGNED = ['yellow', 'INTACT; NOT SIGNED BY ITSELF'] as const;

const MARK = {
  passed: ['dim', 'ok'],
  notice: ['yellow', 'note'],
  failed: ['red', 'FAILED'],
  'not-checked': ['dim', 'not checked'],
} as const satisfies Record<CheckResult, readonly [string, string]>;

function printReport(output: Output, { subjects, together }: VerificationReport, options: Options): void {
  for (const subject of subjects) printSubject(output, subject, options);
  if (subjects.length < 2) return;
  output.line('Together:');
  printChecks(output, together, options);
}

function printSubject(output: Output, subject: CheckedItem, options: Options): void {
  const { path, is, verdict, checks, signer, fingerprint, volume } = subject;
  const signs = is === 'dossier' || is === 'unknown' || verdict === 'broken';
  const [colour, words] = signs ? VERDICT[verdict] : UNSIGNED;
  output.line(`${escapeControls(path)}: ${output.style(colour, words)}`);
  if (volume !== undefined && verdict !== 'broken') output.line(VOLUME[volume]);
  printChecks(output, checks, options);
  if (signer !== undefined) {
    output.line(`Signed by ${escapeControls(signer.name)}`);
    output.line(`Certificate SHA-256 ${signer.certificateSha256}`);
    if (signer.claimedTime !== undefined)
      output.line(`Signed at ${signer.claimedTime} by the signer's own clock`);
    if (signer.stampedTime !== undefined) output.line(`Time stamp ${signer.stampedTime}`);
  }
  if (fingerprint !== undefined)
    output.line(
      `Fingerprint ${escapeControls(fingerprint.delivery)} ${fingerprint.size} ${fingerprint.root}`,
    );
  if (is === 'dossier' && verdict === 'intact-signer-not-vouched-for')
    output.note(
      'Ask the signer by another way for the certificate and compare its SHA-256, then: --trust FILE',
    );
}

/** More checks than this with one reason for not being made are one line. */
const MOST_ALIKE = 3;

function printChecks(output: Output, checks: readonly Check[], options: Options): void {
  const told = new Set<string>();
  for (const check of checks) {
    const { result, detail } = check;
    const alike = result === 'not-checked' ? checks.filter((one) => one.detail === detail).length : 1;
    if (alike <= MOST_ALIKE) printCheck(output, check, options);
    else if (!told.has(detail)) {
      told.add(detail);
      printCheck(output, { ...check, what: `${alike} checks, each for the same reason` }, options);
    }
  }
}

/** Widest line that reads well, where the terminal is wider. */
const WIDEST = 100;

function printCheck(output: Output, { what, result, detail }: Check, { brief }: Options): void {
  if (brief === true && (result === 'passed' || result === 'not-checked')) return;
  const [colour, mark] = MARK[result];
  const more = result === 'passed' ? '' : `: ${detail}`;
  printWrapped(output, what + more, {
    mark: `  ${mark}  `,
    widest: WIDEST,
    styleMark: (shown) => shown.replace(mark, output.style(colour, mark)),
  });
}
