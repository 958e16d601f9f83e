import type { Delivery } from '../core/model/delivery.js';
import type { EvidenceId } from '../core/model/evidence.js';
import type { EvidenceItem, RecordState } from '../core/model/state.js';

/** A question about evidence that only a person can answer. */
export interface Question {
  is: 'not-counted' | 'zone' | 'log-zone' | 'time' | 'subject' | 'stop' | 'confirm';
  /** In words, without the count. */
  what: string;
  evidence: EvidenceId[];
  /** The command that answers it, with capitals for what has to be filled in. */
  command: string;
}

const QUESTIONS: readonly (Pick<Question, 'is' | 'what'> & {
  open(item: EvidenceItem, delivery: Delivery): boolean;
})[] = [
  { is: 'log-zone', what: "the zone of the log's clock is not known", open: (item) => isZonelessLog(item) },
  {
    is: 'zone',
    what: 'a local time whose zone is not known',
    open: (item) => item.time.is === 'local',
  },
  {
    is: 'time',
    what: 'no time',
    open: (item) => item.time.is === 'none' && (item.kind === 'photo' || isReading(item)),
  },
  {
    is: 'time',
    what: "only a day, by the file's name",
    open: (item) => item.time.is === 'known' && item.time.basis === 'file-name',
  },
  {
    is: 'subject',
    what: 'what it shows is not said',
    open: (item) =>
      (item.kind === 'photo' || (item.kind === 'document' && isPaper(item))) && item.subject === undefined,
  },
  {
    is: 'confirm',
    what: 'what it shows is only proposed',
    open: (item) => (item.kind === 'photo' || item.kind === 'document') && item.subject?.sure === 'proposed',
  },
  {
    is: 'stop',
    what: 'no stop',
    open: (item, delivery) =>
      item.kind === 'photo' && item.place?.stop === undefined && !isOnTheWay(item, delivery),
  },
];

/** Open questions about evidence, in the order in which they are best answered. Withheld evidence raises none. */
export function openQuestions(state: RecordState, among?: ReadonlySet<EvidenceId>): Question[] {
  const items = state.evidence.filter(
    (item) => item.withheld === undefined && (among === undefined || among.has(item.evidence)),
  );
  const elsewhere = state.notCounted
    .map(({ evidence }) => evidence)
    .filter((evidence) => among === undefined || among.has(evidence));
  const asked = QUESTIONS.flatMap(({ is, what, open }) => {
    const evidence = items.filter((item) => open(item, state.delivery)).map((item) => item.evidence);
    return evidence.length === 0 ? [] : [{ is, what, evidence, command: commandFor(is, evidence, state) }];
  });
  if (elsewhere.length === 0) return asked;
  const what = 'it seems to be of another trailer or time, and does not count';
  const command = commandFor('not-counted', elsewhere, state);
  return [{ is: 'not-counted', what, evidence: elsewhere, command }, ...asked];
}

/** Most evidence ids in one command. */
const MOST_NAMED = 12;

function commandFor(is: Question['is'], evidence: readonly EvidenceId[], { delivery }: RecordState): string {
  const ids = evidence.length > MOST_NAMED ? `${evidence.slice(0, 3).join(' ')} …` : evidence.join(' ');
  const stops = delivery.stops.map((stop) => stop.id).join('|');
  switch (is) {
    case 'not-counted':
      return `dossier admit ${evidence[0]} --why "WHY IT BELONGS HERE"`;
    case 'log-zone':
      return `dossier collect FILE --log-zone ${delivery.stops[0]?.zone ?? 'ZONE'}`;
    case 'zone':
    case 'stop':
      return `dossier describe ${ids} --stop ${stops}`;
    case 'time':
      return `dossier describe ${ids} --time "2026-07-14 04:10"`;
    case 'subject':
      return `dossier describe ${ids} --subject SUBJECT`;
    case 'confirm':
      // Alone it prompts for each; for many, a truncated list could not be typed as it is.
      return evidence.length > MOST_NAMED ? 'dossier describe' : `dossier describe --confirm ${ids}`;
  }
}

function isZonelessLog(item: EvidenceItem): boolean {
  return item.kind === 'document' && item.flags.some((flag) => flag.is === 'time-zone-unknown');
}

/** A photo with a position but no stop was taken in transit, where the position of every stop is known. */
function isOnTheWay(item: EvidenceItem, { stops }: Delivery): boolean {
  return item.place?.gps !== undefined && stops.every((stop) => stop.at !== undefined);
}

/** Archives, captions of other files, waiting logs and empty files are kept without a document subject. */
function isPaper(item: Extract<EvidenceItem, { kind: 'document' }>): boolean {
  const { file, flags } = item;
  return (
    file.type !== 'application/zip' &&
    !/(?:^|\/)captions\.csv$/i.test(file.name) &&
    !flags.some((flag) => flag.is === 'time-zone-unknown' || flag.is === 'empty-file')
  );
}

function isReading(item: EvidenceItem): boolean {
  return !('file' in item);
}
