import { sha256OfLarge } from '../ledger/tree.js';
import { type Attachment, MANIFEST_NAME, type Manifest, manifest } from '../model/manifest.js';
import { readCanonical } from './canonical-json.js';
import type { CheckResults } from './check-results.js';
import { requireSafePath } from './container/container.js';
import { Malformed, refuse } from './malformed.js';
import { type EmbeddedFile, embeddedFiles } from './pdf/attachments.js';
import type { PdfFile } from './pdf/file.js';
import { type PagePicture, picturesOf } from './pdf/pictures.js';
import { activeParts } from './pdf/raw-pdf.js';

/** Bytes that all attachments together may unpack to: a dossier is made to be sent by e-mail. */
const MOST_UNPACKED = 256 * 1024 * 1024;
const MOST_MANIFEST = 64 * 1024 * 1024;

/** The manifest, and the bytes of those attachments that further checks read. */
export interface DossierContents {
  manifest: Manifest;
  bytesOf: (what: Attachment['what']) => Uint8Array | undefined;
  /** The bytes of an attachment of this name; undefined when they cannot be unpacked to the listed size. */
  attached: (name: string) => Promise<Uint8Array | undefined>;
  /** The pictures of the file; undefined when the pages cannot be read, which fails a check. */
  pictures: readonly PagePicture[] | undefined;
}

/** Checks the attachments against the manifest. */
export async function checkAttachments(
  file: PdfFile,
  results: CheckResults,
): Promise<DossierContents | undefined> {
  const embedded = results.attempt(
    'attachments.list',
    () => embeddedFiles(file),
    (all) => `${all.length} attachments`,
  );
  if (embedded === undefined) return undefined;
  const read = await results.attemptLater(
    'manifest.present',
    () => readManifest(embedded),
    (m) =>
      `${m.attachments.length} attachments, ${m.exhibits.length} exhibits, ${m.record.size} ledger entries`,
  );
  if (read === undefined) return undefined;
  compareNames(embedded, read, results);
  return {
    manifest: read,
    bytesOf: await compareBytes(embedded, read, results),
    attached: reader(embedded, read),
    pictures: await results.attemptLater(
      'plates.listed',
      () => picturesOf(file),
      (all) => `${all.length} pictures`,
    ),
  };
}

function reader(embedded: readonly EmbeddedFile[], { attachments }: Manifest): DossierContents['attached'] {
  return async (name) => {
    const listed = attachments.find((one) => one.name === name);
    const found = embedded.find((one) => one.name === name);
    if (listed === undefined || found === undefined) return undefined;
    try {
      return await found.read(Math.min(listed.bytes, MOST_UNPACKED));
    } catch (error) {
      if (error instanceof Malformed) return undefined;
      throw error;
    }
  };
}

async function readManifest(embedded: readonly EmbeddedFile[]): Promise<Manifest> {
  const own =
    embedded.find(({ name }) => name === MANIFEST_NAME) ??
    refuse(`nothing named ${MANIFEST_NAME} is attached`);
  const value = readCanonical(await own.read(MOST_MANIFEST), 'the manifest');
  const read = manifest.safeParse(value, { jitless: true });
  if (read.success) return read.data;
  const [first] = read.error.issues;
  return refuse(`the manifest is not what it should be: ${first?.path.join('.')}: ${first?.message}`);
}

function compareNames(embedded: readonly EmbeddedFile[], read: Manifest, results: CheckResults): void {
  const inside = new Set(embedded.map(({ name }) => name));
  const listed = new Set<string>();
  const wrong: string[] = [];
  for (const { name } of read.attachments) {
    if (listed.has(name)) wrong.push(`${name} is listed twice`);
    if (!inside.has(name)) wrong.push(`${name} is missing`);
    listed.add(name);
  }
  if (listed.has(MANIFEST_NAME)) wrong.push('the manifest lists itself');
  wrong.push(...lookAlikes(inside), ...wrongRoles(read));
  for (const name of inside)
    if (name !== MANIFEST_NAME && !listed.has(name)) wrong.push(`${name} is not in the manifest`);
  results.failIf('attachments.complete', wrong, `all ${listed.size} are inside, and no other`);
}

/** Attachment names that some disks take for one, or for a device: extracted, one would replace the other (CWE-178). */
function lookAlikes(names: Iterable<string>): string[] {
  const seen = new Set<string>();
  const wrong: string[] = [];
  for (const name of names)
    try {
      requireSafePath(name, seen);
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      wrong.push(error.message);
    }
  return wrong;
}

/** Requires the usual name of each kind of attachment: a person who checks by hand opens the file of that name. */
const ROLE_NAMES: Partial<Record<Attachment['what'], string>> = {
  ledger: 'ledger.jsonl',
  'delivery-facts': 'delivery.yaml',
  'rule-set': 'rule-set.yaml',
};

function wrongRoles({ attachments }: Manifest): string[] {
  const wrong: string[] = [];
  for (const [what, name] of Object.entries(ROLE_NAMES)) {
    const inRole = attachments.filter((one) => one.what === what);
    if (inRole.length > 1)
      wrong.push(`${inRole.map((one) => one.name).join(' and ')} are both listed as ${what}`);
    for (const one of inRole)
      if (one.name !== name) wrong.push(`${one.name} is listed as ${what}, which is always ${name}`);
    const other = attachments.find((one) => one.name === name && one.what !== what);
    if (other !== undefined) wrong.push(`${name} is listed as ${other.what}`);
  }
  return wrong;
}

async function compareBytes(
  embedded: readonly EmbeddedFile[],
  read: Manifest,
  results: CheckResults,
): Promise<DossierContents['bytesOf']> {
  const byName = new Map(embedded.map((one) => [one.name, one]));
  const kept = new Map<Attachment['what'], Uint8Array>();
  const wrong: string[] = [];
  const active: string[] = [];
  let room = MOST_UNPACKED;
  for (const listed of read.attachments) {
    const found = byName.get(listed.name);
    if (found === undefined) continue;
    try {
      const bytes = await found.read(Math.min(listed.bytes, room));
      room -= bytes.length;
      if (bytes.length !== listed.bytes)
        wrong.push(`${listed.name} has ${bytes.length} bytes instead of ${listed.bytes}`);
      else if ((await sha256OfLarge(bytes)) !== listed.sha256)
        wrong.push(`${listed.name} is not the file that was listed`);
      else if (listed.what === 'original') {
        const parts = activeParts(bytes);
        if (parts.length > 0) active.push(`${listed.name} has ${parts.join(', ')}`);
      }
      // Further checks read only attachments whose hash is the listed one, and the first where several are of a kind.
      else if (!kept.has(listed.what)) kept.set(listed.what, bytes);
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      wrong.push(error.message);
    }
  }
  results.failIf('attachments.bytes', wrong, `${read.attachments.length} files have their size and hash`);
  results.noteIf(
    'exhibits.active-content',
    active.map((words) => `${words}; it is evidence as it came, and opening it is at your own risk`),
    'none found in what is not packed',
  );
  return (what) => kept.get(what);
}
