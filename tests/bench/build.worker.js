// Builds the dossier of a delivery in a process of its own, and says how it came out.
import { readFileSync } from 'node:fs';
import { build } from '../../dist/jobs/build.js';

const [folder = '', identityFolder = ''] = process.argv.slice(2);
const report = await build({
  folder,
  by: 'Bench',
  now: () => new Date(),
  out: undefined,
  paper: undefined,
  identityFolder,
  passphrase: async () => 'of-a-bench-that-forgets-it',
  progress: () => undefined,
});
const { longest, quality } = report.sizing.picture;
console.log(
  JSON.stringify({
    longest,
    quality,
    pages: report.pages,
    bytes: readFileSync(report.file).length,
  }),
);
