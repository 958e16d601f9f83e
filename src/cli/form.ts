import { Command } from 'commander';

/** One way of writing something down: its words, and how what is typed is called. */
export interface EntryForm {
  name: string;
  argument: string;
  argumentDescription: string;
  summary: string;
  options: readonly (readonly [flags: string, description: string])[];
  example: string;
}

/** A command with the form's own argument and options, and the choice of a delivery; more options are the caller's to add. */
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
  return command.option('-d, --delivery <folder>', 'the delivery (default: the folder you are in)');
}
