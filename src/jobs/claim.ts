import type { z } from 'zod';
import { type ClaimId, type ClaimNote, claimNote } from '../core/model/claim.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { RecordState } from '../core/model/state.js';
import { claimNoteBody, type TypedClaimKind } from './claim/body.js';
import { claimOptions } from './claim/claim-options.js';
import { formatClaimNote } from './claim/format-note.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { unknownWord } from './typed/place-options.js';

export type { TypedClaimKind } from './claim/body.js';

/** Something to be recorded of a claim. */
export interface ClaimInput extends OpenDelivery {
  is: TypedClaimKind;
  /** The main word of the command: the claimant, the governing terms, an amount … */
  word: string | undefined;
  /** Options as typed, by their names. */
  fields: Record<string, unknown>;
  /** The carrier's own folder of templates, which may hold its claim deadlines. */
  templates?: string;
}

/** What was recorded of a claim. */
export interface RecordedClaimNote {
  claim: ClaimId;
  /** Ledger entry; the earlier one for a note recorded before. */
  entry: number;
  added: boolean;
  /** The note in words. */
  said: string;
  notices: string[];
}

/**
 * Records one note on a claim; a note recorded before adds nothing. Throws DossierError `bad-value` with the field
 * and the choices when a word can't be understood.
 */
export async function recordClaim(input: ClaimInput): Promise<RecordedClaimNote> {
  return withDelivery(input, true, async (record) => {
    if (input.is === 'clock-set' && input.word !== undefined)
      await requireDeadline(input.word, input.templates);
    const state = record.state();
    const body = parseClaimNote(input, state, input.now());
    const notices = [...record.notices.map(({ message }) => message), ...withoutDocument(body)];
    const before = existingNote(state, body);
    if (before !== undefined)
      return {
        claim: before.claim ?? body.claim,
        entry: before.seq,
        added: false,
        said: formatClaimNote(before),
        notices,
      };
    const [entry] = await record.append([{ type: 'claim-noted', by: input.by, body }]);
    return { claim: body.claim, entry: entry?.seq ?? 0, added: true, said: formatClaimNote(body), notices };
  });
}

/** The body of an entry from typed words. Throws DossierError `bad-value` with the option and the choices. */
export function parseClaimNote(
  { is, word, fields }: Pick<ClaimInput, 'is' | 'word' | 'fields'>,
  state: RecordState,
  now: Date,
): ClaimNote & { claim: ClaimId } {
  const body = claimNoteBody(is, word, claimOptions.parse(fields), state, now);
  const read = claimNote.safeParse(JSON.parse(JSON.stringify(body)));
  if (!read.success) throw notUnderstood(is, read.error.issues[0]);
  return { ...read.data, claim: body.claim };
}

/** The current entry with the same content. */
export function existingNote(state: RecordState, body: ClaimNote): RecordState['claims'][number] | undefined {
  return state.claims.find((one) => one.replacedBy === undefined && isSameNote(one, body));
}

/** Items that the worksheet does not sum without a document. */
function withoutDocument(body: ClaimNote): string[] {
  const bare = (body.is === 'amount' || body.is === 'quantity') && body.evidence.length === 0;
  return bare
    ? ['No paper was named for this, so that it counts for nothing yet: name it with --paper.']
    : [];
}

async function requireDeadline(named: string, templates: string | undefined): Promise<void> {
  const { loadClaimDeadlines } = await import('./claim-deadlines.js');
  const ids = (await loadClaimDeadlines(templates)).clocks.map(({ id }) => id);
  if (!ids.includes(named)) throw unknownWord('clock', named, ids, 'clock');
}

/** Fields of an entry whose option has another name. */
const OPTION_OF: Readonly<Record<string, string>> = {
  claimant: 'claimant',
  contents: '--made',
  count: '--span',
  evidence: '--paper',
  grounds: '--ground',
  reasons: '--reason',
  theirNumber: '--number',
  unit: '--span',
};

const optionOf = (field: string): string =>
  OPTION_OF[field] ?? `--${field.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

function notUnderstood(is: TypedClaimKind, issue: z.core.$ZodIssue | undefined): DossierError {
  const [field = is] = issue?.path ?? [];
  const choices = issue?.code === 'invalid_value' ? issue.values.map(String) : [];
  const message = choices.length > 0 ? 'not one of the words for it' : issue?.message;
  const command = is === 'clock-set' ? 'clock' : is;
  return new DossierError('bad-value', message ?? 'not understood', {
    where: { field: optionOf(String(field)) },
    fix:
      choices.length > 0
        ? `Use one of: ${choices.join(', ')}.`
        : `See: dossier record claim ${command} --help`,
    ...omitUndefined({ choices: choices.length > 0 ? choices : undefined }),
  });
}

/** Whether two notes have the same content, whoever entered them and when. */
export function isSameNote(before: Record<string, unknown>, body: ClaimNote): boolean {
  const own = new Set(['seq', 'enteredAt', 'enteredBy', 'replacedBy', 'replaces', 'claim']);
  // A claim received again has no number of its own yet, nor a name made from it.
  if (body.is === 'received') own.add('ourNumber');
  const plain = (one: Record<string, unknown>) =>
    JSON.stringify(
      Object.entries(one)
        .filter(([key]) => !own.has(key))
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    );
  const sameClaim = body.is === 'received' || before.claim === body.claim;
  return sameClaim && plain(before) === plain(body);
}
