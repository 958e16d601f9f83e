import type { ReadingInput } from '../../jobs/record-reading.js';
import type { EntryForm } from '../form.js';
import { INSPECTION_FORM } from './inspection-form.js';

/** How a reading is typed after `dossier record`. */
export type ReadingForm = EntryForm & { kind: Exclude<ReadingInput['kind'], 'outcome' | 'exception'> };

/** Every kind of reading that is recorded from the terminal, in the order of the help. */
export const READING_FORMS: readonly ReadingForm[] = [
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
