import { fromBase64, fromHex, toBase64, toHex } from '../model/bytes.js';
import { type Sha256, sha256 } from '../model/evidence.js';

/** The head of a record: the number of entries and the tree hash over them. */
export interface Checkpoint {
  /** The delivery's name when its record began; the record keeps it. */
  delivery: string;
  size: number;
  root: Sha256;
}

const ORIGIN = 'load-dossier/';
const SIZE = /^(0|[1-9]\d{0,14})$/;

/**
 * The note text of C2SP tlog-checkpoint: origin, size, base64 root, each on a line of its own. It carries no
 * signature: the dossier's signature and the fingerprints sent out attest it.
 */
export function printCheckpoint(head: Checkpoint): string {
  const root = toBase64(fromHex(head.root));
  return `${ORIGIN}${head.delivery}\n${head.size}\n${root}\n`;
}

/** Parses the output of `printCheckpoint`; undefined when a single byte differs from that form. */
export function parseCheckpoint(text: string): Checkpoint | undefined {
  const [origin = '', size = '', root = ''] = text.split('\n');
  const hash = sha256.safeParse(toHex(fromBase64(root) ?? new Uint8Array()));
  if (!origin.startsWith(ORIGIN) || origin.length === ORIGIN.length) return undefined;
  if (!SIZE.test(size) || !hash.success) return undefined;
  const head = { delivery: origin.slice(ORIGIN.length), size: Number(size), root: hash.data };
  return printCheckpoint(head) === text ? head : undefined;
}

/**
 * The fingerprint line, which can be sent to someone and later proves that nothing was changed: `<delivery> <size>
 * <root hex>`.
 */
export function printFingerprint(head: Checkpoint): string {
  return `${head.delivery} ${head.size} ${head.root}`;
}

/** Parses a fingerprint line, ignoring surrounding spaces; undefined for any other text. */
export function parseFingerprint(text: string): Checkpoint | undefined {
  const match = /^(.+) (0|[1-9]\d{0,14}) ([0-9a-f]{64})$/i.exec(text.trim());
  if (match === null) return undefined;
  const [, delivery = '', size = '', root = ''] = match;
  return { delivery, size: Number(size), root: sha256.parse(root.toLowerCase()) };
}
