// Scales every JPEG in a folder to a size and quality, two at a time, and keeps nothing.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

sharp.concurrency(1);
const [folder = '.', longest = '1600', quality = '82'] = process.argv.slice(2);
const files = readdirSync(folder).values();
let bytes = 0;
const work = async () => {
  for (const file of files) {
    const made = await sharp(join(folder, file))
      .autoOrient()
      .resize({ width: Number(longest), height: Number(longest), fit: 'inside' })
      .jpeg({ quality: Number(quality), mozjpeg: true })
      .toBuffer();
    bytes += made.length;
  }
};
await Promise.all([work(), work()]);
console.log(JSON.stringify({ bytes }));
