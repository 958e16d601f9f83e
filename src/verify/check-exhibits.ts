import type { EntryOf } from '../model/entry.js';
import type { Manifest } from '../model/manifest.js';
import type { Contents } from './check-attachments.js';
import type { Checklist } from './checklist.js';
import { entriesOf, type LedgerLine } from './ledger/read-ledger.js';

/** Holds the exhibits against the ledger entries that they name, and the ledger against the list. */
export function checkExhibits(manifest: Manifest, lines: readonly LedgerLine[], list: Checklist): void {
  const wrong = manifest.exhibits.flatMap((exhibit) => {
    const line = lines[exhibit.seq];
    const name = `exhibit ${exhibit.exhibit}`;
    if (line?.is === 'left-out') return [`${name}: ledger entry ${exhibit.seq} is left out of this copy`];
    const source = line?.entry;
    if (source?.type !== 'evidence-received' && source?.type !== 'reading-recorded')
      return [`${name}: ledger entry ${exhibit.seq} is no evidence`];
    if (source.body.evidence !== exhibit.evidence || source.body.kind !== exhibit.kind)
      return [`${name}: ledger entry ${exhibit.seq} is other evidence`];
    const file = source.type === 'evidence-received' ? source.body.file : undefined;
    const same = file?.sha256 === exhibit.file?.sha256 && file?.bytes === exhibit.file?.bytes;
    return same ? [] : [`${name}: the ledger received another file`];
  });
  const numbers = manifest.exhibits.map(({ exhibit }) => exhibit);
  if (new Set(numbers).size !== numbers.length) wrong.push('two exhibits have the same number');
  list.judge('exhibits.ledger', wrong, `${numbers.length} exhibits`);
  const listed = new Set([
    ...manifest.exhibits.flatMap(({ file }) => (file === undefined ? [] : [file.sha256])),
    ...manifest.leftOut.map(({ sha256 }) => sha256),
  ]);
  const received = entriesOf(lines).filter(
    (one): one is EntryOf<'evidence-received'> => one.type === 'evidence-received',
  );
  list.judge(
    'exhibits.complete',
    received
      .filter(({ body }) => !listed.has(body.file.sha256))
      .map(
        ({ seq, body }) =>
          `${body.evidence} (ledger entry ${seq}) is neither an exhibit nor listed as left out`,
      ),
    `${received.length} files received`,
  );
}

/** Looks for the original of every exhibit that is a file. */
export function checkOriginals(manifest: Manifest, list: Checklist): void {
  const leftOut = new Set(manifest.leftOut.map(({ sha256 }) => sha256));
  const byName = new Map(manifest.attachments.map((one) => [one.name, one]));
  const wrong = manifest.exhibits.flatMap(({ exhibit, file, attachedAs }) => {
    if (attachedAs === undefined)
      return file === undefined || leftOut.has(file.sha256)
        ? []
        : [`exhibit ${exhibit}: its file is neither attached nor listed as left out`];
    const attached = byName.get(attachedAs);
    const same =
      attached?.what === 'original' && attached.sha256 === file?.sha256 && attached.bytes === file.bytes;
    return same ? [] : [`exhibit ${exhibit}: ${attachedAs} is not its file`];
  });
  const files = manifest.exhibits.filter(({ file }) => file !== undefined).length;
  list.judge('exhibits.originals', wrong, `${files} files, ${manifest.leftOut.length} left out`);
}

/**
 * The pictures that are listed with the originals they show: the original is that of the exhibit, and a picture
 * stream of the PDF has the listed bytes. That the one was made from the other is the signer's word; whoever has
 * both can look.
 */
export function checkPlates({ manifest, hasStream }: Contents, list: Checklist): void {
  const { plates } = manifest;
  if (plates === undefined) {
    list.skip('plates.listed', 'The manifest lists no printed pictures.');
    return;
  }
  const originals = new Map(manifest.exhibits.map(({ exhibit, file }) => [exhibit, file?.sha256]));
  const wrong = plates.flatMap(({ exhibit, originalSha256, plateSha256 }) => {
    if (originals.get(exhibit) !== originalSha256)
      return [`the picture of exhibit ${exhibit} is said to be made from another original`];
    return hasStream(plateSha256) ? [] : [`the picture of exhibit ${exhibit} is not in the pages as listed`];
  });
  list.judge(
    'plates.listed',
    wrong,
    `${plates.length} pictures are in the pages as listed; that each was made from its original is the signer's word`,
  );
}
