import { logFileName } from '../../core/assess/logs/compartments.js';
import type { Sha256 } from '../../core/model/evidence.js';
import type { Exhibit, OmittedOriginal, Volume } from '../../core/model/manifest.js';
import type { Labels } from '../../core/words/labels.js';
import type { RecordView } from '../../record/record-at.js';
import type { AttachmentInput } from '../../signing/manifest.js';
import type { AssessedDelivery } from '../assess.js';
import { channelsCsv, excursionsCsv, gapsCsv, logCsv, pulpsCsv, setPointsCsv } from '../computed-data.js';
import { exhibitsCsv } from './exhibits-csv.js';

/** One file inside the PDF. */
export interface EnclosedFile extends AttachmentInput {
  description: string;
}

export interface EnclosedOriginals {
  enclosed: EnclosedFile[];
  leftOut: OmittedOriginal[];
  /** Each with the name of its original inside. */
  exhibits: Exhibit[];
}

/** Originals that may be attached. */
export interface AttachmentRoom {
  /** Bytes of all originals together. */
  originals: number;
  /** Originals that must not be attached, and why. */
  not: ReadonlyMap<Sha256, OmittedOriginal['why']>;
}

/**
 * The files of a record that go inside its PDF, whatever room they take: ledger, facts and computed tables. Rules and what
 * is held against them are of the assessment alone.
 */
export function recordFiles(
  assessed: AssessedDelivery,
  { ledger, facts }: { ledger: Uint8Array; facts: string },
  numbered: readonly Exhibit[],
  labels: Labels,
  volume: Volume,
): EnclosedFile[] {
  const describe = describedIn(labels);
  return [
    enclose('ledger.jsonl', ledger, 'application/jsonl', 'ledger', describe('ledger')),
    enclose('delivery.yaml', text(facts), 'application/yaml', 'delivery-facts', describe('delivery-facts')),
    ...(volume === 'assessment'
      ? filesOfAssessment(assessed, describe)
      : tables(assessed, numbered, describe)),
  ];
}

type Describe = ReturnType<typeof describedIn>;

function filesOfAssessment({ ruleSet, assessment }: AssessedDelivery, describe: Describe): EnclosedFile[] {
  return [
    enclose('rule-set.yaml', text(ruleSet.text), 'application/yaml', 'rule-set', describe('rule-set')),
    table('gaps.csv', gapsCsv(assessment), describe('gaps')),
  ];
}

function tables(
  { state, logs, assessment }: AssessedDelivery,
  numbered: readonly Exhibit[],
  describe: Describe,
): EnclosedFile[] {
  const numberOf = new Map(numbered.map(({ evidence, exhibit }) => [evidence, exhibit]));
  return [
    table('excursions.csv', excursionsCsv(assessment), describe('excursions')),
    table('channels.csv', channelsCsv(assessment), describe('channels')),
    table('pulps.csv', pulpsCsv(assessment), describe('pulps')),
    table('set-points.csv', setPointsCsv(assessment), describe('set-points')),
    table('exhibits.csv', exhibitsCsv(state, numbered), describe('exhibits')),
    ...logs.map((log) =>
      table(logFileName(log), logCsv(log), describe('unit-log', numberOf.get(log.evidence))),
    ),
  ];
}

/** As many originals as fit, smallest first, so that most exhibits can be checked on the spot. */
export async function encloseOriginals(
  record: RecordView,
  numbered: readonly Exhibit[],
  room: AttachmentRoom,
  labels: Labels,
): Promise<EnclosedOriginals> {
  const describe = describedIn(labels);
  const { inside, leftOut } = chooseOriginals(numbered, room);
  const enclosed: EnclosedFile[] = [];
  const names = new Map<string, string>();
  for (const { file, exhibit } of inside) {
    const name = `x${String(exhibit).padStart(3, '0')}-${asciiName(file.name)}`;
    const bytes = await record.readOriginal(file.sha256);
    enclosed.push(enclose(name, bytes, file.type, 'original', describe('original', exhibit)));
    names.set(file.sha256, name);
  }
  return {
    enclosed,
    leftOut,
    exhibits: numbered.map((exhibit) => {
      const name = exhibit.file === undefined ? undefined : names.get(exhibit.file.sha256);
      return name === undefined ? exhibit : { ...exhibit, attachedAs: name };
    }),
  };
}

const describedIn =
  (labels: Labels) =>
  (name: string, exhibit?: number): string =>
    labels(`attachment.${name}`).replace('N', String(exhibit ?? ''));

type FiledExhibit = Exhibit & { file: NonNullable<Exhibit['file']> };

/** Bytes of the originals that may be attached. */
export function originalsBytes(exhibits: readonly Exhibit[], not: AttachmentRoom['not']): number {
  return filedOnce(exhibits).reduce((sum, { file }) => sum + (not.has(file.sha256) ? 0 : file.bytes), 0);
}

function filedOnce(exhibits: readonly Exhibit[]): FiledExhibit[] {
  const filed = exhibits.filter((exhibit): exhibit is FiledExhibit => exhibit.file !== undefined);
  return [...new Map(filed.map((exhibit) => [exhibit.file.sha256, exhibit])).values()];
}

function chooseOriginals(
  exhibits: readonly Exhibit[],
  room: AttachmentRoom,
): { inside: FiledExhibit[]; leftOut: OmittedOriginal[] } {
  const leftOut: OmittedOriginal[] = [];
  const inside: FiledExhibit[] = [];
  let total = 0;
  for (const exhibit of filedOnce(exhibits).sort((a, b) => a.file.bytes - b.file.bytes)) {
    const { name, bytes, sha256 } = exhibit.file;
    const why = room.not.get(sha256);
    if (why !== undefined) {
      leftOut.push({ name, bytes, sha256, why });
      continue;
    }
    total += bytes;
    if (bytes === 0) leftOut.push({ name, bytes, sha256, why: 'empty-file' });
    else if (total > room.originals) leftOut.push({ name, bytes, sha256, why: 'size-budget' });
    else inside.push(exhibit);
  }
  return { inside: inside.sort((a, b) => a.exhibit - b.exhibit), leftOut };
}

function enclose(
  name: string,
  bytes: Uint8Array,
  type: string,
  what: AttachmentInput['what'],
  description: string,
): EnclosedFile {
  return { name, bytes, type, what, description };
}

function table(name: string, csv: string, description: string): EnclosedFile {
  return enclose(name, text(csv), 'text/csv', 'computed-data', description);
}

const text = (content: string) => Buffer.from(content, 'utf8');

/** A name that every program can write to a disk: ASCII letters, digits, dot, dash, underscore. */
function asciiName(name: string): string {
  const base = name.split(/[/\\]/).at(-1) ?? '';
  const plain = base
    .normalize('NFKD')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/[^A-Za-z0-9._-]+/g, '-');
  return plain.slice(-80).replace(/^[-.]+/, '') || 'file';
}
