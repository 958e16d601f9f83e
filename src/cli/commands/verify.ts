import { Command } from 'commander';
import type { Verification } from '../../model/verification.js';
import { EXIT } from '../exit.js';
import { type Output, printable } from '../output.js';
import type { CliContext } from '../program.js';

interface Options {
  trust?: string[];
  requireTrust?: boolean;
  json?: boolean;
}

export function verifyCommand({ output, exit }: CliContext): Command {
  return new Command('verify')
    .description('Check a dossier: signature, whole file, attachments, ledger. No trust in whoever made it.')
    .argument('<files...>', 'dossier PDFs')
    .option('--trust <certificates...>', 'certificates (PEM or DER) of signers that you vouch for')
    .option('--require-trust', 'an intact dossier of a signer not vouched for is a no')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Examples:
  dossier verify dossier.pdf
  dossier verify dossier.pdf --trust carrier.crt.pem --require-trust

Exits with 1 when anything fails. What it can't show: that what was recorded is true.`,
    )
    .action(async (files: string[], options: Options) => {
      const { verifyFile } = await import('../../jobs/verify.js');
      const answers = [];
      for (const file of files) {
        const verification = await verifyFile(file, options.trust ?? []);
        answers.push({ file, ...verification });
        const sound =
          verification.verdict === 'intact' ||
          (verification.verdict === 'intact-signer-not-vouched-for' && options.requireTrust !== true);
        if (!sound) exit(EXIT.no);
        if (options.json !== true) printVerification(output, file, verification);
      }
      if (options.json === true) output.json(files.length > 1 ? answers : answers[0]);
    });
}

const VERDICT = {
  intact: ['green', 'INTACT'],
  'intact-signer-not-vouched-for': ['yellow', 'INTACT, SIGNER NOT VOUCHED FOR'],
  broken: ['red', 'BROKEN'],
} as const;

function printVerification(
  output: Output,
  file: string,
  { verdict, checks, signer, fingerprint }: Verification,
): void {
  const [colour, words] = VERDICT[verdict];
  output.line(`${printable(file)}: ${output.style(colour, words)}`);
  for (const check of checks) {
    const mark = { passed: 'ok', failed: 'FAILED', notice: 'note', 'not-checked': 'not checked' }[
      check.result
    ];
    const detail = check.result === 'passed' ? '' : `: ${check.detail}`;
    output.line(
      `  ${output.style(check.result === 'failed' ? 'red' : 'dim', mark)}  ${printable(check.what + detail)}`,
    );
  }
  if (signer !== undefined) {
    output.line(`Signed by ${printable(signer.name)}`);
    output.line(`Certificate SHA-256 ${signer.certificateSha256}`);
    if (signer.claimedTime !== undefined)
      output.line(`Signed at ${signer.claimedTime} by the signer's own clock`);
  }
  if (fingerprint !== undefined)
    output.line(`Fingerprint ${printable(fingerprint.delivery)} ${fingerprint.size} ${fingerprint.root}`);
  if (verdict === 'intact-signer-not-vouched-for')
    output.note(
      'Ask the signer by another way for the certificate and compare its SHA-256, then: --trust FILE',
    );
}
