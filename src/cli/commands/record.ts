import { Command } from 'commander';
import type { OpenDelivery } from '../../jobs/delivery.js';
import type { ReadingInput } from '../../jobs/record-reading.js';
import { ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { type EntryForm, entryCommand } from '../form.js';
import { escapeControls } from '../output.js';
import { readPassphrase } from '../passphrase.js';
import { isInteractive, prompt } from '../prompts.js';
import { settleDoubts } from '../settle-doubts.js';
import { INSPECTION_FORM } from './inspection-form.js';
import { claimCommand } from './record-claim.js';
import { CLAIM_EXAMPLE } from './record-claim-forms.js';
import { CLOCK_EXAMPLE, clockCommand } from './record-clock.js';
import { CLOCK_STEP_EXAMPLE, clockStepCommand } from './record-clock-step.js';
import { NOTES_EXAMPLE, notesOptions } from './record-notes.js';
import { OUTCOME_EXAMPLES, outcomeCommands } from './record-outcome.js';

interface Common {
  delivery?: string;
  enteredBy?: string;
  by?: string;
  at?: string;
  stop?: string;
  position?: string;
  compartment?: string;
  line?: string;
  caption?: string;
  sure?: boolean;
  json?: boolean;
}

/** Options of a signed statement. */
interface SignerOptions {
  sign?: boolean;
  identity?: string | undefined;
  passphraseFile?: string | undefined;
  passphraseFd?: string | undefined;
}

type ReadingForm = EntryForm & { kind: Exclude<ReadingInput['kind'], 'outcome' | 'exception'> };

const FORMS: readonly ReadingForm[] = [
  {
    kind: 'pulp',
    name: 'pulp',
    argument: '<temperature>',
    argumentDescription: 'such as 34.2F or 1.2C',
    summary: 'a pulp temperature',
    options: [
      ['--from <whose>', 'driver (default), shipper, receiver, inspector or other'],
      ['--instrument <name>', 'the thermometer'],
    ],
    example: 'dossier record pulp 34.2F --line romaine --position nose --stop load-1 --at 04:10',
  },
  {
    kind: 'set-point',
    name: 'set-point',
    argument: '<temperature>',
    argumentDescription: 'such as 36F',
    summary: 'a set point as read or told',
    options: [
      ['--shown-by <source>', 'display (default), bill, dispatcher or shipper'],
      ['--run <mode>', 'continuous or start-stop'],
    ],
    example: 'dossier record set-point 36F --shown-by display --run continuous',
  },
  {
    kind: 'round',
    name: 'check',
    argument: '[box-air]',
    argumentDescription: 'air in the box, such as 37F',
    summary: 'a check of the running unit in transit',
    options: [
      ['--set-point <temperature>', 'set point on the display'],
      ['--fuel <level>', 'fuel of the unit, such as 3/4 or 60%'],
      ['--alarm <text...>', 'alarms on the display'],
    ],
    example: 'dossier record check 37F --set-point 36F --fuel 3/4',
  },
  {
    kind: 'seal',
    name: 'seal',
    argument: '<number>',
    argumentDescription: 'the number on it',
    summary: 'a seal',
    options: [['--state <state>', 'applied, intact, broken or removed']],
    example: 'dossier record seal 4471908 --state applied',
  },
  {
    kind: 'bracing',
    name: 'bracing',
    argument: '<device>',
    argumentDescription: 'air-bags, load-bars, straps, boards, foam-blocks or other',
    summary: 'what holds the load',
    options: [['--note <text>', 'where and how']],
    example: 'dossier record bracing load-bars --note "two behind the last row"',
  },
  {
    kind: 'pattern',
    name: 'pattern',
    argument: '<pattern>',
    argumentDescription: 'straight, turned, pinwheel or single',
    summary: 'how the pallets of some rows stand',
    options: [
      ['--rows <rows>', 'rows counted from the nose, such as 1-13 or 4'],
      [
        '--blocks <what...>',
        'what they stand in the way of: air-return, floor, ceiling, air-chute, rear-doors',
      ],
      ['--pallet-weight <weight>', 'weight of each pallet, such as 1,800lb'],
      ['--note <text>', 'more about it'],
    ],
    example: 'dossier record pattern straight --rows 1-6 --line romaine --stop load-1',
  },
  {
    kind: 'scale',
    name: 'scale',
    argument: '[gross]',
    argumentDescription: 'gross weight, such as 77,360lb',
    summary: 'what a scale showed, by axle group',
    options: [
      ['--steer <weight>', 'on the steer axle, such as 11,840lb'],
      ['--drive <weight>', 'on the drive axles'],
      ['--trailer <weight>', 'on the axles of the trailer'],
      ['--ticket <number>', 'number of the scale ticket'],
    ],
    example: 'dossier record scale --steer 11,840lb --drive 33,420lb --trailer 32,100lb --ticket 4471',
  },
  {
    kind: 'shock',
    name: 'shock',
    argument: '[peak]',
    argumentDescription: 'peak with its unit, such as 5.2g',
    summary: 'a shock, or hard braking, that a recorder marked',
    options: [
      ['--what <event>', 'shock (default), hard-braking, hard-acceleration, hard-turn or tilt'],
      ['--duration <time>', 'how long it lasted, such as 11ms'],
      ['--axis <axis>', 'vertical, lateral, longitudinal, x, y, z or resultant'],
      ['--threshold <acceleration>', 'what the recorder was set to, such as 3g'],
      ['--instrument <name>', 'the recorder'],
    ],
    example: 'dossier record shock 5.2g --duration 11ms --axis vertical --threshold 3g --at 03:14',
  },
  {
    kind: 'pallets',
    name: 'pallets',
    argument: '<state>',
    argumentDescription: 'leaning, fallen, shifted or crushed',
    summary: 'pallets as they were found',
    options: [
      ['--rows <rows>', 'rows counted from the nose, such as 7-8'],
      ['--count <number>', 'how many'],
      ['--photo <evidence...>', 'the photographs that show them, such as e71'],
      ['--note <text>', 'more about it'],
    ],
    example: 'dossier record pallets leaning --rows 7-8 --photo e71 --stop drop-1',
  },
  {
    kind: 'event',
    name: 'event',
    argument: '<event>',
    argumentDescription: 'arrived, doors-opened, loading-began, doors-closed, departed, refused …',
    summary: 'something that happened',
    options: [
      [
        '--reason <reason>',
        'of a stop: hours-of-service, rest, fuel, traffic, weather, breakdown, road-inspection, border or other',
      ],
      ['--note <text>', 'more about it'],
    ],
    example: 'dossier record event doors-closed --stop load-1 --at 2026-07-14T06:30',
  },
  INSPECTION_FORM,
  {
    kind: 'particular',
    name: 'particular',
    argument: '<of>',
    argumentDescription:
      'loaded-by, counted-by, count, harvest, cooling, previous-load, defrost, fresh-air-vent, market-price, payment or title',
    summary:
      'a particular of goods, unit or papers: who counted, how many, what the trailer carried before …',
    options: [
      ['--who <who>', 'who loaded or counted, the part first: "shipper J. Ortiz"'],
      ['--how-many <quantity>', 'of a count: 480 cartons'],
      ['--words <text>', 'what is stated'],
      ['--on <document>', 'on which document: its evidence (e31), or what it is'],
    ],
    example:
      'dossier record particular count --how-many "480 cartons" --line romaine --stop load-1 --who driver',
  },
  {
    kind: 'instrument',
    name: 'instrument',
    argument: '<name>',
    argumentDescription: 'its name as readings give it (P-7), or the number on it',
    summary: "a thermometer, portable recorder, sensor, or the unit's controller",
    options: [
      ['--type <type>', 'thermometer, recorder, sensor or controller'],
      ['--serial <number>', 'serial number'],
      ['--owner <who>', 'whose it is, the part first: "shipper Example Growers"'],
      ['--where <place>', 'where in the load or on the unit'],
      ['--accuracy <text>', 'accuracy as stated, such as "±1 °F"'],
      ['--certificate <text>', 'calibration certificate'],
      ['--calibrated <day>', 'day of its last calibration, 2026-05-01'],
      ['--serviced <day>', 'day of its last service'],
      ['--software <text>', "of the unit's controller: software and version"],
      ['--ice-before <temperature>', 'what it showed in ice water before use'],
      ['--ice-after <temperature>', 'what it showed in ice water after use'],
      ['--on <document>', 'on which document: its evidence (e31), or what it is'],
    ],
    example:
      'dossier record instrument 77120455 --type recorder --owner shipper --where "pallet 3, nose, carton top" --stop load-1',
  },
  {
    kind: 'contact',
    name: 'contact',
    argument: '<with>',
    argumentDescription: 'shipper, receiver, broker, dispatcher, insurer, carrier, inspector or other',
    summary: 'who was told what',
    options: [
      ['--with-name <name>', 'the name of the one who was told'],
      ['--how <way>', 'call (default), message, e-mail, in-person or letter'],
      ['--about <text>', 'what was said'],
      [
        '--subject <subject...>',
        'what it was about: pulp-temperatures, set-point, load-condition, delay, refusal, disposal, claim or other',
      ],
      ['--notice <of>', 'what it gives notice of: rejection, inspection-delay or refused-load'],
    ],
    example:
      'dossier record contact shipper --subject pulp-temperatures --about "romaine pulps at 42 F, load it" --at 05:05',
  },
  {
    kind: 'statement',
    name: 'statement',
    argument: '<text>',
    argumentDescription: 'the account, in quotes',
    summary: "a person's account in their own words",
    options: [
      [
        '--about <topic>',
        'trailer, unit, pulps, loading, dock-access, seal, alarm, delay, delivery, rejection or other',
      ],
      ['--sign', 'sign it with the identity of the person whose words these are'],
      ['--identity <folder>', 'their identity (default: DOSSIER_IDENTITY or .config/load-dossier)'],
      ['--passphrase-file <file>', 'file that holds its passphrase'],
      ['--passphrase-fd <number>', 'open file descriptor to read it from'],
    ],
    example:
      'dossier record statement "I was on the dock from 04:05 to 06:20." --about loading --by "R. Vela"',
  },
];

export function recordCommand(context: CliContext): Command {
  const command = notesOptions(new Command('record'), context)
    .description(
      'Write down a reading, unit check, event, refusal, acceptance, exception, inspection, instrument, particular, seal, pattern, bracing, scale ticket, shock, pallets, contact, statement or claim.',
    )
    .enablePositionalOptions()
    .addHelpText(
      'after',
      `
Examples:
${[...FORMS.map((form) => form.example), ...OUTCOME_EXAMPLES, CLOCK_EXAMPLE, CLOCK_STEP_EXAMPLE, CLAIM_EXAMPLE, NOTES_EXAMPLE, 'dossier record --checklist'].map((example) => `  ${example}`).join('\n')}

Times are local to the stop's place: 14:05, 2:05pm, yesterday 14:05, 2026-07-14T04:10.
Left out, it is now, unless the delivery ended more than a day ago: then say when, or
--at now. What lies far from its kin is asked about, or refused where nobody is there
to be asked: a pulp 40 °F from the instruction, a day outside the delivery, an event
that is there already. --sure says that it is right as it stands. Nothing recorded is ever changed: dossier correct and
dossier strike put right what was mistyped, as entries of their own.
Take no reading where the site's rules or a running unit make it unsafe.`,
    );
  for (const form of FORMS) command.addCommand(formCommand(form, context));
  for (const outcome of outcomeCommands(context)) command.addCommand(outcome);
  command.addCommand(clockCommand(context));
  command.addCommand(clockStepCommand(context));
  command.addCommand(claimCommand(context));
  return command;
}

function formCommand(form: ReadingForm, { output, now }: CliContext): Command {
  return entryCommand(form)
    .option('--at <time>', 'when, local to the stop; now, where the delivery is under way')
    .option('--stop <stop>', 'at which stop')
    .option('--line <line>', 'which line of the bill')
    .option('--position <position>', 'nose, middle or tail')
    .option('--compartment <name>', 'compartment of the trailer, where it has several')
    .option('--by <name>', 'who took it or saw it')
    .addOption(ENTERED_BY)
    .option('--caption <text>', 'a note beside it')
    .option('--sure', 'it is right, although it lies far from the rest of the delivery')
    .addOption(JSON_ANSWER)
    .action(async (word: string | undefined, options: Common & SignerOptions & Record<string, unknown>) => {
      const { recordReading } = await import('../../jobs/record-reading.js');
      const { delivery, enteredBy, json, sure, sign, identity, passphraseFile, passphraseFd, ...fields } =
        options;
      const folder = deliveryFolder(delivery);
      const by = resolveEnteredBy(enteredBy ?? options.by);
      if (options.stop === undefined && isInteractive() && json !== true) {
        const stop = await promptStop({ folder, by, now });
        if (stop !== undefined) fields.stop = stop;
      }
      const signer =
        sign === true ? { sign: await signerFrom({ identity, passphraseFile, passphraseFd }, now) } : {};
      const added = await settleDoubts(output, { word, fields }, sure === true, (typed, settled) =>
        recordReading({ folder, kind: form.kind, ...typed, enteredBy: by, now, ...signer, sure: settled }),
      );
      if (json === true) return output.json(added);
      for (const notice of added.notices) output.note(escapeControls(notice));
      output.line(`${added.evidence}  ${escapeControls(added.said)}`);
    });
}

async function signerFrom(options: SignerOptions, now: () => Date) {
  const { statementSigner } = await import('../../jobs/signing/sign-statement.js');
  const { identity: folder } = options;
  return statementSigner({
    identityFolder: folder,
    now,
    passphrase: (isNew) => readPassphrase(options, isNew),
  });
}

/** Suggests the stop where the truck seems to be; Enter accepts it, `-` means none. */
async function promptStop(open: OpenDelivery): Promise<string | undefined> {
  const { stopChoices } = await import('../../jobs/typed/stop-suggestion.js');
  const { stops, likely } = await stopChoices(open);
  if (likely === undefined) return undefined;
  const answer = await prompt(
    `At which stop? ${likely.because}; ${stops.join(', ')}, - for none`,
    likely.stop,
  );
  return answer === '-' ? undefined : answer;
}
