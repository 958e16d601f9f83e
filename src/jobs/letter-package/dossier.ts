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
    ...omitUndefined({ maxSize: input.maxSize, templates: input.templates, originals: input.originals }),
  });
}

/**
 * Builds the assessment of the dossier that goes with a letter, where it is asked for.
 * @throws DossierError bad-usage when no dossier goes along
 */
export async function assessmentFor(
  input: LetterPackageInput,
  { request, copy }: PackageContext,
  staging: Staging,
  dossier: BuildReport | undefined,
): Promise<BuildReport | undefined> {
  if (input.assessment !== true) return undefined;
  if (dossier === undefined)
    throw new DossierError('bad-usage', 'an assessment goes with the dossier whose exhibits it names', {
      where: { field: '--assessment' },
      fix: 'Leave out --no-dossier, or --assessment.',
    });
  return build({
    folder: input.folder,
    by: input.by,
    now: input.now,
    out: staging.at('assessment.pdf'),
    paper: request.paper,
    for: copy,
    assessment: true,
    ...signedBy(input),
    progress: input.progress,
    signal: input.signal,
    ...omitUndefined({ templates: input.templates, originals: input.originals }),
  });
}

/** The letter's exhibits are numbered as the dossier's, so the record must not change between the two. */
export function requireUnchanged(
  record: DeliveryRecord,
  volumes: readonly (BuildReport | undefined)[],
): void {
  const built = volumes.filter((one) => one !== undefined);
  const [first] = built;
  // One additional entry notes each.
  if (first === undefined || record.head.size === first.fingerprint.size + built.length) return;
  throw new DossierError(
    'record-locked',
    'something else entered the record while the answer was put together',
    {
      where: { file: record.folder },
      fix: 'Run the command again when nothing else works on this delivery.',
    },
  );
}

/** The dossier and its bag, or the assessment, as files of the package. */
export async function builtFiles(built: BuildReport | undefined): Promise<PackedFile[]> {
  if (built === undefined) return [];
  const { volume, file, bytes, bag } = built;
  return [
    { name: basename(file), what: volume, bytes, sha256: sha256.parse(built.sha256) },
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
  return { name, what: what === 'bag' || what === 'assessment' ? what : 'dossier', bytes, sha256: digest };
}
