import type { EntryForm } from '../form.js';

/** `dossier record inspection`: what a certificate states of one lot. */
export const INSPECTION_FORM = {
  kind: 'inspection',
  name: 'inspection',
  argument: '<lot>',
  argumentDescription: 'the lot, as the certificate names it',
  summary: 'what an inspection certificate states of one lot',
  options: [
    ['--defect <text...>', 'each defect: "tipburn 8% serious 3%", "seedstems 4% permanent", "decay 2%"'],
    ['--total <percent>', 'the total of the certificate itself, such as "15% serious 9%"'],
    ['--count <quantity>', 'of how many the lot is, such as "480 cartons"'],
    ['--samples <number>', 'how many were looked at'],
    ['--pulps <range>', 'lowest and highest pulp temperature, such as "41F to 44F"'],
    ['--certificate <number>', 'number of the certificate'],
    ['--appeal', 'it is the result of an appeal'],
    ['--where <place>', 'where the lot was looked at, in the words of the certificate'],
    ['--ended <time>', 'when it ended; --at is when it began'],
    ['--requested-by <name>', 'who asked for it'],
    ['--requested-at <time>', 'when it was asked for'],
    ['--on <evidence>', 'the certificate on file, such as e31'],
    ['--dumped <quantity>', 'of a dumping certificate: how much was dumped'],
    ['--worthless', 'it states that the produce has no commercial value'],
    [
      '--certified-by <who>',
      'federal-inspector, other-official, inspection-agency or two-disinterested-persons',
    ],
    ['--marks <text>', 'brand or principal marks on the containers'],
    ['--shipper <name>', 'shipper on the certificate, with the address'],
  ],
  example:
    'dossier record inspection L-4471 --line romaine --stop drop-1 --at 10:15 --by "A. Quill, inspector" --count "480 cartons" --samples 24 --defect "tipburn 8% serious 3%" "decay 2%" --pulps "41F to 44F" --requested-by receiver --requested-at 08:20',
} as const satisfies EntryForm & { kind: 'inspection' };
