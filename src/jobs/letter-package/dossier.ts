import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { EnclosedFile } from '../../compose/letters/input.js';
import { DossierError } from '../../core/model/error.js';
import { sha256 } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { DeliveryRecord } from '../../record/store.js';
import { type BuildReport, build } from '../build.js';
import { signedBy } from '../signing/signed-by.js';
import type { PackageContext } from './documents.js';
import type { PackedFile, Staging } from './files.js';
import type { LetterPackageInput } from './package-input.js';

/**
 * Builds the dossier that the kind of letter or the person asks for; a request for a copy is a request for the
 * dossier.
 */
export async function dossierFor(
  input: LetterPackageInput,
  { request, copy }: PackageContext,
  staging: Staging,
): Promise<BuildReport | undefined> {
  if (!(input.dossier ?? (input.for !== undefined || request.manner.enclosed))) return undefined;
  return build({
    folder: input.folder,
    by: input.by,
    now: input.now,
    out: staging.at('dossier.pdf'),
    paper: request.paper,
    for: copy,
    ...signedBy(input),
    progress: input.progress,
    signal: input.signal,
    ...omitUndefined({ maxSize: input.maxSize, templates: input.templates }),
  });
}

/** The letter's exhibits are numbered as the dossier's, so the record must not change between the two. */
export function requireUnchanged(record: DeliveryRecord, built: BuildReport | undefined): void {
  // The one additional entry notes the dossier.
  if (built === undefined || record.head.size === built.fingerprint.size + 1) return;
  throw new DossierError(
    'record-locked',
    'something else entered the record while the answer was put together',
    {
      where: { file: record.folder },
      fix: 'Run the command again when nothing else works on this delivery.',
    },
  );
}

/** The dossier and its bag as files of the package. */
export async function builtFiles(built: BuildReport | undefined): Promise<PackedFile[]> {
  if (built === undefined) return [];
  const { file, bytes, bag } = built;
  return [
    { name: basename(file), what: 'dossier', bytes, sha256: sha256.parse(built.sha256) },
    ...(bag === undefined ? [] : [await hashed(bag.file)]),
  ];
}

async function hashed(file: string): Promise<PackedFile> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 20 })) hash.update(chunk);
  const { size } = await stat(file);
  return { name: basename(file), what: 'bag', bytes: size, sha256: sha256.parse(hash.digest('hex')) };
}

/** A file as the letter lists it. */
export function enclosed({ name, what, bytes, sha256: digest }: PackedFile): EnclosedFile {
  return { name, what: what === 'bag' ? 'bag' : 'dossier', bytes, sha256: digest };
}
