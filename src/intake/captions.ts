import { basename, dirname, join } from 'node:path';
import type { Delivery } from '../core/model/delivery.js';
import { DossierError, type Problem } from '../core/model/error.js';
import { position, subjectName } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { toInstant } from '../core/model/time.js';
import { readChats } from './chat.js';
import type { Hint } from './draft.js';
import type { FoundFile } from './file-scan.js';
import { nearestWord } from './settings/did-you-mean.js';
import type { WrittenRow } from './table/written-table.js';
import { parseTypedTime } from './typed.js';

/** Name of a sidecar that describes the files of its folder. */
export const CAPTIONS_NAME = 'captions.csv';
export const CAPTION_COLUMNS = [
  'file',
  'time',
  'subject',
  'stop',
  'line',
  'position',
  'compartment',
  'by',
  'caption',
] as const;

/** A row whose file is not among those found. */
export interface UnmatchedCaption {
  /** Name of the file as it is shown, with the folder of its captions.csv. */
  name: string;
  hint: Hint;
  sidecar: string;
  row: number;
}

export interface Captions {
  /** By the key of the described file: see `captionKey`. */
  hints: ReadonlyMap<string, Hint>;
  /** Captions that came after the files that they describe, or that name none. */
  unmatched: UnmatchedCaption[];
  problems: Problem[];
}

/** Whose captions they are, and when they are read: what a time in them means. */
export interface CaptionContext {
  delivery: Delivery;
  now: Date;
}

/**
 * Reads every captions.csv among the files found. Its descriptions are proposals until a person confirms them.
 * Never throws for a bad table: unusable rows are problems, the others count.
 */
export async function readCaptions(files: readonly FoundFile[], context: CaptionContext): Promise<Captions> {
  // What a person wrote in a table counts before what a chat says.
  const hints = new Map(await readChats(files, context.delivery, captionKey));
  const unmatched: UnmatchedCaption[] = [];
  const problems: Problem[] = [];
  const paths = new Set(files.map(captionKey));
  for (const sidecar of files.filter((f) => basename(captionKey(f)).toLowerCase() === CAPTIONS_NAME)) {
    try {
      const { readWrittenTable } = await import('./table/written-table.js');
      const table = await readWrittenTable(sidecar.path, sidecar.name);
      const refuse = (row: number, message: string, column: string, fix?: string): number =>
        problems.push({
          code: 'bad-value',
          message,
          where: { file: sidecar.name, row, column },
          ...omitUndefined({ fix }),
        });
      if (!table.headings.includes('file')) {
        refuse(
          1,
          `there is no column "file"; the columns are: ${table.headings.join(', ')}`,
          'file',
          columnsFix(),
        );
        continue;
      }
      for (const row of table.rows) {
        const file = row.cells.get('file');
        const path = file === undefined ? undefined : join(dirname(captionKey(sidecar)), file);
        if (path === undefined) refuse(row.row, 'the row names no file', 'file');
        else {
          const hint = hintOf(row, context, (message, column, fix) => refuse(row.row, message, column, fix));
          const name = join(dirname(sidecar.name), file ?? '');
          if (paths.has(path)) hints.set(path, { ...hints.get(path), ...hint });
          else unmatched.push({ name, hint, sidecar: sidecar.name, row: row.row });
        }
      }
    } catch (error) {
      problems.push(asProblem(error, sidecar.name));
    }
  }
  return { hints, unmatched, problems };
}

/** The captions of one file; empty when there are none. */
export function hintFor(captions: Captions, file: FoundFile): Hint {
  return captions.hints.get(captionKey(file)) ?? {};
}

/** Path of a file as its captions.csv sees it. */
export function captionKey(file: FoundFile): string {
  return file.at ?? file.path;
}

/** The problem of captions whose files are neither here nor in the record. */
export const noSuchFile = ({ name, sidecar, row }: UnmatchedCaption): Problem => ({
  code: 'bad-value',
  message: `there is no file "${basename(name)}" in this folder`,
  where: { file: sidecar, row, column: 'file' },
});

