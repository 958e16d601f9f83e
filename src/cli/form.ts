import { Command } from 'commander';

/** One way of writing something down: its words, and how what is typed is called. */
export interface Form {
  name: string;
  argument: string;
  argumentIs: string;
  summary: string;
  options: readonly (readonly [flags: string, description: string])[];
  example: string;
}

/** A command with the form's own argument and options, and the choice of a delivery; more options are the caller's to add. */
export function commandOf({ name, argument, argumentIs, summary, options, example }: Form): Command {
  const command = new Command(name)
    .description(`Write down ${summary}.`)
    .argument(argument, argumentIs)
    .addHelpText('after', `\nExample:\n  ${example}`);
  for (const [flags, description] of options) command.option(flags, description);
  return command.option('-d, --delivery <folder>', 'the delivery (default: the folder you are in)');
}
