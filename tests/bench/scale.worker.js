// Scales every JPEG in a folder to a size and quality, two at a time, and keeps nothing: with the settings that the
// library has for small files, or with those that the dossier's own pictures have.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { CODING } from '../../dist/compose/pictures.js';

sharp.concurrency(1);

const [folder = '.', longest = '1600', quality = '82', coding = 'preset'] = process.argv.slice(2);
const files = readdirSync(folder).values();
let bytes = 0;
const work = async () => {
  for (const file of files) {
    const made = await sharp(join(folder, file))
      .autoOrient()
      .resize({ width: Number(longest), height: Number(longest), fit: 'inside' })
      .jpeg({ quality: Number(quality), ...(coding === 'preset' ? { mozjpeg: true } : CODING) })
      .toBuffer();
    bytes += made.length;
  }
};
await Promise.all([work(), work()]);
console.log(JSON.stringify({ bytes }));
