import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { askUntilValid } from '../ask-and-retry.js';
import { JSON_ANSWER } from '../common-options.js';
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
  goods?: string[];
  compartment?: string[];
  ref?: string[];
  rules?: string[];
  currency?: string;
  by?: string;
  json?: boolean;
}

const QUESTIONS = [
  ['number', 'Number of the delivery'],
  ['carrier', 'Carrier'],
  ['shipper', 'Shipper'],
  ['receiver', 'Receiver'],
  ['trailer', 'Trailer number'],
] as const;

const STOP_QUESTIONS = [
  [
    'load',
    'Loading: place; its time zone where the place does not tell it; planned time and shipper if known (Yuma AZ, or Example Farm; Arizona; 2026-07-14T04:00; Dry Wash Growers)',
  ],
  [
    'unload',
    'Unloading: place; time zone; planned time and consignee if known (Omaha NE, or Example Dock; America/Chicago; 2026-07-16T06:00; Peak Produce)',
  ],
] as const;

export function newCommand({ output, now }: CliContext): Command {
  const stops: PromptedStop[] = [];
  const collect = (does: PromptedStop['does']) => (at: string) => {
    stops.push({ does, at });
  };
  return new Command('new')
    .description('Make a delivery folder: its facts in delivery.yaml, its record beside it.')
    .argument('<folder>', 'the folder to make')
    .option('-f, --file <yaml>', 'take the facts from this delivery.yaml')
    .option('--number <number>', 'number of the delivery')
    .option('--carrier <name>', 'carrier')
    .option('--shipper <name>', 'shipper')
    .option('--receiver <name>', 'receiver')
    .option('--trailer <number>', 'trailer number')
    .option(
      '--load <place;zone;planned;party>',
      'where it loads: "Yuma AZ" or "Example Farm; Arizona", then planned time and shipper if known; once for each stop, in order',
      collect('load'),
    )
    .option(
      '--unload <place;zone;planned;party>',
      'where it unloads: "Omaha NE" or "Example Dock; America/Chicago", then planned time and consignee if known; once for each stop, in order',
      collect('unload'),
    )
    .option(
      '--goods <line...>',
      'a line of the bill: "romaine; 36 °F; 2 °F; 12" (goods; set point; tolerance; pallets); with several stops also from and to: "…; load-1; drop-2"',
    )
    .option(
      '--compartment <room...>',
      'a compartment, from the front wall to the doors: "front; 20 ft; -10 °F; 5 °F" (name; bulkhead behind it; set point; tolerance); each line of goods then says "in front"',
    )
    .option(
      '--ref <number...>',
      'what the trade files by: "bol 0044719" "pro 771" "drop-1: po 8812"; kinds: bol, pro, po, load, trailer, seal, claim, lot, driver',
    )
    .option(
      '--rules <set...>',
      'rule sets that hold together, each a shipped one or a path (default: produce); all shipped ones stand in docs/rules.md',
    )
    .option('--currency <code>', 'of amounts that name none (default: USD where all stops are in the US)')
    .option('--by <name>', 'who makes it (default: DOSSIER_BY or your account)')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier new deliveries/4711                      asks for what it needs
  dossier new deliveries/4711 -f facts.yaml        facts from a file
  dossier new deliveries/4711 --number 4711 --carrier "Example Haulage" \\
    --trailer T-7 --load "Yuma AZ; America/Phoenix" \\
    --unload "Omaha NE; America/Chicago" --goods "lettuce-romaine; 36 °F; 2 °F; 12"
  dossier new deliveries/4712 … --load "Yuma AZ" \\
    --unload "Denver CO" --unload "Omaha NE" \\
    --goods "strawberry; 32 °F; 2 °F; 18; load-1; drop-1" "celery; 32 °F; 2 °F; 6; load-1; drop-2"
  dossier new deliveries/4713 … --compartment "front; 20 ft; -10 °F; 5 °F" "rear; ; 34 °F" \\
    --goods "sweet corn, frozen; in front" "kale; in rear"

Everything can be changed later in delivery.yaml; each change enters the record.`,
    )
    .action(async (folder: string, options: Options) => {
      const { newDelivery } = await import('../../jobs/new-delivery.js');
      const facts = options.file === undefined ? await promptFacts(options, stops, output) : undefined;
      const made = await newDelivery({
        folder,
        by: resolveEnteredBy(options.by),
        now,
        ...(facts === undefined ? { file: options.file ?? '' } : { facts }),
      });
      if (options.json === true) return output.json(made);
      output.line(
        escapeControls(
          `${made.folder}: delivery ${made.delivery}, rule set ${[made.rules].flat().join(' + ')}`,
        ),
      );
      for (const { id, place, zone } of made.stops)
        output.note(escapeControls(`${id}: ${place}, times in ${zone}`));
      const named = pathForShell(folder);
      output.note(
        `Look over its delivery.yaml; then: dossier collect FILES -d ${named}, dossier gaps ${named}`,
      );
    });
}

export interface PromptedStop {
  does: 'load' | 'unload';
  at: string;
}

export interface PromptedFacts {
  number: string;
  carrier: string;
  shipper: string;
  receiver: string;
  trailer: string;
  stops: PromptedStop[];
  goods: string[];
  references: string[];
  compartments?: string[];
  rules: string | string[];
  currency?: string;
}

async function promptFacts(
  options: Options,
  stops: readonly PromptedStop[],
  output: Output,
): Promise<PromptedFacts> {
  const facts: PromptedFacts = {
    number: options.number ?? '',
    carrier: options.carrier ?? '',
    shipper: options.shipper ?? '',
    receiver: options.receiver ?? '',
    trailer: options.trailer ?? '',
    stops: [...stops],
    goods: options.goods ?? [],
    references: options.ref ?? [],
    rules: oneOrSeveral(options.rules?.flatMap((set) => set.split(',')) ?? ['produce']),
    ...omitUndefined({ currency: options.currency, compartments: options.compartment }),
  };
  const needed = ['number', 'carrier', 'trailer'] as const;
  const lacks = (does: PromptedStop['does']) => !facts.stops.some((stop) => stop.does === does);
  if (!isInteractive()) {
    const missing = [
      ...needed.filter((key) => facts[key] === ''),
      ...(['load', 'unload'] as const).filter(lacks),
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
  for (const [does, question] of STOP_QUESTIONS) {
    if (!lacks(does)) continue;
    for (let first = true; ; first = false) {
      const at = await askUntilValid(
        output,
        () => (first ? prompt(question) : prompt(`${question}; another, or empty when done`, '')),
        (answer) =>
          answer === '' && !first ? undefined : requireAnswer({ stops: withOther({ does, at: answer }) }),
      );
      if (at === '') break;
      facts.stops.push({ does, at });
    }
  }
  while (options.goods === undefined) {
    const line = await askUntilValid(
      output,
      () =>
        prompt(
          facts.stops.length > 2
            ? 'A line of the bill: goods; set point; tolerance; pallets; from; to (empty when done)'
            : 'A line of the bill: goods; set point; tolerance; pallets (empty when done)',
          '',
        ),
      // One line alone is in one compartment: all of them together are held against the trailer at the end.
      (answer) =>
        answer === '' || facts.compartments !== undefined
          ? undefined
          : requireAnswer({ stops: facts.stops, goods: [answer] }),
    );
    if (line === '') break;
    facts.goods.push(line);
  }
  if (options.ref === undefined) facts.references = await promptReferences(facts.stops, output);
  return facts;
}

async function promptReferences(stops: PromptedStop[], output: Output): Promise<string[]> {
  const { requireReferences } = await import('../../jobs/new-delivery.js');
  const split = (answer: string) =>
    answer
      .split(',')
      .map((one) => one.trim())
      .filter((one) => one !== '');
  const answer = await askUntilValid(
    output,
    () => prompt('Numbers it is filed by, with commas between (bol 0044719, pro 771, drop-1: po 8812)', ''),
    (typed) => requireReferences(split(typed), stops),
  );
  return split(answer);
}

/** A stop with one of the other side, so that it can be judged alone. */
function withOther(stop: PromptedStop): PromptedStop[] {
  const other = { does: stop.does === 'load' ? 'unload' : 'load', at: 'x; UTC' } as const;
  return stop.does === 'load' ? [stop, other] : [other, stop];
}

/** One set is written as a word, several as a list. */
const oneOrSeveral = (sets: string[]): string | string[] => (sets.length === 1 ? (sets[0] ?? '') : sets);
