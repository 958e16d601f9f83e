import { sha256Of } from '../../ledger/tree.js';
import { isSameBytes, utf8Bytes } from '../../model/bytes.js';
import type { Sha256 } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { CheckResults } from '../check-results.js';
import { type Container, hashOf, readWhole } from '../container/container.js';
import {
  checkRecordFiles,
  type RecordFilesOptions,
  type RecordFindings,
} from '../delivery-record/check-record-files.js';
import { Malformed, refuse } from '../malformed.js';
import { readInfo, readManifest, requireDeclaration } from './read-bag.js';

const MOST_TAG = 64 * 1024 * 1024;
const PAYLOAD_MANIFEST = 'manifest-sha256.txt';
const TAG_MANIFEST = 'tagmanifest-sha256.txt';

export interface BagFindings {
  record?: RecordFindings;
  tagManifestSha256?: Sha256;
}

/** Checks a bag (BagIt 1.0, RFC 8493 §3) and the record that its payload is. */
export async function checkBag(
  outer: Container,
  results: CheckResults,
  options: RecordFilesOptions,
): Promise<BagFindings> {
  const container = await results.attemptLater(
    'bag.container',
    async () => inBag(outer),
    () => `${outer.files.size} files`,
  );
  if (container === undefined) return {};
  const tagBytes = (name: string) =>
    readWhole(container.files.get(name) ?? refuse(`there is no ${name}`), MOST_TAG, name);
  await results.attemptLater(
    'bag.declaration',
    async () => requireDeclaration(await tagBytes('bagit.txt')),
    () => 'version 1.0',
  );
  const tagManifest = await checkTags(container, results, tagBytes);
  const payload = await results.attemptLater(
    'bag.complete',
    async () => readComplete(container, readManifest(await tagBytes(PAYLOAD_MANIFEST), PAYLOAD_MANIFEST)),
    (all) => `${all.size} files`,
  );
  const hashes =
    payload === undefined ? new Map<string, Sha256>() : await checkPayload(container, payload, results);
  await results.attemptLater(
    'bag.oxum',
    async () => requireOxum(container, readInfo(await tagBytes('bag-info.txt')).get('payload-oxum')),
    (said) => said,
  );
  const record = await checkRecordFiles({ container, below: 'data/', hashes }, results, options);
  return {
    ...omitUndefined({ record, tagManifestSha256: tagManifest }),
  };
}

/** The bag's own folder: the top, or the one folder that a zip holds. */
function inBag(outer: Container): Container {
  if (outer.files.has('bagit.txt')) return outer;
  const tops = new Set([...outer.files.keys()].map((path) => path.split('/')[0] ?? ''));
  const [top, second] = tops;
  if (top === undefined || second !== undefined || !outer.files.has(`${top}/bagit.txt`))
    return refuse('it is not one folder with a bagit.txt in it');
  const files = new Map([...outer.files].map(([path, file]) => [path.slice(top.length + 1), file]));
  return { files, close: outer.close };
}

async function checkTags(
  container: Container,
  results: CheckResults,
  tagBytes: (name: string) => Promise<Uint8Array>,
): Promise<Sha256 | undefined> {
  try {
    const bytes = await tagBytes(TAG_MANIFEST);
    const listed = readManifest(bytes, TAG_MANIFEST);
    const wrong: string[] = [];
    if (container.files.has('fetch.txt'))
      wrong.push('it has files elsewhere (fetch.txt), which are not fetched');
    for (const [name, hash] of listed) {
      const file = container.files.get(name);
      if (file === undefined || name.startsWith('data/')) wrong.push(`${name} is listed and not there`);
      else if ((await hashOf(file)).sha256 !== hash) wrong.push(`${name} was changed`);
    }
    for (const name of container.files.keys())
      if (!name.startsWith('data/') && name !== TAG_MANIFEST && !listed.has(name))
        wrong.push(`${name} is not listed`);
    results.failIf('bag.tags', wrong, `${listed.size} tag files`);
    // Only a signed dossier holds the hash of the tag manifest: in a bag alone, a capital digit or a space too many
    // would go unseen.
    const written = [...listed].map(([name, hash]) => `${hash}  ${name}\n`).join('');
    if (wrong.length === 0 && !isSameBytes(bytes, utf8Bytes(written)))
      results.notice(
        'bag.tags',
        `${listed.size} tag files; ${TAG_MANIFEST} says so in another writing than bags are made with (capital digits, spaces, line ends)`,
      );
    return sha256Of(bytes);
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    results.fail('bag.tags', error.message);
    return undefined;
  }
}

/** Requires exactly the payload files that the manifest lists (a complete bag, RFC 8493 §3). */
function readComplete(container: Container, listed: Map<string, Sha256>): Map<string, Sha256> {
  const wrong = [...listed.keys()].flatMap((path) => {
    if (!path.startsWith('data/')) return [`${path} is listed and no payload`];
    return container.files.has(path) ? [] : [`${path} is missing`];
  });
  for (const path of container.files.keys())
    if (path.startsWith('data/') && !listed.has(path)) wrong.push(`${path} is not listed`);
  return wrong.length === 0 ? listed : refuse(wrong.slice(0, 20).join('; '));
}

async function checkPayload(
  container: Container,
  listed: ReadonlyMap<string, Sha256>,
  results: CheckResults,
): Promise<Map<string, Sha256>> {
  const hashes = new Map<string, Sha256>();
  const wrong: string[] = [];
  for (const [path, said] of listed) {
    const file = container.files.get(path);
    if (file === undefined) continue;
    try {
      const { sha256, bytes } = await hashOf(file);
      hashes.set(path, sha256);
      if (sha256 !== said || bytes !== file.bytes) wrong.push(`${path} was changed`);
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      wrong.push(`${path} ${error.message}`);
    }
  }
  results.failIf('bag.payload', wrong, `${hashes.size} files`);
  return hashes;
}

function requireOxum(container: Container, said: string | undefined): string {
  if (said === undefined) return 'none is stated';
  const payload = [...container.files].filter(([path]) => path.startsWith('data/'));
  const actual = `${payload.reduce((sum, [, { bytes }]) => sum + bytes, 0)}.${payload.length}`;
  return actual === said ? said : refuse(`it states ${said}, and the payload is ${actual}`);
}
