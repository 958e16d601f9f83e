import type { TypedClaimKind } from '../../jobs/claim.js';
import type { EntryForm } from '../form.js';

export const CLAIM_EXAMPLE = 'dossier record claim received "Mock Elms Produce" --as receiver --paper e31';

export type ClaimForm = EntryForm & { is: TypedClaimKind };

const ON = ['--on <day>', 'on which day, such as 2026-08-03 (default: today)'] as const;
const ZONE = ['--zone <zone>', 'zone of that day (default: that of the last place of unloading)'] as const;
const FORM = ['--form <form>', 'how: paper, e-mail, portal or in-person'] as const;
const SENT = ['--sent <day>', 'of what came: on which day it was sent, where that is known'] as const;
const TO = ['--to <name>', 'to whom'] as const;
const BY = ['--by <who>', 'carrier (default) or insurer'] as const;
const SAID_BY = [
  '--said-by <who>',
  'claimant, carrier, shipper, receiver, inspector, market-report or other',
] as const;

/** Commands of `dossier record claim`, one a kind of note. */
export const CLAIM_FORMS: readonly ClaimForm[] = [
  {
    name: 'received',
    is: 'received',
    argument: '<claimant>',
    argumentDescription: 'who claims',
    summary: 'a claim that came in',
    options: [
      ['--as <role>', 'shipper, receiver, broker, insurer, owner or other'],
      ['--address <address>', 'their address'],
      ['--number <number>', 'their number for it'],
      ['--our-number <number>', 'the carrier’s own number for it (default: the delivery and c1, c2 …)'],
      ON,
      ZONE,
      SENT,
      ['--receipt-noted', 'the day of receipt is noted on the claim itself'],
      ['--amount <money>', 'what is asked, such as "12480.50 USD"'],
      ['--ground <text...>', 'what they say went wrong'],
      [
        '--also-filed-with <carrier...>',
        'other carriers to whom a similar claim on the shipment was presented',
      ],
      FORM,
      [
        '--says <what...>',
        'what the letter says: shipment, liability, amount (a stated one) or amount-to-work-out',
      ],
      ['--lacks <what...>', 'what it does not say, of the same'],
      ['--made <form>', 'written, electronic-agreed, electronic-not-agreed or spoken'],
    ],
    example: CLAIM_EXAMPLE,
  },
  {
    name: 'terms',
    is: 'terms',
    argument: '<governs>',
    argumentDescription:
      'us-carriage-by-law, us-carriage-by-contract, us-carriage-by-bill, us-carriage-waived, uniform-bill, cmr, state-law, ca-uniform-conditions or unknown',
    summary: 'what governs the carriage, with the paper that says so',
    options: [
      [
        '--measure <value>',
        'how these terms value the goods: destination-value, origin-value, invoice-value or agreed-value',
      ],
    ],
    example: 'dossier record claim terms us-carriage-by-contract --paper e33',
  },
  {
    name: 'clock',
    is: 'clock-set',
    argument: '<clock>',
    argumentDescription: 'a clock by its name in: dossier answer',
    summary: 'a time limit that the contract sets otherwise',
    options: [
      ['--span <span>', 'how long it runs, such as "45 days" or "10 working-days"'],
      ['--templates <folder>', 'templates of your own, which may hold clocks of your own'],
    ],
    example: 'dossier record claim clock us-acknowledge --span "15 days" --paper e33',
  },
  {
    name: 'letter',
    is: 'letter',
    argument: '<letter>',
    argumentDescription:
      'acknowledgement, request-for-papers, status-report, denial, offer, notice-to-shipper, notice-to-insurer, inspection-request, inspection-appeal, reservation, rejection-notice, refused-load, similar-claims, recourse or other',
    summary: 'a letter that came or went',
    options: [
      ['--way <way>', 'received or sent'],
      ['--with <name>', 'from whom or to whom'],
      ON,
      ZONE,
      SENT,
      FORM,
    ],
    example:
      'dossier record claim letter acknowledgement --way sent --with "Mock Elms Produce" --on 2026-08-05',
  },
  {
    name: 'offer',
    is: 'offer',
    argument: '<money>',
    argumentDescription: 'such as "4000 USD"',
    summary: 'an offer',
    options: [
      ['--by <who>', 'carrier (default), claimant or insurer'],
      ON,
      ZONE,
      ['--firm', 'it is firm and in writing'],
    ],
    example: 'dossier record claim offer "4000 USD" --firm --on 2026-09-10',
  },
  {
    name: 'payment',
    is: 'payment',
    argument: '<money>',
    argumentDescription: 'such as "4000 USD"',
    summary: 'a payment',
    options: [['--by <who>', 'carrier (default), insurer, shipper or other'], ON, ZONE],
    example: 'dossier record claim payment "4000 USD" --on 2026-09-20',
  },
  {
    name: 'declined',
    is: 'declined',
    argument: '[reason]',
    argumentDescription: 'why',
    summary: 'that the claim, or part of it, was declined',
    options: [
      ['--in-writing', 'in writing, saying that it is disallowed, with the reasons'],
      BY,
      ['--on-behalf', 'by the insurer, who says that it acts on behalf of the carrier'],
      TO,
      FORM,
      ['--part <money>', 'only as to so much'],
      ['--reason <text...>', 'more reasons'],
      ['--item <item...>', 'one item and its reason, such as "salvage-cost: no account of the sale"'],
      ON,
      ZONE,
    ],
    example: 'dossier record claim declined "warm when loaded" --in-writing --on 2026-09-10',
  },
  {
    name: 'admitted',
    is: 'admitted',
    argument: '<money>',
    argumentDescription: 'such as "1200 EUR"',
    summary: 'a part of the claim that is admitted',
    options: [BY, TO, FORM, ON, ZONE],
    example:
      'dossier record claim admitted "1200 EUR" --to "Mock Elms Produce" --form e-mail --on 2026-09-10',
  },
  {
    name: 'papers-returned',
    is: 'papers-returned',
    argument: '[name]',
    argumentDescription: 'to whom',
    summary: 'that the documents of the claim were sent back, with the proof of it',
    options: [BY, FORM, ON, ZONE],
    example:
      'dossier record claim papers-returned "Mock Elms Produce" --form paper --on 2026-09-12 --paper e41',
  },
  {
    name: 'closed',
    is: 'closed',
    argument: '<how>',
    argumentDescription: 'paid, settled, withdrawn, declined or suit',
    summary: 'how the claim ended',
    options: [ON, ZONE],
    example: 'dossier record claim closed settled --on 2026-10-01',
  },
  {
    name: 'cause',
    is: 'cause',
    argument: '<cause>',
    argumentDescription: 'act-of-god, public-enemy, act-of-shipper, public-authority or nature-of-goods',
    summary: 'a cause that excuses a carrier who was not negligent, with the evidence behind it',
    options: [],
    example: 'dossier record claim cause act-of-god --paper e40 --note "Road closed by a flood"',
  },
  {
    name: 'amount',
    is: 'amount',
    argument: '<item>',
    argumentDescription:
      'market-value, origin-value, invoice-value, agreed-value, arrived-value, salvage, salvage-cost, refunds, freight-paid, freight-due, carriage-charges, credit, released-value, mitigation-cost, inspection-cost or disposal-cost',
    summary: 'one line of the worksheet of amounts, as a paper says it',
    options: [
      ['--total <money>', 'the whole, such as "12480.50 USD"'],
      ['--each <money>', 'or so much each'],
      [
        '--quantity <quantity>',
        'how many, such as "876 cartons"; with --each a unit alone, such as cartons: so many as the claim, else the outcomes, say were lost',
      ],
      ['--line <line>', 'which line of the bill'],
      SAID_BY,
    ],
    example:
      'dossier record claim amount invoice-value --each "14.25 USD" --quantity "876 cartons" --line romaine --said-by claimant --paper e32',
  },
  {
    name: 'quantity',
    is: 'quantity',
    argument: '<state>',
    argumentDescription: 'shipped, accepted, rejected, damaged or short',
    summary: 'how much of a line was in which state',
    options: [
      ['--quantity <quantity>', 'such as "876 cartons"'],
      ['--line <line>', 'which line of the bill'],
      SAID_BY,
    ],
    example:
      'dossier record claim quantity rejected --quantity "876 cartons" --line romaine --said-by receiver --paper e30',
  },
];
