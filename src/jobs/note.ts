import type { z } from 'zod';
import { DossierError } from '../model/error.js';
import { type EvidenceId, type ReadingKind, reading } from '../model/evidence.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { findLine, findPosition, findStop, placeOf, timeTyped } from './typed-place.js';
import { bodyOf, typedFields } from './typed-words.js';

export interface NoteInput {
  folder: string;
  kind: ReadingKind;
  /** The main word of the command: a temperature, a seal number, an event … */
  word: string | undefined;
  /** Options as typed, by their names. */
  fields: Record<string, unknown>;
  enteredBy: string;
  now: OpenDelivery['now'];
}

export interface NotedReading {
  evidence: EvidenceId;
  /** What was written down, in words. */
  said: string;
  notices: string[];
}

/**
 * Writes one typed reading into the record.
 * Throws DossierError `bad-value` with the field and the choices when a word can't be understood.
 */
export async function note(input: NoteInput): Promise<NotedReading> {
  return withDelivery({ folder: input.folder, by: input.enteredBy, now: input.now }, true, async (record) => {
    const { delivery } = record.state();
    const typed = typedFields.parse(input.fields);
    const stop = findStop(delivery, typed.stop);
    const body = {
      ...bodyOf(input.kind, input.word, typed),
      kind: input.kind,
      source: { is: 'typed' },
      time: timeTyped(typed.at ?? 'now', delivery, stop, input.now(), '--at'),
      place: placeOf(stop, findPosition(typed.position)),
      line: findLine(delivery, typed.line),
      by: typed.by,
      caption: typed.caption,
    };
    const evidence = record.nextEvidenceId();
    const read = reading.safeParse(JSON.parse(JSON.stringify({ ...body, evidence })));
    if (!read.success) throw notUnderstood(input, body, read.error.issues[0]);
    await record.append([{ type: 'reading-recorded', by: input.enteredBy, body: read.data }]);
    const when =
      read.data.time.is === 'known' ? (read.data.time.stated ?? read.data.time.instant) : 'no time';
    return {
      evidence,
      said: [input.kind, input.word, typed.line, typed.stop, when]
        .filter((part) => part !== undefined)
        .join(', '),
      notices: record.notices.map((notice) => notice.message),
    };
  });
}

/** What the schema found wrong, by the name that the person typed it under and with the choices there are. */
function notUnderstood(
  { kind }: NoteInput,
  body: Readonly<Record<string, unknown>>,
  issue: z.core.$ZodIssue | undefined,
): DossierError {
  const name = String(issue?.path[0] ?? kind);
  const isOption = name in typedFields.shape;
  const option = `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const said = body[name];
  const choices = issue?.code === 'invalid_value' ? issue.values.map(String) : [];
  const empty = said === undefined || said === '';
  const wrong = choices.length > 0 ? `"${String(said)}" is not one of the choices` : (issue?.message ?? '');
  return new DossierError('bad-value', empty ? 'not told' : wrong, {
    where: { field: isOption ? option : name },
    fix: choices.length > 0 ? `Use one of: ${choices.join(', ')}.` : `See: dossier record ${kind} --help`,
    ...(choices.length > 0 ? { choices } : {}),
  });
}
