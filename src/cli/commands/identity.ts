import { Command } from 'commander';
import type { IdentityReport } from '../../jobs/identity.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { escapeControls, type Output } from '../output.js';
import { type PassphraseOptions, readPassphrase } from '../passphrase.js';

interface Options extends PassphraseOptions {
  identity?: string;
  name?: string;
  replace?: boolean;
  beside?: boolean;
  json?: boolean;
}

export function identityCommand(context: CliContext): Command {
  return new Command('identity')
    .description('Make, use, show or renew the certificate that you sign with.')
    .addHelpText(
      'after',
      `
Examples:
  dossier identity make --name "Harrow Creek Transport"
  dossier identity use company.p12 --passphrase-file ~/.dossier-passphrase
  dossier identity show

A certificate that you made yourself proves that nothing was changed after
signing. Who signed, a stranger knows only from a copy of the certificate that
you gave by another way, or from an authority that issued it.`,
    )
    .addCommand(makeCommand(context))
    .addCommand(useCommand(context))
    .addCommand(showCommand(context))
    .addCommand(renewCommand(context));
}

function common(command: Command): Command {
  return command
    .option('--identity <folder>', 'its folder (default: DOSSIER_IDENTITY or .config/load-dossier)')
    .option('--json', 'the answer as JSON');
}

function withPassphrase(command: Command): Command {
  return common(command)
    .option('--passphrase-file <file>', 'file that holds the passphrase of the key')
    .option('--passphrase-fd <number>', 'open file descriptor to read it from');
}

function makeCommand({ output, now }: CliContext): Command {
  return withPassphrase(new Command('make'))
    .description('Make a key and a certificate of your own.')
    .option('--name <name>', 'name in the certificate (default: DOSSIER_BY or your account)')
    .option('--beside', 'also where there is one (its passphrase is lost): its files are kept')
    .addHelpText(
      'after',
      `
Example:
  dossier identity make --name "Harrow Creek Transport"

Nobody can open a key without its passphrase. Where it is lost, earlier
dossiers stay good; make a new identity with --beside, and tell those who know
the old certificate by another way. While you have the passphrase, renew
instead: the old key then signs that the new one follows it.`,
    )
    .action(async (options: Options) => {
      const { makeNewIdentity } = await import('../../jobs/identity.js');
      const made = await makeNewIdentity({
        folder: options.identity,
        name: resolveEnteredBy(options.name),
        now,
        passphrase: (isNew) => readPassphrase(options, isNew),
        beside: options.beside === true,
      });
      await print(output, made, options);
      if (options.json !== true)
        output.note(
          'Copy its folder to a safe place now, and keep the passphrase apart from it: without both nobody signs in this name again.',
        );
    });
}

function useCommand({ output, now }: CliContext): Command {
  return withPassphrase(new Command('use'))
    .description('Take in a key that an authority certified: PKCS#12, or PEM with its chain.')
    .argument('<files...>', 'one .p12 or .pfx file, or PEM files of key and certificates')
    .option('--replace', 'in the place of the identity that is there')
    .addHelpText(
      'after',
      `
Examples:
  dossier identity use company.p12
  dossier identity use key.pem certificate.pem chain.pem --replace

The passphrase opens what you give, and protects the key from then on.`,
    )
    .action(async (files: string[], options: Options) => {
      const { useGivenIdentity } = await import('../../jobs/identity.js');
      const used = await useGivenIdentity({
        folder: options.identity,
        files,
        replace: options.replace === true,
        now,
        passphrase: (isNew) => readPassphrase(options, isNew),
      });
      await print(output, used, options);
    });
}

function showCommand({ output, now }: CliContext): Command {
  return common(new Command('show'))
    .description('Say who signs, until when, and the hash that others compare.')
    .addHelpText('after', '\nExample:\n  dossier identity show --json')
    .action(async (options: Options) => {
      const { showOwnIdentity } = await import('../../jobs/identity.js');
      const shown = await showOwnIdentity(options.identity);
      await print(output, shown, options);
      const left = (Date.parse(shown.validTo) - now().getTime()) / 86_400_000;
      if (left < 0) output.note('It ran out. Renew it with: dossier identity renew');
      else if (left < 60) output.note(`It runs out in ${Math.floor(left)} days: dossier identity renew`);
    });
}

function renewCommand({ output, now }: CliContext): Command {
  return withPassphrase(new Command('renew'))
    .description('Make a new key and certificate of the same name; the old certificate is kept.')
    .addHelpText('after', '\nExample:\n  dossier identity renew')
    .action(async (options: Options) => {
      const { renewOwnIdentity } = await import('../../jobs/identity.js');
      const renewed = await renewOwnIdentity({
        folder: options.identity,
        now,
        passphrase: (isNew) => readPassphrase(options, isNew),
      });
      await print(output, renewed, options);
    });
}

async function print(output: Output, identity: IdentityReport, { json }: Options): Promise<void> {
  if (json === true) {
    output.json(identity);
    return;
  }
  output.line(`${escapeControls(identity.subject)}`);
  output.line(`Issued by ${escapeControls(identity.issuer)}, ${identity.authorities} more certificates`);
  output.line(`Valid ${identity.validFrom} to ${identity.validTo}, ${identity.key}`);
  output.line(`Certificate SHA-256 ${identity.certificateSha256}`);
  output.line(escapeControls(identity.certificateFile));
  if (identity.passphrase !== undefined) {
    const { strengthWords } = await import('../../signing/passphrase-strength.js');
    output.line(`The passphrase ${strengthWords(identity.passphrase)}`);
  }
  if (identity.succession !== undefined)
    output.note(
      `The old key signed that the new one follows it; give both to those who know the old certificate: ${escapeControls(identity.succession.statementFile)}, ${escapeControls(identity.succession.signatureFile)}`,
    );
  if (identity.oldCertificate !== undefined)
    output.note(
      `The old certificate is kept for the dossiers it signed: ${escapeControls(identity.oldCertificate)}`,
    );
}
