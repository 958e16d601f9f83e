// Runs the benches beside this file, or those whose names hold a word that is given, each in a process of its own:
// what one holds in memory is no part of what another is measured to hold. Ends with 1 when one could not be run.
import { spawnSync } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

const wanted = process.argv.slice(2);
const files = (await readdir(import.meta.dirname))
  .filter((file) => file.endsWith('.js') && !file.endsWith('.worker.js') && file !== 'run.js')
  .filter((file) => wanted.length === 0 || wanted.some((word) => file.includes(word)))
  .sort();
if (files.length === 0) {
  console.error(`There is no bench named ${wanted.join(' or ')}.`);
  process.exitCode = 1;
}

for (const file of files) {
  const { status } = spawnSync(process.execPath, [join(import.meta.dirname, 'run.worker.js'), file], {
    stdio: 'inherit',
  });
  if (status !== 0) {
    console.error(`${file} could not be run.\n`);
    process.exitCode = 1;
  }
}
