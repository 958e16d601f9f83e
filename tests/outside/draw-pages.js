// Draws the first pages of PDF files as a dossier shows them, and says the SHA-256 of each picture.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { PageRenderer } from '../../dist/compose/document-images/painter.js';

const renderer = new PageRenderer();
for (const file of process.argv.slice(2)) {
  const drawn = await renderer.paint(readFileSync(file), 2, 1600);
  if (drawn.is !== 'drawn') throw new Error(`${file} is not drawn: ${JSON.stringify(drawn)}`);
  for (const { bytes } of drawn.pages) console.log(createHash('sha256').update(bytes).digest('hex'));
}
renderer.close();
