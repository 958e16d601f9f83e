import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { askUntilValid } from '../ask-and-retry.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { escapeControls, type Output, pathForShell } from '../output.js';
import { isInteractive, prompt } from '../prompts.js';

interface Options {
  file?: string;
  number?: string;
  carrier?: string;
  shipper?: string;
  receiver?: string;
  trailer?: string;
  load?: string;
  unload?: string;
  goods?: string[];
  rules?: string;
  by?: string;
  json?: boolean;
}

const QUESTIONS = [
  ['number', 'Number of the delivery'],
  ['carrier', 'Carrier'],
  ['shipper', 'Shipper'],
  ['receiver', 'Receiver'],
  ['trailer', 'Trailer number'],
  ['load', 'Loading: place, then its time zone (Yuma AZ; America/Phoenix)'],
  ['unload', 'Unloading: place, then its time zone (Omaha NE; America/Chicago)'],
] as const;

export function newCommand({ output, now }: CliContext): Command {
  return new Command('new')
    .description('Make a delivery folder: its facts in delivery.yaml, its record beside it.')
    .argument('<folder>', 'the folder to make')
    .option('-f, --file <yaml>', 'take the facts from this delivery.yaml')
    .option('--number <number>', 'number of the delivery')
    .option('--carrier <name>', 'carrier')
    .option('--shipper <name>', 'shipper')
    .option('--receiver <name>', 'receiver')
    .option('--trailer <number>', 'trailer number')
    .option('--load <place;zone>', 'where it loads: "Yuma AZ; America/Phoenix"')
    .option('--unload <place;zone>', 'where it unloads: "Omaha NE; America/Chicago"')
    .option(
      '--goods <line...>',
      'a line of the bill: "romaine; 36 °F; 2 °F; 12" (goods; set point; tolerance; pallets)',
    )
    .option('--rules <set>', 'rule set: a shipped one, or a path (default: produce)')
    .option('--by <name>', 'who makes it (default: DOSSIER_BY or your account)')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Examples:
  dossier new deliveries/4711                      asks for what it needs
  dossier new deliveries/4711 -f facts.yaml        facts from a file
  dossier new deliveries/4711 --number 4711 --carrier "Example Haulage" \\
    --trailer T-7 --load "Yuma AZ; America/Phoenix" \\
    --unload "Omaha NE; America/Chicago" --goods "lettuce-romaine; 36 °F; 2 °F; 12"

Everything can be changed later in delivery.yaml; each change enters the record.`,
    )
    .action(async (folder: string, options: Options) => {
      const { newDelivery } = await import('../../jobs/new-delivery.js');
      const facts = options.file === undefined ? await promptFacts(options, output) : undefined;
      const made = await newDelivery({
        folder,
        by: resolveEnteredBy(options.by),
        now,
        ...(facts === undefined ? { file: options.file ?? '' } : { facts }),
      });
      if (options.json === true) return output.json(made);
      output.line(escapeControls(`${made.folder}: delivery ${made.delivery}, rule set ${made.rules}`));
      const named = pathForShell(folder);
      output.note(
        `Look over its delivery.yaml; then: dossier collect FILES -d ${named}, dossier gaps ${named}`,
      );
    });
}

export interface PromptedFacts {
  number: string;
  carrier: string;
  shipper: string;
  receiver: string;
  trailer: string;
  load: string;
  unload: string;
  goods: string[];
  rules: string;
}

async function promptFacts(options: Options, output: Output): Promise<PromptedFacts> {
  const facts: PromptedFacts = {
    number: options.number ?? '',
    carrier: options.carrier ?? '',
    shipper: options.shipper ?? '',
    receiver: options.receiver ?? '',
    trailer: options.trailer ?? '',
    load: options.load ?? '',
    unload: options.unload ?? '',
    goods: options.goods ?? [],
    rules: options.rules ?? 'produce',
  };
  const needed = ['number', 'carrier', 'trailer', 'load', 'unload'] as const;
  if (!isInteractive()) {
    const missing = [
      ...needed.filter((key) => facts[key] === ''),
      ...(facts.goods.length === 0 ? ['goods'] : []),
    ];
    if (missing.length > 0)
      throw new DossierError('bad-usage', `not told: ${missing.map((key) => `--${key}`).join(', ')}`, {
        fix: 'Give these options, or -f FILE with a delivery.yaml, or run it on a terminal to be asked.',
      });
    return facts;
  }
  const { requireAnswer } = await import('../../jobs/new-delivery.js');
  for (const [key, question] of QUESTIONS)
    if (facts[key] === '')
      facts[key] = await askUntilValid(
        output,
        () => prompt(question),
        (answer) => requireAnswer({ [key]: answer }),
      );
  while (options.goods === undefined) {
    const line = await askUntilValid(
      output,
      () => prompt('A line of the bill: goods; set point; tolerance; pallets (empty when done)', ''),
      (answer) => (answer === '' ? undefined : requireAnswer({ goods: [answer] })),
    );
    if (line === '') break;
    facts.goods.push(line);
  }
  return facts;
}
