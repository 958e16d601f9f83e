import { sha256Of } from '../../core/ledger/tree.js';
import type { Sha256 } from '../../core/model/evidence.js';
import type { Instant } from '../../core/model/time.js';

/** A payload file by path, size and hash; the writer of the bag has its bytes. */
export interface PayloadFile {
  /** Path below `data/`, of plain ASCII names. */
  path: string;
  bytes: number;
  sha256: Sha256;
}

export interface BagFacts {
  /** Folder in the zip. */
  name: string;
  delivery: string;
  /** The fingerprint line of the record inside. */
  fingerprint: string;
  builtAt: Instant;
  tool: { name: string; version: string };
}

export interface BagPlan {
  /** Name and bytes of every tag file, in the order they are written. */
  tags: { name: string; bytes: Uint8Array }[];
  tagManifestSha256: Sha256;
  payloadBytes: number;
  payloadFiles: number;
}

const PATH = /^[A-Za-z0-9][A-Za-z0-9._-]*(?:\/[A-Za-z0-9][A-Za-z0-9._-]*)*$/;

/**
 * The tag files of a bag (BagIt 1.0, RFC 8493 §2) over a payload whose hashes are known, so that the hash of the
 * tag manifest can be signed before the bag itself is written.
 */
export function planBag(facts: BagFacts, payload: readonly PayloadFile[]): BagPlan {
  const bad = payload.find(({ path }) => !PATH.test(path));
  if (bad !== undefined) throw new Error(`not a path for a payload: ${bad.path}`);
  const payloadBytes = payload.reduce((sum, { bytes }) => sum + bytes, 0);
  const sorted = [...payload].sort((a, b) => (a.path < b.path ? -1 : 1));
  const tags = [
    // RFC 8493 §2.1.1: exactly these two lines.
    tag('bagit.txt', ['BagIt-Version: 1.0', 'Tag-File-Character-Encoding: UTF-8']),
    tag('bag-info.txt', [
      `Bagging-Date: ${facts.builtAt.slice(0, 10)}`,
      `Bag-Software-Agent: ${facts.tool.name} ${facts.tool.version}`,
      `External-Identifier: ${oneLine(facts.delivery)}`,
      `Payload-Oxum: ${payloadBytes}.${payload.length}`,
      `Record-Fingerprint: ${oneLine(facts.fingerprint)}`,
    ]),
    tag(
      'manifest-sha256.txt',
      sorted.map(({ path, sha256 }) => `${sha256}  data/${path}`),
    ),
  ];
  const listed = [...tags].sort((a, b) => (a.name < b.name ? -1 : 1));
  const last = tag(
    'tagmanifest-sha256.txt',
    listed.map(({ name, bytes }) => `${sha256Of(bytes)}  ${name}`),
  );
  return {
    tags: [...tags, last],
    tagManifestSha256: sha256Of(last.bytes),
    payloadBytes,
    payloadFiles: payload.length,
  };
}

function tag(name: string, lines: readonly string[]): { name: string; bytes: Uint8Array } {
  return { name, bytes: Buffer.from(lines.map((line) => `${line}\n`).join(''), 'utf8') };
}

/** A value of bag-info.txt in one line (RFC 8493 §2.2.2). */
function oneLine(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ');
}
