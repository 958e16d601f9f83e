import {
  amountItem,
  type ClaimId,
  type ClaimNoteKind,
  claimantRole,
  claimClosed,
  claimId,
  exceptedCause,
  governing,
  letterKind,
  quantityState,
  statementSource,
} from '../../core/model/claim.js';
import { assertNever, DossierError } from '../../core/model/error.js';
import type { RecordState } from '../../core/model/state.js';
import { evidenceNamed, lastOf } from '../typed/evidence-named.js';
import { findLine } from '../typed/place-options.js';
import {
  amount,
  type ClaimOptions,
  choice,
  claimContentsOf,
  entryNumber,
  parseItemReason,
  parseMoneyOption,
  parseQuantity,
  parseSpan,
  parseWorth,
  requireText,
  role,
} from './claim-options.js';
import { dayOf, notBeforeReceipt } from './day.js';
import { claimsOf, whichClaim } from './which.js';

/** Kinds of note that a person can type; `answered` is recorded by the command that prepares the letter. */
export type TypedClaimKind = Exclude<ClaimNoteKind, 'answered'>;

/** A body whose choices the schema has yet to check. */
type Draft = { is: TypedClaimKind; claim: ClaimId } & Record<string, unknown>;

/**
 * The body of an entry from typed options; the schema has yet to check it. Throws DossierError `bad-value` with the
 * option for what is missing or not understood.
 */
export function claimNoteBody(
  is: TypedClaimKind,
  word: string | undefined,
  says: ClaimOptions,
  state: RecordState,
  now: Date,
): Draft {
  const claim = is === 'received' ? newClaim(says, state) : whichClaim(says, state);
  const common = {
    is,
    claim,
    evidence: says.paper.map((id) => requireEvidence(id, state)),
    note: says.note,
    replaces: says.correct === undefined ? undefined : entryNumber(says.correct),
  };
  const usual = state.delivery.currency;
  const on = () => dayOf(says.on, says.zone, state.delivery, now);
  const sent = () => (says.sent === undefined ? undefined : dayOf(says.sent, says.zone, state.delivery, now));
  const told = { by: says.by, to: says.to, form: says.form };
  const answeredOn = () => notBeforeReceipt(on(), claim, state);
  switch (is) {
    case 'received':
      return {
        ...common,
        claimant: {
          name: requireText(word, 'claimant', 'who claims'),
          role: role(requireText(says.as, '--as', 'which part they play'), claimantRole.options, '--as'),
          address: says.address,
        },
        theirNumber: says.number,
        ourNumber: says.ourNumber ?? `${state.delivery.delivery} ${claim}`,
        received: on(),
        sent: sent(),
        receiptNoted: says.receiptNoted ? true : undefined,
        form: says.form,
        amount: parseMoneyOption('--amount', says.amount, usual),
        alsoFiledWith: says.alsoFiledWith.length === 0 ? undefined : says.alsoFiledWith,
        grounds: says.ground,
        contents: claimContentsOf(says),
      };
    case 'terms':
      return {
        ...common,
        governs: choice('law or contract', requireText(word, 'governs', 'what governs'), governing.options),
        measure: says.measure,
      };
    case 'clock-set':
      return { ...common, clock: requireText(word, 'clock', 'which clock'), ...parseSpan(says.span) };
    case 'letter':
      return {
        ...common,
        letter: choice('letter', requireText(word, 'letter', 'which letter'), letterKind.options),
        way: choice(
          'way',
          requireText(says.way, '--way', 'whether it came or went'),
          ['received', 'sent'],
          '--way',
        ),
        on: on(),
        sent: sent(),
        with: requireText(says.with, '--with', 'from whom or to whom'),
        form: says.form,
      };
    case 'offer':
      return {
        ...common,
        amount: amount(word, usual),
        by: says.by ?? 'carrier',
        on: on(),
        firm: says.firm,
      };
    case 'payment':
      return { ...common, amount: amount(word, usual), by: says.by ?? 'carrier', on: on() };
    case 'declined':
      return {
        ...common,
        on: answeredOn(),
        inWriting: says.inWriting,
        ...told,
        onBehalf: says.onBehalf ? true : undefined,
        part: parseMoneyOption('--part', says.part, usual),
        reasons: [...(word === undefined ? [] : [word]), ...says.reason],
        items: says.item.length === 0 ? undefined : says.item.map(parseItemReason),
      };
    case 'admitted':
      return { ...common, on: answeredOn(), ...told, part: amount(word, usual) };
    case 'papers-returned':
      return { ...common, on: answeredOn(), ...told, to: says.to ?? word };
    case 'closed':
      return {
        ...common,
        on: answeredOn(),
        how: choice('way to end', requireText(word, 'how', 'how it ended'), claimClosed.shape.how.options),
      };
    case 'amount':
      return {
        ...common,
        item: choice('item', requireText(word, 'item', 'what it is'), amountItem.options),
        saidBy: saidBy(says),
        line: findLine(state.delivery, says.line),
        ...parseWorth(says, usual),
      };
    case 'quantity': {
      return {
        ...common,
        state: choice('state', requireText(word, 'state', 'in which state'), quantityState.options),
        line: findLine(state.delivery, requireText(says.line, '--line', 'of which line')),
        ...parseQuantity(requireText(says.quantity, '--quantity', 'how much')),
        saidBy: saidBy(says),
      };
    }
    case 'cause':
      if (says.paper.length === 0) requireText(undefined, '--paper', 'which evidence is behind it');
      return {
        ...common,
        cause: choice('cause', requireText(word, 'cause', 'which cause'), exceptedCause.options),
      };
    default:
      return assertNever(is);
  }
}

const saidBy = (says: ClaimOptions) =>
  role(requireText(says.saidBy, '--said-by', 'who says so'), statementSource.options, '--said-by');

function newClaim(says: ClaimOptions, state: RecordState): ClaimId {
  if (says.correct !== undefined) return whichClaim(says, state);
  // A claim that was struck keeps its number.
  const struck = state.strikes.flatMap(({ entry }) =>
    entry.type === 'claim-noted' ? [entry.body.claim] : [],
  );
  const last = [...claimsOf(state), ...struck].reduce(
    (most, id) => Math.max(most, Number(id?.slice(1) ?? 0)),
    0,
  );
  return claimId.parse(`c${last + 1}`);
}

function requireEvidence(id: string, state: RecordState): string {
  if (state.evidence.some(({ evidence }) => evidence === id)) return id;
  if (Number(id.slice(1)) <= lastOf(state)) return evidenceNamed(state, id, '--paper').evidence;
  const documents = state.evidence.filter(({ kind }) => kind === 'document' || kind === 'photo');
  throw new DossierError('bad-value', `there is no evidence ${id}`, {
    where: { field: '--paper' },
    fix: 'Take the paper in first: dossier collect FILE. It says the number.',
    choices: documents.map(({ evidence }) => evidence),
  });
}
