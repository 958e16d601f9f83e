// Reads the EXIF of every JPEG in a folder, one after the other, as a plain script would.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import exifr from '#exifr';

const folder = process.argv[2] ?? '.';
for (const file of readdirSync(folder).filter((name) => name.endsWith('.jpg')))
  await exifr.parse(join(folder, file), { reviveValues: false }).catch(() => undefined);
