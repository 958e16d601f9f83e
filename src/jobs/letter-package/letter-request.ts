import {
  LETTER_PROFILES,
  type LetterProfile,
  TEMPLATED_LETTER_KINDS,
  type TemplatedLetterKind,
} from '../../compose/letters/kinds.js';
import { firstLoading, readMilestones } from '../../core/assess/milestones.js';
import { isRefused, outcomesOf } from '../../core/assess/outcomes.js';
import { type ClaimId, LETTERS_BEFORE_CLAIM } from '../../core/model/claim.js';
import {
  type Language,
  language as languageSchema,
  type Paper,
  paper as paperSchema,
} from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { type Currency, type Money, parseMoney } from '../../core/model/money.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { RecordState } from '../../core/model/state.js';
import { parseItemReason } from '../claim/claim-options.js';
import { claimsOf, whichClaim } from '../claim/which.js';
import { unknownWord } from '../typed/place-options.js';

/** A letter request as typed. */
export interface TypedLetter {
  letter: string;
  claim?: string;
  to?: string;
  amount?: string;
  reasons: readonly string[];
  /** Items with their reasons, such as `salvage-cost: no account of the sale`. */
  items?: readonly string[];
  language?: string;
  paper?: string;
  firm: boolean;
  disallowsRest: boolean;
  loading: boolean;
}

/** A letter request, parsed. */
export interface LetterRequest {
  kind: TemplatedLetterKind;
  manner: LetterProfile;
  claim?: ClaimId;
  to?: { name: string; address?: string };
  amount?: Money;
  reasons: readonly string[];
  items: readonly { item: string; reason: string }[];
  language: Language;
  paper: Paper;
  firm: boolean;
  disallowsRest: boolean;
  loading: boolean;
}

/** Parses a typed request against the record. Throws DossierError `bad-usage` or `bad-value`. */
export function readLetterRequest(typed: TypedLetter, state: RecordState): LetterRequest {
  const kind = kindOf(typed.letter);
  const manner = LETTER_PROFILES[kind];
  const claim = claimOf(typed, kind, state);
  const to = recipient(typed.to, manner, claim, state);
  if (typed.firm && kind !== 'offer') throw onlyFor('--firm', 'offer');
  if (typed.disallowsRest && kind !== 'offer') throw onlyFor('--disallow-rest', 'offer');
  if (typed.amount !== undefined && kind !== 'offer' && kind !== 'denial')
    throw onlyFor('--amount', 'offer, or a denial of a part');
  if ((typed.items?.length ?? 0) > 0 && kind !== 'denial' && kind !== 'offer')
    throw onlyFor('--item', 'denial, or an offer that disallows the rest');
  if (typed.reasons.length + (typed.items?.length ?? 0) > 0 && kind === 'offer' && !typed.disallowsRest)
    throw new DossierError('bad-usage', 'an offer that disallows nothing gives no reasons', {
      where: { field: '--reason' },
      fix: 'Leave out --reason, or say --disallow-rest if the rest of the claim is declined by this letter.',
    });
  const amount = amountOf(typed.amount, state.delivery.currency);
  return {
    kind,
    manner,
    ...omitUndefined({ claim, to, amount }),
    reasons: typed.reasons,
    items: (typed.items ?? []).map(parseItemReason),
    language: oneOf('language', typed.language ?? state.delivery.show.language, languageSchema.options),
    paper: oneOf('paper', typed.paper ?? state.delivery.show.paper, paperSchema.options),
    firm: typed.firm,
    disallowsRest: typed.disallowsRest,
    loading: typed.loading,
  };
}

function kindOf(word: string): TemplatedLetterKind {
  const found = TEMPLATED_LETTER_KINDS.find((one) => one === word.trim().toLowerCase());
  if (found === undefined) throw unknownWord('letter', word, TEMPLATED_LETTER_KINDS);
  return found;
}

function oneOf<T extends string>(field: string, word: string, options: readonly T[]): T {
  const found = options.find((one) => one.toLowerCase() === word.trim().toLowerCase());
  if (found === undefined) throw unknownWord(field, word, options);
  return found;
}

/** Letters that answer a claim need one; the others take the only claim, if there is one. */
function claimOf({ claim }: TypedLetter, kind: TemplatedLetterKind, state: RecordState): ClaimId | undefined {
  if (claim !== undefined || !LETTERS_BEFORE_CLAIM.has(kind)) return whichClaim({ claim }, state);
  const [only, ...others] = claimsOf(state);
  return others.length === 0 ? only : undefined;
}

function recipient(
  name: string | undefined,
  { to }: LetterProfile,
  claim: ClaimId | undefined,
  state: RecordState,
): LetterRequest['to'] {
  const { parties } = state.delivery;
  const received = state.claims.findLast(
    (entry) => entry.is === 'received' && entry.claim === claim && entry.replacedBy === undefined,
  );
  const claimant = received?.is === 'received' ? received.claimant : undefined;
  const atStops = state.delivery.stops.flatMap(({ party }) => party ?? []);
  const ofDelivery = (role: 'shipper' | 'insurer') =>
    (role === 'shipper' ? shipperInDispute(state) : undefined) ?? parties[role];
  const meant = to === 'claimant' ? claimant : to === 'nobody' ? undefined : ofDelivery(to);
  const known = [claimant, ...Object.values(parties), ...atStops].filter((one) => one !== undefined);
  const found = name === undefined ? meant : (known.find((one) => one.name === name) ?? { name });
  if (found === undefined) return undefined;
  // A claimant who is a party of the delivery has the address recorded there.
  const address = found.address ?? known.find((one) => one.name === found.name && one.address)?.address;
  return { name: found.name, ...omitUndefined({ address }) };
}

/** Who shipped the goods that were refused, else those of the first loading stop. */
function shipperInDispute(state: RecordState) {
  const { stops, lines } = state.delivery;
  const outcomes = outcomesOf(state, readMilestones(state, Number.MAX_SAFE_INTEGER));
  const refused = lines.find(({ id }) => id === outcomes.find(isRefused)?.line);
  return (stops.find(({ id }) => id === refused?.from) ?? firstLoading(stops))?.party;
}

function amountOf(text: string | undefined, usual: Currency | undefined): Money | undefined {
  if (text === undefined) return undefined;
  const read = parseMoney(text, usual);
  if (read !== undefined) return read;
  throw new DossierError('bad-value', `"${text}" is not an amount`, {
    where: { field: '--amount' },
    fix: 'Write it with its currency, such as 3000.00 USD.',
  });
}

const onlyFor = (field: string, kind: string) =>
  new DossierError('bad-usage', `${field} belongs to the letter ${kind}`, {
    where: { field },
    fix: `Leave out ${field}, or write the letter it belongs to.`,
  });
