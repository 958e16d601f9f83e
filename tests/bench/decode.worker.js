// Decodes every JPEG in a folder once to 512 pixels, two at a time: the least that tells whether it is whole.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

sharp.concurrency(1);
sharp.cache(false);
const folder = process.argv[2] ?? '.';
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.jpg'))
  .values();
const work = async () => {
  for (const file of files)
    await sharp(join(folder, file), { failOn: 'truncated' })
      .resize(512, 512, { fit: 'inside' })
      .raw()
      .toBuffer()
      .catch(() => undefined);
};
await Promise.all([work(), work()]);
