import { readMilestones } from '../core/assess/milestones.js';
import { type OutcomeExcess, outcomeExcesses } from '../core/assess/outcomes.js';
import { DossierError } from '../core/model/error.js';
import { type EvidenceId, evidenceId, type ReadingBody } from '../core/model/evidence.js';
import type { ItemOf, RecordState } from '../core/model/state.js';
import { toInstant } from '../core/model/time.js';
import { evidenceNamed, lastOf } from './typed/evidence-named.js';

type ParsedOutcome = Extract<ReadingBody, { kind: 'outcome' }>;

/**
 * Throws DossierError `bad-value` for an outcome of more goods than there were to speak of, for one without a quantity
 * when every one of the goods has been spoken of, and for any reading on a document that the
 * record lacks. Other readings pass.
 * @param drafts readings that are to be recorded before it
 * @param replaced the evidence that it corrects
 */
export function requireRoom(
  state: RecordState,
  reading: ReadingBody,
  now: Date,
  { drafts = [], replaced }: { drafts?: readonly ReadingBody[]; replaced?: EvidenceId } = {},
): void {
  if (!('documents' in reading)) return;
  for (const id of reading.documents)
    if (!state.evidence.some(({ evidence }) => evidence === id)) {
      if (Number(id.slice(1)) <= lastOf(state)) evidenceNamed(state, id, '--on');
      throw new DossierError('bad-value', `there is no evidence ${id}`, {
        where: { field: '--on' },
        fix: 'Take the document in with dossier collect, or say in words what it is.',
      });
    }
  if (reading.kind !== 'outcome') return;
  const outcomes = [...drafts, reading].filter((one): one is ParsedOutcome => one.kind === 'outcome');
  const items = outcomes.map((one, index) => asItem(one, index, state.size, now));
  const there = state.evidence.filter(({ evidence }) => evidence !== replaced);
  const draft = { ...state, evidence: [...there, ...items] };
  const own = items.at(-1)?.evidence;
  const excesses = outcomeExcesses(draft, readMilestones(draft, now.getTime()));
  const over = excesses.find(({ excess }) => excess > 0);
  const recorded = new Set(there.map(({ evidence }) => evidence));
  if (over !== undefined) throw tooMuch(over, reading, recorded);
  const idle = excesses.filter(({ evidence, counted }) => evidence === own && !counted);
  const lines = state.delivery.lines.filter(
    ({ id, to }) => to === reading.place?.stop && (reading.line ?? id) === id,
  );
  const [first] = idle;
  // Of a whole stop, the lines that have no outcome yet take it.
  if (first !== undefined && idle.length === lines.length)
    throw new DossierError(
      'bad-value',
      `all of ${idle.map(({ line }) => line).join(', ')} has an outcome already (${first.others.join(', ')})`,
      {
        where: { field: 'how much' },
        fix: 'Say how much (8 pallets), or all if it now holds for every one of them, whatever was said before.',
      },
    );
}

function tooMuch(
  { line, excess, shipped, others }: OutcomeExcess,
  reading: ParsedOutcome,
  recorded: ReadonlySet<EvidenceId>,
): DossierError {
  const { amount = '', unit = '' } = reading.quantity ?? {};
  const known = others.filter((id) => recorded.has(id));
  const said = known.length === 0 ? '' : ` beside ${known.join(', ')}`;
  return new DossierError(
    'bad-value',
    `${amount} ${unit} of ${line}${said} are ${excess / 1000} more than the ${shipped} shipped`,
    {
      where: { field: 'how much' },
      fix: `Count again; put an earlier entry right with dossier correct, or what was shipped in delivery.yaml.`,
    },
  );
}

/** An outcome that is not recorded yet, with an id that no other evidence has. */
function asItem(outcome: ParsedOutcome, index: number, size: number, now: Date): ItemOf<'outcome'> {
  return {
    ...outcome,
    evidence: evidenceId.parse(`e${size + 1_000_000 + index}`),
    source: { is: 'typed' },
    seq: size + index,
    enteredAt: toInstant(now.getTime()),
    enteredBy: '',
    describedBy: [],
    correctedBy: [],
  };
}
