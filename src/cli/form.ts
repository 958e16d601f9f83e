import { Command } from 'commander';
import { DELIVERY } from './common-options.js';

/** The form of one kind of entry: its words, and the name of its argument. */
export interface EntryForm {
  name: string;
  argument: string;
  argumentDescription: string;
  summary: string;
  options: readonly (readonly [flags: string, description: string])[];
  example: string;
}

/** A command with the form's argument and options, and the choice of a delivery; the caller may add options. */
export function entryCommand({
  name,
  argument,
  argumentDescription,
  summary,
  options,
  example,
}: EntryForm): Command {
  const command = new Command(name)
    .description(`Write down ${summary}.`)
    .argument(argument, argumentDescription)
    .addHelpText('after', `\nExample:\n  ${example}`);
  for (const [flags, description] of options) command.option(flags, description);
  return command.addOption(DELIVERY);
}
