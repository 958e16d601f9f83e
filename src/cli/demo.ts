import { randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { terminalOutput } from './output.js';
import { runCli } from './program.js';

/**
 * The whole job on an invented delivery, with the commands that a user would type:
 * new, collect, gaps, temps, build, verify, and build --assessment; then one byte of a copy is changed and verify must refuse it.
 */
const FIXTURES = fileURLToPath(new URL('../../fixtures/demo/', import.meta.url));
const FOLDER = 'demo-output';
const output = terminalOutput();

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER);
process.env.DOSSIER_IDENTITY = join(FOLDER, 'identity');
process.env.DOSSIER_PASSPHRASE = randomBytes(18).toString('base64url');
process.env.DOSSIER_BY = 'Demonstration';
const delivery = join(FOLDER, 'delivery');
const fixtures = relative('.', FIXTURES);

await step(0, 'new', delivery, '--file', join(fixtures, 'delivery.yaml'));
await step(0, 'collect', join(fixtures, 'evidence'), '-d', delivery);
await step(1, 'gaps', delivery);
await step(0, 'temps', delivery);
await step(0, 'build', '-d', delivery);
const dossier = join(delivery, 'dossiers', readdirSync(join(delivery, 'dossiers'))[0] ?? '');
await step(0, 'verify', dossier);
await step(0, 'build', '--assessment', '-d', delivery);

const changed = join(FOLDER, 'one-byte-changed.pdf');
const bytes = readFileSync(dossier);
const middle = bytes.length >> 1;
bytes.writeUInt8(bytes.readUInt8(middle) ^ 1, middle);
writeFileSync(changed, bytes);
output.line(`\nOne byte of a copy was changed, at ${middle} of ${bytes.length}: ${changed}`);
await step(1, 'verify', changed);

output.line('');
output.line(`The dossier: ${dossier}`);

/** Runs one command line and stops the demonstration when it ends with another exit code. */
async function step(expected: number, ...args: string[]): Promise<void> {
  output.line(`\n$ dossier ${args.join(' ')}`);
  const code = await runCli(args, output);
  if (code === expected) return;
  output.note(`The demonstration stops: "dossier ${args[0]}" ended with ${code}, not ${expected}.`);
  process.exit(1);
}
