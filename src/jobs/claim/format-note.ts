import type { ClaimNote, Day } from '../../core/model/claim.js';
import { assertNever } from '../../core/model/error.js';
import type { Money } from '../../core/model/money.js';
import { numbersFor } from '../../core/words/numbers.js';
import { plainSpaces } from '../../core/words/spaces.js';

const on = ({ date, zone }: Day) => `${date} (${zone})`;
const sum = (money: Money) => plainSpaces(numbersFor('en').statedMoney(money));

/** A claim note in one line. */
export function formatClaimNote(body: ClaimNote): string {
  const papers = body.evidence.length === 0 ? '' : `, by ${body.evidence.join(', ')}`;
  return `${body.claim}  ${formatNoteBody(body)}${papers}`;
}

/** Who told whom, and how, where that is said. */
function told({ by, to, form }: Pick<Extract<ClaimNote, { is: 'declined' }>, 'by' | 'to' | 'form'>): string {
  return [
    ...(by === undefined ? [] : [`, by the ${by}`]),
    ...(to === undefined ? [] : [`, to ${to}`]),
    ...(form === undefined ? [] : [`, ${form}`]),
  ].join('');
}

function formatNoteBody(body: ClaimNote): string {
  switch (body.is) {
    case 'received':
      return `claim of ${body.claimant.name} (${body.claimant.role}), our number ${body.ourNumber}, received ${on(body.received)}, ${body.amount === undefined ? 'no amount' : sum(body.amount)}`;
    case 'terms':
      return `governed by: ${body.governs}`;
    case 'clock-set':
      return `${body.clock} runs ${body.count} ${body.unit} by contract`;
    case 'letter':
      return `${body.letter} ${body.way}, ${on(body.on)}, ${body.with}`;
    case 'offer':
      return `offer of ${sum(body.amount)} by the ${body.by}, ${on(body.on)}${body.firm ? ', firm' : ''}`;
    case 'payment':
      return `payment of ${sum(body.amount)} by the ${body.by}, ${on(body.on)}`;
    case 'declined':
      return `declined ${body.part === undefined ? 'whole' : `as to ${sum(body.part)}`}, ${on(body.on)}, ${body.inWriting ? 'in writing' : 'not in writing'}${told(body)}`;
    case 'admitted':
      return `${sum(body.part)} admitted${told(body)}, ${on(body.on)}`;
    case 'papers-returned':
      return `papers of the claim returned${told(body)}, ${on(body.on)}`;
    case 'closed':
      return `closed: ${body.how}, ${on(body.on)}`;
    case 'amount': {
      const each =
        body.each === undefined
          ? ''
          : `${sum(body.each)} each for ${body.quantity ?? 'the'} ${body.unit}${body.quantity === undefined ? ' that were lost' : ''}`;
      return `${body.item} ${body.total === undefined ? each : sum(body.total)}${body.line === undefined ? '' : ` of ${body.line}`}, says the ${body.saidBy}`;
    }
    case 'quantity':
      return `${body.quantity} ${body.unit} of ${body.line} ${body.state}, says the ${body.saidBy}`;
    case 'cause':
      return `cause held to be: ${body.cause}`;
    case 'answered':
      return `${body.letter} put together for ${body.to}`;
    default:
      return assertNever(body);
  }
}