function hintOf(
  row: WrittenRow,
  { delivery, now }: CaptionContext,
  refuse: (message: string, column: string, fix?: string) => void,
): Hint {
  const hint: Hint = {};
  const subject = row.cells.get('subject');
  const where = row.cells.get('position');
  if (subject !== undefined) {
    const is = subjectName.safeParse(subject.toLowerCase().replaceAll(/[\s_]+/g, '-'));
    if (is.success) hint.subject = { is: is.data, sure: 'proposed', from: CAPTIONS_NAME };
    else {
      const close = nearestWord(subject, subjectName.options);
      const fix =
        close === undefined ? `use one of: ${subjectName.options.join(', ')}` : `did you mean ${close}?`;
      refuse(`"${subject}" is not a known subject`, 'subject', fix);
    }
  }
  const at = where === undefined ? undefined : position.safeParse(where.toLowerCase());
  if (at?.success === false)
    refuse(`"${where}" is not a part of the load`, 'position', 'use nose, middle or tail');
  const stop = row.cells.get('stop');
  const { compartments = [] } = delivery.equipment.trailer;
  const wanted = row.cells.get('compartment');
  const compartment = compartments.find(({ id }) => id.toLowerCase() === wanted?.toLowerCase())?.id;
  if (wanted !== undefined && compartment === undefined)
    refuse(
      `there is no compartment "${wanted}"`,
      'compartment',
      compartments.length === 0
        ? 'list the compartments in delivery.yaml, or leave the column out'
        : `use one of: ${compartments.map(({ id }) => id).join(', ')}`,
    );
  if (stop !== undefined || compartment !== undefined || at?.success === true)
    hint.place = {
      ...omitUndefined({ stop, compartment, position: at?.success === true ? at.data : undefined }),
    };
  const [line, by, caption] = [row.cells.get('line'), row.cells.get('by'), row.cells.get('caption')];
  if (line !== undefined) hint.line = line;
  if (by !== undefined) hint.by = by.slice(0, 200);
  if (caption !== undefined) hint.caption = caption.slice(0, 2000);
  const time = row.cells.get('time');
  if (time !== undefined) {
    const stops = delivery.stops.filter(
      ({ id }) => stop === undefined || id.toLowerCase() === stop.toLowerCase(),
    );
    const near = stops.flatMap(({ planned }) => (planned === undefined ? [] : [Date.parse(`${planned}Z`)]));
    const [zone, other] = new Set(stops.map((one) => one.zone));
    const read =
      zone === undefined
        ? undefined
        : parseTypedTime(time, { now: toInstant(now.getTime()), zone, near, field: 'time' });
    if (read?.is === 'problem') refuse(read.problem.message, 'time', read.problem.fix);
    else if (other !== undefined && !/(?:Z|[+-]\d{2}:?\d{2})$/i.test(time))
      refuse(`the zone of ${time} is not known: the stops lie in different zones`, 'time', 'name the stop');
    else if (read !== undefined) hint.time = read.time;
  }
  return hint;
}

function columnsFix(): string {
  return `use the columns ${CAPTION_COLUMNS.join(', ')}`;
}

function asProblem(error: unknown, file: string): Problem {
  if (error instanceof DossierError) return { ...error.toProblem(), where: { ...error.where, file } };
  if (error instanceof Error && 'code' in error)
    return { code: 'unreadable-file', message: error.message, where: { file } };
  throw error;
}

/**
 * Hints from the names of a file's folders: one named as a stop id, a subject, a line id, a compartment or a part of the load
 * proposes it. The innermost folder counts first.
 */
export function folderHint(name: string, delivery: Delivery): Hint {
  const hint: Hint = {};
  const folders = name.split('/').slice(0, -1).reverse();
  for (const folder of folders) {
    const plain = folder.toLowerCase().replaceAll(/[\s_]+/g, '-');
    const subject = subjectName.safeParse(plain);
    const part = position.safeParse(plain);
    const stop = delivery.stops.find((s) => s.id.toLowerCase() === plain);
    const line = delivery.lines.find((l) => l.id.toLowerCase() === plain);
    if (subject.success) hint.subject ??= { is: subject.data, sure: 'proposed', from: `folder ${folder}` };
    if (stop !== undefined) hint.place = { stop: stop.id, ...hint.place };
    const { compartments } = delivery.equipment.trailer;
    const compartment = compartments?.find((c) => c.id.toLowerCase() === plain)?.id;
    if (compartment !== undefined) hint.place = { compartment, ...hint.place };
    if (part.success) hint.place = { position: part.data, ...hint.place };
    if (line !== undefined) hint.line ??= line.id;
  }
  return hint;
}
