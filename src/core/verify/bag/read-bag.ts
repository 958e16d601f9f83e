import { type Sha256, sha256 } from '../../model/evidence.js';
import { unsafePath } from '../container/container.js';
import { refuse } from '../malformed.js';

/**
 * Reads a manifest of a bag (RFC 8493 §2.1.3): hash and path by path.
 * @throws Malformed for a line of another form, a path that leaves the bag, or a path listed twice
 */
export function readManifest(bytes: Uint8Array, name: string): Map<string, Sha256> {
  const found = new Map<string, Sha256>();
  for (const line of textOf(bytes, name).split(/\r\n|\n|\r/)) {
    if (line === '') continue;
    const match = /^([0-9a-fA-F]{64})[ \t]+\*?(.+)$/.exec(line);
    if (match === null) refuse(`${name}: a line that is no hash and path`);
    const path = decode(match[2] ?? '');
    const why = unsafePath(path);
    if (why !== undefined) refuse(`${name}: ${why}: ${JSON.stringify(path.slice(0, 100))}`);
    if (found.has(path)) refuse(`${name}: ${JSON.stringify(path)} stands twice`);
    found.set(path, sha256.parse((match[1] ?? '').toLowerCase()));
  }
  return found;
}

/** RFC 8493 §2.1.3: line feed, carriage return and percent sign stand as %0A, %0D and %25; nothing else is decoded. */
function decode(path: string): string {
  return path.replace(/%(0A|0D|25)/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}

/** Values of bag-info.txt by label (RFC 8493 §2.2.2); continued lines are joined. @throws Malformed */
export function readInfo(bytes: Uint8Array): Map<string, string> {
  const found = new Map<string, string>();
  let label: string | undefined;
  for (const line of textOf(bytes, 'bag-info.txt').split(/\r\n|\n|\r/)) {
    if (line === '') continue;
    if (/^[ \t]/.test(line) && label !== undefined) {
      found.set(label, `${found.get(label) ?? ''} ${line.trim()}`);
      continue;
    }
    const at = line.indexOf(':');
    if (at <= 0) refuse('bag-info.txt: a line without a label');
    label = line.slice(0, at).toLowerCase();
    found.set(label, line.slice(at + 1).trim());
  }
  return found;
}

/** Requires the declaration of BagIt 1.0 in UTF-8 (RFC 8493 §2.1.1). @throws Malformed for any other */
export function requireDeclaration(bytes: Uint8Array): void {
  if (
    !/^BagIt-Version: 1\.0\r?\nTag-File-Character-Encoding: UTF-8(?:\r?\n)?$/.test(textOf(bytes, 'bagit.txt'))
  )
    refuse('bagit.txt does not declare version 1.0 in UTF-8');
}

function textOf(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return refuse(`${name} is not UTF-8 text`);
  }
}
