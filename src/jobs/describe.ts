import { timeDoubtsOfFile } from '../core/assess/doubts.js';
import type { Delivery, Stop } from '../core/model/delivery.js';
import type { NewEntry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import {
  documentSubject,
  type EvidenceId,
  type Region,
  region,
  type Subject,
  sceneSubject,
  subjectName,
} from '../core/model/evidence.js';
import type { EvidenceItem, RecordState } from '../core/model/state.js';
import { type EventTime, eventTime } from '../core/model/time.js';
import { TO_THE_SECOND, timeInZone } from '../intake/time/event-time.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { doubtedError, doubtProblem, KnownKin } from './doubts.js';
import { evidenceNamed } from './typed/evidence-named.js';
import {
  findCompartment,
  findLine,
  findPosition,
  findStop,
  typedPlace,
  typedTime,
  unknownWord,
} from './typed/place-options.js';

/** Typed description of evidence. */
export interface TypedDescription {
  subject?: string | undefined;
  line?: string | undefined;
  stop?: string | undefined;
  position?: string | undefined;
  /** Compartment of the trailer. */
  compartment?: string | undefined;
  /** Who took it. */
  by?: string | undefined;
  caption?: string | undefined;
  time?: string | undefined;
  /** Parts of the picture to black out in redacted copies: `x,y,width,height` as fractions; `none` removes them. */
  blackOut?: readonly string[] | undefined;
  /** The time is right, although it lies far from the delivery. */
  sure?: boolean | undefined;
  /** Why an earlier statement is corrected. */
  why?: string | undefined;
}

/** What is said of evidence: words, a confirmation, or that it is withheld. */
export type DescribeInput = OpenDelivery & { evidence: readonly string[] } & (
    | { act: 'say'; says: TypedDescription }
    | { act: 'confirm' }
    | { act: 'confirm-all' }
    | { act: 'withhold'; why: string | undefined }
  );

/** What was added to the record about evidence. */
export interface DescribeReport {
  /** One for each added entry. */
  described: { evidence: EvidenceId; said: string }[];
  /** Evidence without a new description. */
  unchanged: EvidenceId[];
  notices: string[];
}

type Described = Extract<NewEntry, { type: 'evidence-described' }>['body'];

/**
 * Describes evidence, confirms proposed subjects, or withholds evidence from redacted copies. Every statement is a
 * new entry that names the evidence; earlier entries stay. All or nothing. Throws DossierError `bad-value` or
 * `bad-usage` with the field and the choices.
 */
export async function describe(input: DescribeInput): Promise<DescribeReport> {
  return withDelivery(input, true, async (record) => {
    const state = record.state();
    const items =
      input.act === 'confirm-all' ? proposals(state) : input.evidence.map((id) => find(state, id));
    const report: DescribeReport = {
      described: [],
      unchanged: [],
      notices: record.notices.map((notice) => notice.message),
    };
    const entries: NewEntry[] = [];
    for (const item of new Set(items)) {
      const made = entryFor(item, state.delivery, input);
      if (made === undefined) {
        report.unchanged.push(item.evidence);
        continue;
      }
      if (input.act === 'say' && input.says.sure !== true)
        requireLikelyTime(state, item, made.entry, input.now());
      entries.push(made.entry);
      report.described.push({ evidence: item.evidence, said: made.said });
    }
    await record.append(entries);
    return report;
  });
}

/** Throws DossierError `doubtful` for a time days before or after the delivery. */
function requireLikelyTime(state: RecordState, item: EvidenceItem, entry: NewEntry, now: Date): void {
  if (entry.type !== 'evidence-described' || entry.body.time === undefined) return;
  const is = entry.body.subject?.is ?? subjectOf(item)?.is;
  const isPaper = item.kind === 'document' || documentSubject.options.some((one) => one === is);
  const doubts = timeDoubtsOfFile(
    eventTime.parse(entry.body.time),
    isPaper,
    new KnownKin(state, now, item.evidence),
  );
  if (doubts.length === 0) return;
  throw doubtedError(
    doubts.map((doubt) => {
      const problem = doubtProblem(doubt, item, state.delivery);
      return { ...problem, where: { field: '--time' } };
    }),
  );
}

function entryFor(
  item: EvidenceItem,
  delivery: Delivery,
  input: DescribeInput,
): { entry: NewEntry; said: string } | undefined {
  const { evidence } = item;
  switch (input.act) {
    case 'withhold': {
      if (input.why === undefined || input.why.trim() === '')
        throw new DossierError('bad-usage', 'withholding needs its reason', {
          where: { field: '--why' },
          fix: 'Say why; the reason stands in the record, and the count and the hash stay in every dossier.',
        });
      if (item.withheld === input.why) return undefined;
      const body = { evidence, why: input.why };
      return { entry: { type: 'evidence-withheld', by: input.by, body }, said: `withheld: ${input.why}` };
    }
    case 'confirm':
    case 'confirm-all': {
      const subject = subjectOf(item);
      if (subject === undefined)
        throw new DossierError('bad-value', `nothing is proposed that ${evidence} shows`, {
          where: { field: evidence },
          fix: `Say what it shows: dossier describe ${evidence} --subject SUBJECT`,
        });
      if (subject.sure === 'confirmed') return undefined;
      const body: Described = { evidence, subject: { is: subject.is, sure: 'confirmed' } };
      return { entry: { type: 'evidence-described', by: input.by, body }, said: subject.is };
    }
    case 'say': {
      const made = descriptionOf(item, delivery, input.says, input.now());
      return made === undefined
        ? undefined
        : { entry: { type: 'evidence-described', by: input.by, body: made.body }, said: made.words };
    }
  }
}

function descriptionOf(
  item: EvidenceItem,
  delivery: Delivery,
  says: TypedDescription,
  now: Date,
): { body: Described; words: string } | undefined {
  const body: Described = { evidence: item.evidence };
  const words: string[] = [];
  const replaced: string[] = [];
  const is = says.subject === undefined ? undefined : fittingSubject(item, says.subject);
  const before = subjectOf(item);
  if (is !== undefined && (before?.is !== is || before.sure !== 'confirmed')) {
    body.subject = { is, sure: 'confirmed' };
    words.push(is);
    if (before?.sure === 'confirmed') replaced.push(`that it shows ${before.is}`);
  }
  const line = findLine(delivery, says.line);
  if (line !== undefined && line !== item.line) {
    body.line = line;
    words.push(`line ${line}`);
    if (item.line !== undefined && !isProposed(item)) replaced.push(`line ${item.line}`);
  }
  const stop = findStop(delivery, says.stop);
  const part = findPosition(says.position);
  const compartment = findCompartment(delivery, says.compartment);
  const place = typedPlace(
    stop?.id === item.place?.stop ? undefined : stop,
    part === item.place?.position ? undefined : part,
    compartment === item.place?.compartment ? undefined : compartment,
  );
  if (place !== undefined) {
    body.place = place;
    words.push(Object.values(place).join(', '));
  }
  for (const field of ['by', 'caption'] as const) {
    const text = says[field]?.trim();
    if (text === undefined || text === '' || text === item[field]) continue;
    body[field] = text;
    words.push(`${field} "${text}"`);
  }
  const blackOut = typedRegions(item, says.blackOut);
  if (blackOut !== undefined) {
    body.blackOut = blackOut;
    words.push(blackOut.length === 0 ? 'nothing black' : `${blackOut.length} parts black in copies`);
  }
  const time = typedTimeOf(item, delivery, stop, says.time, now);
  if (time !== undefined) {
    body.time = time;
    words.push(time.is === 'known' ? `at ${time.instant}` : 'its time');
    // The day in a file's name was only proposed.
    if (item.time.is === 'known' && item.time.basis !== 'file-name')
      replaced.push(`its time ${item.time.stated ?? item.time.instant}`);
  }
  if (words.length === 0) return undefined;
  const why = says.why?.trim();
  if (replaced.length > 0 && (why === undefined || why === ''))
    throw new DossierError('bad-usage', `${item.evidence}: this corrects ${replaced.join(' and ')}`, {
      where: { field: '--why' },
      fix: 'Say why it is corrected: --why "…". The earlier statement stays in the record.',
    });
  if (why !== undefined && why !== '') body.why = why;
  return { body, words: words.join(', ') };
}

function typedRegions(item: EvidenceItem, typed: readonly string[] | undefined): Region[] | undefined {
  if (typed === undefined || typed.length === 0) return undefined;
  const refuse = (message: string) =>
    new DossierError('bad-value', message, {
      where: { field: '--black-out' },
      fix: 'Write it as fractions of the upright picture: left,top,width,height, such as 0.1,0.6,0.3,0.1.',
    });
  if (item.kind !== 'photo' && !(item.kind === 'document' && item.file.type.startsWith('image/')))
    throw refuse(`${item.evidence} is no picture; only parts of pictures can be made black`);
  if (typed.length === 1 && typed[0]?.trim() === 'none') return [];
  const added = typed.map((text) => {
    const [x, y, width, height, more] = text.split(',').map((part) => Number(part.trim() || Number.NaN));
    const read = region.safeParse({ x, y, width, height });
    if (more !== undefined || !read.success) throw refuse(`"${text}" is not a part of a picture`);
    return read.data;
  });
  return [...(item.blackOut ?? []), ...added];
}

/** The typed time; without one, a local time that now has a zone from its stop. */
function typedTimeOf(
  item: EvidenceItem,
  delivery: Delivery,
  stop: Stop | undefined,
  typed: string | undefined,
  now: Date,
): EventTime | undefined {
  const at = stop ?? delivery.stops.find(({ id }) => id === item.place?.stop);
  if (typed !== undefined) return typedTime(typed, delivery, at, now, '--time');
  if (item.time.is !== 'local' || stop === undefined) return undefined;
  const wall = Date.parse(`${item.time.local}Z`);
  return timeInZone(wall, stop.zone, 'place-zone', TO_THE_SECOND, item.time.local).time;
}

function fittingSubject(item: EvidenceItem, named: string) {
  const plain = named
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  const choices =
    item.kind === 'photo' ? subjectName.options : item.kind === 'document' ? documentSubject.options : [];
  if (choices.length === 0)
    throw new DossierError('bad-value', `${item.evidence} is a ${item.kind}, which says itself what it is`, {
      where: { field: '--subject' },
      fix: 'Leave --subject out; a caption, a line or a stop can be said.',
    });
  const found = choices.find((option) => option === plain);
  if (found !== undefined) return found;
  if (sceneSubject.options.some((scene) => scene === plain))
    throw new DossierError('bad-value', `${item.evidence} is a document and can't show ${plain}`, {
      where: { field: '--subject' },
      fix: `A document is one of: ${choices.join(', ')}.`,
      choices,
    });
  throw unknownWord('subject', named, choices);
}

function subjectOf(item: EvidenceItem): Subject | undefined {
  return 'subject' in item ? item.subject : undefined;
}

function isProposed(item: EvidenceItem): boolean {
  return subjectOf(item)?.sure !== 'confirmed' && item.describedBy.length === 0;
}

function proposals(state: RecordState): EvidenceItem[] {
  return state.evidence.filter((item) => item.withheld === undefined && subjectOf(item)?.sure === 'proposed');
}

/** What does not count is spoken of too: withheld, or said to be of another load. */
function find(state: RecordState, named: string): EvidenceItem {
  return evidenceNamed(state, named, 'evidence', { notCounted: true });
}
