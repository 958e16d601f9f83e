import { Command } from 'commander';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { TypedClaimKind } from '../../jobs/claim.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { type EntryForm, entryCommand } from '../form.js';
import { escapeControls } from '../output.js';
import { printProblem } from '../problems.js';

export const CLAIM_EXAMPLE = 'dossier record claim received "Mock Elms Produce" --as receiver --paper e31';

const AMOUNTS_EXAMPLE = 'dossier record claim amounts worksheet.csv --paper e32 --said-by claimant --dry-run';

type ClaimForm = EntryForm & { is: TypedClaimKind };

const ON = ['--on <day>', 'on which day, such as 2026-08-03 (default: today)'] as const;
const ZONE = ['--zone <zone>', 'zone of that day (default: that of the last place of unloading)'] as const;
const FORM = ['--form <form>', 'paper, e-mail, portal or in-person'] as const;
const SAID_BY = [
  '--said-by <who>',
  'claimant, carrier, shipper, receiver, inspector, market-report or other',
] as const;

const FORMS: readonly ClaimForm[] = [
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
      ['--amount <money>', 'what is asked, such as "12480.50 USD"'],
      ['--ground <text...>', 'what they say went wrong'],
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
      'us-carriage-by-law, us-carriage-by-contract, us-carriage-by-bill, cmr, state-law or unknown',
    summary: 'what governs the carriage, with the paper that says so',
    options: [],
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
      'acknowledgement, request-for-papers, status-report, denial, offer, notice-to-shipper, notice-to-insurer, inspection-request, reservation or other',
    summary: 'a letter that came or went',
    options: [['--way <way>', 'received or sent'], ['--with <name>', 'from whom or to whom'], ON, ZONE, FORM],
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
      ['--part <money>', 'only as to so much'],
      ['--reason <text...>', 'more reasons'],
      ON,
      ZONE,
    ],
    example: 'dossier record claim declined "warm when loaded" --in-writing --on 2026-09-10',
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
      'market-value, invoice-value, arrived-value, salvage, salvage-cost, freight-paid, freight-due, credit, released-value, mitigation-cost, inspection-cost or disposal-cost',
    summary: 'one line of the worksheet of amounts, as a paper says it',
    options: [
      ['--total <money>', 'the whole, such as "12480.50 USD"'],
      ['--each <money>', 'or so much each'],
      ['--quantity <quantity>', 'how many, such as "876 cartons"'],
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

interface Common {
  delivery?: string;
  enteredBy?: string;
  json?: boolean;
  templates?: string;
}

/** `dossier record claim …`: notes on a claim, one per entry. */
export function claimCommand(context: CliContext): Command {
  const command = new Command('claim').description('Write down a claim and what is said of it.').addHelpText(
    'after',
    `
Examples:
${[...FORMS.map(({ example }) => example), AMOUNTS_EXAMPLE].map((example) => `  ${example}`).join('\n')}

Papers are taken in first: dossier collect FILE says their numbers.
What governs is never assumed: local law and the contract of carriage decide. This is not legal advice.`,
  );
  for (const form of FORMS) command.addCommand(formCommand(form, context));
  return command.addCommand(amountsCommand(context));
}

interface AmountsOptions extends Common {
  claim?: string;
  paper?: string[];
  saidBy?: string;
  dryRun?: boolean;
}

function amountsCommand({ output, exit, now }: CliContext): Command {
  return new Command('amounts')
    .description('Write down many amounts and quantities from a CSV table.')
    .argument('<file>', 'with the columns what, line, total, each, quantity, said-by, paper, note')
    .option('-d, --delivery <folder>', 'the delivery (default: the folder you are in)')
    .option('--claim <claim>', 'which claim, when there are several: c1, c2 …')
    .option('--paper <id...>', 'evidence that rows rest on which name none')
    .option('--said-by <who>', 'who says so, for rows that do not say')
    .option('--dry-run', 'say how each row is understood, write nothing')
    .option('--entered-by <name>', 'who enters it (default: DOSSIER_BY or your account)')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Example:
  ${AMOUNTS_EXAMPLE}

A row is an amount, such as invoice-value with each and quantity, or a total; or a
quantity, such as rejected. What a row says that is recorded already adds nothing.`,
    )
    .action(async (file: string, options: AmountsOptions) => {
      const { recordAmounts } = await import('../../jobs/claim-amounts.js');
      const dryRun = options.dryRun === true;
      const report = await recordAmounts({
        folder: deliveryFolder(options.delivery),
        by: resolveEnteredBy(options.enteredBy),
        now,
        file,
        dryRun,
        standing: { claim: options.claim, saidBy: options.saidBy, paper: options.paper },
      });
      if (report.problems.length > 0) exit(EXIT.badInput);
      if (options.json === true) return output.json(report);
      for (const notice of report.notices) output.note(escapeControls(notice));
      for (const { row, entry, said, outcome } of report.rows) {
        const before = outcome === 'already-held' ? '  (recorded before)' : '';
        const where = entry === undefined ? '' : `entry ${entry}  `;
        output.line(`row ${row}  ${where}${escapeControls(said)}${before}`);
      }
      const { recorded, held, refused } = report.counts;
      output.line();
      output.line(
        dryRun
          ? `${report.rows.length - held} understood, ${held} recorded before, ${refused} not understood; nothing was written.`
          : `${recorded} recorded; ${held} recorded before, nothing added for those; ${refused} not understood.`,
      );
      for (const problem of report.problems) printProblem(output, problem);
    });
}

function formCommand(form: ClaimForm, { output, now }: CliContext): Command {
  return entryCommand(form)
    .option('--claim <claim>', 'which claim, when there are several: c1, c2 …')
    .option('--paper <id...>', 'evidence that it rests on')
    .option('--note <text>', 'a note beside it')
    .option('--correct <entry>', 'the earlier entry that this corrects; both stay')
    .option('--entered-by <name>', 'who enters it (default: DOSSIER_BY or your account)')
    .option('--json', 'the answer as JSON')
    .action(async (word: string | undefined, options: Common & Record<string, unknown>) => {
      const { recordClaim } = await import('../../jobs/claim.js');
      const { delivery, enteredBy, json, templates, ...fields } = options;
      const folder = deliveryFolder(delivery);
      const noted = await recordClaim({
        folder,
        by: resolveEnteredBy(enteredBy),
        now,
        is: form.is,
        word,
        fields,
        ...omitUndefined({ templates }),
      });
      if (json === true) return output.json(noted);
      for (const notice of noted.notices) output.note(escapeControls(notice));
      const before = noted.added ? '' : '  (recorded before)';
      output.line(`entry ${noted.entry}  ${escapeControls(noted.said)}${before}`);
    });
}
