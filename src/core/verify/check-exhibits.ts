import { struckSeqs } from '../ledger/counted-entries.js';
import type { EntryOf } from '../model/entry.js';
import type { Manifest } from '../model/manifest.js';
import type { CheckResults } from './check-results.js';
import { entriesOf, type LedgerLine } from './ledger/read-ledger.js';

/** Holds the exhibits against the ledger entries that they name, and the ledger against the list. */
export function checkExhibits(manifest: Manifest, lines: readonly LedgerLine[], results: CheckResults): void {
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
    if (file?.sha256 !== exhibit.file?.sha256 || file?.bytes !== exhibit.file?.bytes)
      return [`${name}: the ledger received another file`];
    return file?.name === exhibit.file?.name && file?.type === exhibit.file?.type
      ? []
      : [`${name}: the ledger received its file under another name or as another kind`];
  });
  const { exhibits } = manifest;
  if (new Set(exhibits.map(({ exhibit }) => exhibit)).size !== exhibits.length)
    wrong.push('two exhibits have the same number');
  if (new Set(exhibits.map(({ evidence }) => evidence)).size !== exhibits.length)
    wrong.push('evidence stands as two exhibits');
  results.failIf('exhibits.ledger', wrong, `${exhibits.length} exhibits`);
  checkComplete(manifest, lines, results);
}

/** Requires an exhibit, or a place in the list of left-out files, for all evidence whose entry is in this copy. */
function checkComplete(manifest: Manifest, lines: readonly LedgerLine[], results: CheckResults): void {
  const shown = new Set(manifest.exhibits.map(({ evidence }) => evidence));
  const files = new Set([
    ...manifest.exhibits.flatMap(({ file }) => (file === undefined ? [] : [file.sha256])),
    ...manifest.leftOut.map(({ sha256 }) => sha256),
  ]);
  const entries = entriesOf(lines);
  const struck = struckSeqs(entries);
  const evidence = entries.filter(
    (one): one is EntryOf<'evidence-received'> | EntryOf<'reading-recorded'> =>
      one.type === 'evidence-received' || one.type === 'reading-recorded',
  );
  const wrong = evidence
    .filter((one) =>
      one.type === 'evidence-received'
        ? !files.has(one.body.file.sha256)
        : !shown.has(one.body.evidence) && !struck.has(one.seq),
    )
    .map(
      ({ seq, body }) =>
        `${body.evidence} (ledger entry ${seq}) is neither an exhibit nor listed as left out`,
    );
  const received = new Map(
    evidence.flatMap((one) =>
      one.type === 'evidence-received' ? [[one.body.file.sha256, one.body.file.bytes] as const] : [],
    ),
  );
  const whole = entries.length === lines.length;
  for (const { name, sha256, bytes } of manifest.leftOut) {
    const size = received.get(sha256);
    if (size === undefined ? whole : size !== bytes)
      wrong.push(`"${name}" is listed as left out, and the ledger received no such file`);
  }
  results.failIf('exhibits.complete', wrong, `${evidence.length} pieces of evidence`);
}

/** Requires the original of every exhibit that is a file: attached, or listed as left out. */
export function checkOriginals(manifest: Manifest, results: CheckResults): void {
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
  const used = new Set(manifest.exhibits.map(({ attachedAs }) => attachedAs));
  for (const { name, what, sha256 } of manifest.attachments) {
    if (what !== 'original') continue;
    if (!used.has(name)) wrong.push(`${name} is attached as an original, and no exhibit is made of it`);
    if (leftOut.has(sha256)) wrong.push(`${name} is attached and listed as left out`);
  }
  const files = manifest.exhibits.filter(({ file }) => file !== undefined).length;
  results.failIf('exhibits.originals', wrong, `${files} files, ${manifest.leftOut.length} left out`);
}
