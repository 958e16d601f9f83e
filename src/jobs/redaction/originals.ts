import exifr from '#exifr';
import type { Sha256 } from '../../core/model/evidence.js';
import type { OmittedOriginal } from '../../core/model/manifest.js';
import type { EvidenceItem, RecordState } from '../../core/model/state.js';
import type { RedactedCopy } from './read.js';
import type { Redaction } from './redact.js';

type Why = OmittedOriginal['why'];

/**
 * Originals that a copy must not carry, and why: of redacted or blacked-out evidence, with coordinates where the
 * copy has none, and archives and e-mails that hold any such file.
 * @param state the whole record's
 * @param read bytes of an original
 */
export async function withheldOriginals(
  state: RecordState,
  redaction: Redaction,
  copy: RedactedCopy,
  read: (sha256: Sha256) => Promise<Uint8Array>,
): Promise<Map<Sha256, Why>> {
  const not = new Map<Sha256, Why>();
  const filed = state.evidence.filter((item) => 'file' in item);
  for (const item of filed) {
    const why = await reason(item, redaction, copy, read);
    if (why !== undefined) not.set(item.file.sha256, why);
  }
  // The container of a redacted file holds its bytes; archives can hold archives.
  for (let before = -1; before !== not.size; ) {
    before = not.size;
    for (const item of filed) {
      const holder = filed.find((other) => other.evidence === item.within?.evidence);
      const why = not.get(item.file.sha256);
      if (holder !== undefined && why !== undefined && !not.has(holder.file.sha256))
        not.set(holder.file.sha256, why);
    }
  }
  return not;
}

async function reason(
  item: Extract<EvidenceItem, { file: unknown }>,
  redaction: Redaction,
  copy: RedactedCopy,
  read: (sha256: Sha256) => Promise<Uint8Array>,
): Promise<Why | undefined> {
  if (redaction.evidence.has(item.evidence)) return 'withheld';
  if ((item.blackOut ?? []).length > 0) return 'blacked-out';
  if (copy.positions) return undefined;
  if (redaction.entryOnly.has(item.evidence) || item.place?.gps !== undefined) return 'position';
  return (await mayHoldPosition(await read(item.file.sha256), item.file.type)) ? 'position' : undefined;
}

/**
 * Whether a file may reveal where it was made. A picture with unreadable data may, and is withheld. Other files are
 * searched for pictures with camera data.
 */
async function mayHoldPosition(bytes: Uint8Array, type: string): Promise<boolean> {
  if (bytes.length === 0) return false;
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  if (buffer.includes('GPSLatitude')) return true;
  if (!type.startsWith('image/')) return buffer.includes('Exif\0\0');
  try {
    const found: unknown = await exifr.parse(buffer, {
      tiff: true,
      gps: true,
      mergeOutput: false,
      reviveValues: false,
      translateKeys: false,
      translateValues: false,
    });
    if (found === undefined || found === null) return false;
    return typeof found !== 'object' || 'gps' in found || 'errors' in found;
  } catch {
    return true;
  }
}
