import { Option } from 'commander';

/** Options that many commands have, in the same words. */

export const DELIVERY = new Option(
  '-d, --delivery <folder>',
  'the delivery (default: the folder you are in)',
);
export const ENTERED_BY = new Option(
  '--entered-by <name>',
  'who enters it (default: DOSSIER_BY or your account)',
);
export const JSON_ANSWER = new Option('--json', 'the answer as JSON');
