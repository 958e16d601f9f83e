// What people wait for before a command does anything: loading the program.
import { fileURLToPath } from 'node:url';
import { leastOf, measure } from './measuring/measure.js';

export const name = 'start of a command';
export const reference = 'bare Node, and what it may take over bare Node';

const MAIN = fileURLToPath(new URL('../../dist/program/dossier.js', import.meta.url));
const NOTHING = fileURLToPath(new URL('measuring/nothing.js', import.meta.url));
const ROUNDS = 9;
/** Seconds over bare Node. */
const MOST = 0.15;

export async function run() {
  const took = leastOf(
    {
      bare: () => measure([NOTHING]),
      version: () => measure([MAIN, '--version']),
      help: () => measure([MAIN, 'gaps', '--help']),
    },
    ROUNDS,
  );
  const { bare } = took;
  return [
    { what: '--version, time', unit: 's', own: took.version.seconds, reference: bare.seconds },
    { what: 'gaps --help, time', unit: 's', own: took.help.seconds, reference: bare.seconds },
    {
      what: `gaps --help, time over bare Node, against the ${MOST} s it may take`,
      unit: 's',
      own: took.help.seconds - bare.seconds,
      reference: MOST,
    },
    { what: 'gaps --help, processor time', unit: 's', own: took.help.cpuSeconds, reference: bare.cpuSeconds },
    { what: 'gaps --help, peak memory', unit: 'MB', own: took.help.megabytes, reference: bare.megabytes },
  ];
}
