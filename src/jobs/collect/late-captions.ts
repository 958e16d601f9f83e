import { basename } from 'node:path';
import type { NewEntry } from '../../core/model/entry.js';
import type { Problem } from '../../core/model/error.js';
import { documentSubject, type Sha256 } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { EvidenceItem, RecordState } from '../../core/model/state.js';
import { type Captions, noSuchFile, type UnmatchedCaption } from '../../intake/captions.js';
import type { Hint } from '../../intake/draft.js';
import { checkHint } from '../../intake/examine.js';

type Filed = Extract<EvidenceItem, { kind: 'photo' | 'document' }>;

/** Captions of a file that the record held before they came. */
export interface HeldCaption {
  sha256: Sha256;
  name: string;
  hint: Hint;
}

/**
 * Entries that describe evidence by captions which came after it: for files that were collected again, and for those
 * that a captions.csv names and the record holds. They say only what nobody said before; a subject is a proposal.
 */
export function lateCaptions(
  state: RecordState,
  { unmatched }: Captions,
  held: readonly HeldCaption[],
  by: string,
): { entries: NewEntry[]; problems: Problem[] } {
  const entries: NewEntry[] = [];
  const problems: Problem[] = [];
  const items = state.evidence.filter(
    (item): item is Filed => item.kind === 'photo' || item.kind === 'document',
  );
  const add = (item: Filed, hint: Hint, name: string): void => {
    const checked = checkHint(hint, name, state.delivery);
    problems.push(...checked.problems);
    const body = newWords(item, checked.hint);
    if (body !== undefined) entries.push({ type: 'evidence-described', by, body });
  };
  for (const { sha256, name, hint } of held) {
    const item = items.find(({ file }) => file.sha256 === sha256);
    if (item !== undefined) add(item, hint, name);
  }
  for (const caption of unmatched) {
    const [item, other] = itemsNamed(items, caption.name);
    if (item === undefined) problems.push(noSuchFile(caption));
    else if (other !== undefined) problems.push(ambiguous(caption, [item, other]));
    else add(item, caption.hint, caption.sidecar);
  }
  return { entries, problems };
}

/** Evidence by the whole name, else by the file's own name where the folders differ. */
function itemsNamed(items: readonly Filed[], name: string): Filed[] {
  const same = items.filter(({ file }) => file.name === name);
  return same.length > 0 ? same : items.filter(({ file }) => basename(file.name) === basename(name));
}

const ambiguous = ({ name, sidecar, row }: UnmatchedCaption, items: readonly Filed[]): Problem => ({
  code: 'bad-value',
  message: `"${basename(name)}" is the name of ${items.map(({ evidence, file }) => `${evidence} (${file.name})`).join(' and ')}`,
  where: { file: sidecar, row, column: 'file' },
  fix: 'write the folder before the name, as it is shown, or describe the evidence by its number',
});

function newWords(item: Filed, { subject, place, line, by, caption, time }: Hint) {
  const fits =
    subject !== undefined &&
    item.subject?.sure !== 'confirmed' &&
    item.subject?.is !== subject.is &&
    (item.kind === 'photo' || documentSubject.options.some((is) => is === subject.is));
  const isOpen = item.time.is !== 'known' || item.time.basis === 'file-name' || item.time.basis === 'chat';
  const at = omitUndefined({
    stop: item.place?.stop === undefined ? place?.stop : undefined,
    position: item.place?.position === undefined ? place?.position : undefined,
  });
  const said = omitUndefined({
    subject: fits ? subject : undefined,
    place: Object.keys(at).length === 0 ? undefined : at,
    line: item.line === undefined ? line : undefined,
    by: item.by === undefined ? by : undefined,
    caption: item.caption === undefined ? caption : undefined,
    time: isOpen && time?.is === 'known' && !isSame(item, time) ? time : undefined,
  });
  return Object.keys(said).length === 0 ? undefined : { evidence: item.evidence, ...said };
}

const isSame = ({ time }: Filed, other: { instant: string }): boolean =>
  time.is === 'known' && time.instant === other.instant;
