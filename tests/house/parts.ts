import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { z } from 'zod';

const ROOT = resolve(import.meta.dirname, '../..');
const manifest = z
  .object({ exports: z.record(z.string(), z.union([z.string(), z.object({ default: z.string() })])) })
  .parse(JSON.parse(readFileSync(resolve(ROOT, 'package.json'), 'utf8')));

/** The parts of the library, by the names that others import them under, each with its file in src. */
export const PARTS = Object.entries(manifest.exports).flatMap(([path, target]) =>
  typeof target === 'string'
    ? []
    : [
        {
          name: path.replace(/^\./, 'load-dossier'),
          file: target.default.replace(/^\.\/dist\/|\.js$/g, ''),
        },
      ],
);
