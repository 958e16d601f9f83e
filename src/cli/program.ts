import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { DossierError } from '../core/model/error.js';
import { answerCommand } from './commands/answer.js';
import { buildCommand } from './commands/build.js';
import { checklistCommand } from './commands/checklist.js';
import { collectCommand } from './commands/collect.js';
import { correctCommand } from './commands/correct.js';
import { describeCommand } from './commands/describe.js';
import { fingerprintCommand } from './commands/fingerprint.js';
import { gapsCommand } from './commands/gaps.js';
import { identityCommand } from './commands/identity.js';
import { inspectionsCommand } from './commands/inspections.js';
import { loadCommand } from './commands/load.js';
import { mergeCommand } from './commands/merge.js';
import { newCommand } from './commands/new.js';
import { publishedCommand } from './commands/published.js';
import { recordCommand } from './commands/record.js';
import { admitCommand, strikeCommand } from './commands/strike.js';
import { tempsCommand } from './commands/temps.js';
import { timelineCommand } from './commands/timeline.js';
import { trailCommand } from './commands/trail.js';
import { verifyCommand } from './commands/verify.js';
import type { CliContext } from './context.js';
import { EXIT, type ExitCode } from './exit.js';
import { currentArguments } from './former-commands.js';
import { Interrupted, Interruption } from './interruption.js';
import { escapeControlsPerLine, type Output } from './output.js';
import { printProblem } from './problems.js';

const EXAMPLES = `
Examples:
  dossier new my-delivery                        make a delivery folder (asks)
  dossier collect ~/Pictures/load -d my-delivery take evidence in
  dossier record pulp 34.2F --line romaine       write down a reading
  dossier correct e12 39F --why "typed C for F"   put right what was mistyped
  dossier strike e13 --why "of another trailer"  say that an entry does not count
  dossier describe e7 --subject damage           say what evidence shows
  dossier gaps my-delivery                       what is missing now
  dossier answer my-delivery                     what a claim asks, and by when
  dossier fingerprint my-delivery                one line that proves later what was there
  dossier build -d my-delivery                   the signed PDF
  dossier verify dossier.pdf                     check one, yours or a stranger's

Exit codes: 0 fine, 1 done and the answer is no, 2 bad use or bad input, 70 a bug,
130 stopped by Ctrl-C.
The tool gives no legal advice and never says whether food is safe to eat.`;

function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

function makeProgram(context: CliContext): Command {
  const program = new Command('dossier')
    .description('Proof of one refrigerated-produce delivery: collected, checked for gaps, signed.')
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print help')
    .addHelpText('after', EXAMPLES)
    .showSuggestionAfterError()
    // Inherited by every command: options behind a subcommand are the subcommand's own.
    .enablePositionalOptions()
    .exitOverride()
    .configureOutput({
      writeOut: (text) => context.output.line(escapeControlsPerLine(text.trimEnd())),
      writeErr: (text) => context.output.note(escapeControlsPerLine(text.trimEnd())),
    });
  for (const add of [
    newCommand,
    collectCommand,
    recordCommand,
    correctCommand,
    strikeCommand,
    admitCommand,
    mergeCommand,
    describeCommand,
    gapsCommand,
    tempsCommand,
    timelineCommand,
    loadCommand,
    inspectionsCommand,
    trailCommand,
    checklistCommand,
    fingerprintCommand,
    buildCommand,
    verifyCommand,
    answerCommand,
    publishedCommand,
    identityCommand,
  ])
    program.addCommand(add(context));
  inherit(program);
  return program;
}

/** Makes commands and subcommands print, suggest and exit as the program does. */
function inherit(parent: Command): void {
  for (const command of parent.commands) {
    inherit(command.copyInheritedSettings(parent));
    // A command with subcommands reports an unknown one itself, with a suggestion.
    command.allowExcessArguments(command.commands.length > 0);
  }
}

/**
 * A temperature or an acceleration below zero as an argument of its own: `-10F` begins like an option. The sign of
 * arithmetic (U+2212) is read as the same number and taken for no option.
 */
const withoutMinus = (argument: string): string =>
  /^-\d+(?:[.,]\d+)?\s?(?:°?[CF]|g|m\/s|mph|km\/h)/i.test(argument) ? argument.replace('-', '−') : argument;

/** Runs one command line to its end and gives the exit code. Never throws. */
export async function runCli(args: string[], output: Output, now = () => new Date()): Promise<number> {
  let code: ExitCode = EXIT.fine;
  const interruption = new Interruption();
  const context: CliContext = {
    output,
    now,
    interruption: () => interruption.signal(),
    exit: (said) => {
      if (said > code) code = said;
    },
  };
  const program = makeProgram(context);
  try {
    if (args.length === 0) program.outputHelp();
    else
      await program.parseAsync(
        currentArguments(args.map(withoutMinus), (line) => output.note(line)),
        { from: 'user' },
      );
    return code;
  } catch (error) {
    if (error instanceof Interrupted) {
      output.note(error.message);
      return EXIT.interrupted;
    }
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.fine : EXIT.badInput;
    if (error instanceof DossierError) {
      printProblem(output, error.toProblem());
      return EXIT.badInput;
    }
    output.note(`This is a bug in load-dossier ${version()}; please report it with these lines:`);
    output.note(
      escapeControlsPerLine(error instanceof Error ? (error.stack ?? error.message) : String(error)),
    );
    return EXIT.bug;
  } finally {
    interruption.end();
  }
}
