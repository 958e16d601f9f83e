import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, symlinkSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { z } from 'zod';

const ROOT = resolve(import.meta.dirname, '../..');

const lock = z
  .object({
    packages: z.record(
      z.string(),
      z.object({ dev: z.boolean().optional(), devOptional: z.boolean().optional() }),
    ),
  })
  .parse(JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')));

/** Lays a package that is installed here into a folder too. */
export function link(folder: string, path: string): void {
  if (!existsSync(join(ROOT, path))) return;
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  symlinkSync(join(ROOT, path), join(folder, path));
}

/** What somebody gets in a folder who installs the package: its files as npm packs them, and its dependencies alone. */
export function installPacked(folder: string): void {
  execFileSync('npm', ['pack', '--silent', '--pack-destination', folder], { cwd: ROOT });
  execFileSync('tar', ['xzf', 'load-dossier-0.1.0.tgz'], { cwd: folder });
  mkdirSync(join(folder, 'node_modules'));
  renameSync(join(folder, 'package'), join(folder, 'node_modules/load-dossier'));
  for (const [path, { dev, devOptional }] of Object.entries(lock.packages))
    if (path.startsWith('node_modules/') && path.lastIndexOf('node_modules/') === 0 && !dev && !devOptional)
      link(folder, path);
}
