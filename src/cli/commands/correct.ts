import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { settleDoubts } from '../settle-doubts.js';

interface Options extends Record<string, unknown> {
  delivery?: string;
  enteredBy?: string;
  why: string;
  sure?: boolean;
  json?: boolean;
}

export function correctCommand({ output, now }: CliContext): Command {
  return new Command('correct')
    .description(
      'Put right a reading, event, outcome, exception, inspection, instrument, particular, seal, contact or statement that was mistyped.',
    )
    .argument('<entry>', 'the evidence (e12), or the number of its entry in the trail (#41)')
    .argument('[value]', 'the right value, as for dossier record; left out, the value stays')
    .requiredOption('--why <text>', 'why it was wrong')
    .addOption(DELIVERY)
    .option('--at <time>', 'the right time, local to the stop')
    .option('--stop <stop>', 'the right stop')
    .option('--line <line>', 'the right line of the bill of lading')
    .option('--position <position>', 'nose, middle or tail')
    .option('--compartment <name>', 'compartment of the trailer, where it has several')
    .option('--by <name>', 'who took it or saw it')
    .option('--from <whose>', 'of a pulp: driver, shipper, receiver, inspector or other')
    .option('--instrument <name>', 'the thermometer or recorder')
    .option('--shown-by <source>', 'of a set point: display, bill, dispatcher or shipper')
    .option('--run <mode>', 'continuous or start-stop')
    .option('--set-point <temperature>', 'of a unit check')
    .option('--fuel <level>', 'of a unit check')
    .option('--alarm <text...>', 'of a unit check')
    .option('--state <state>', 'of a seal: applied, intact, broken or removed')
    .option('--how <way>', 'of a contact or outcome: call, message, e-mail, in-person or letter')
    .option('--with-name <name>', 'of a contact: the name of the one who was told')
    .option('--about <text>', 'of a contact or statement')
    .option('--outcome <outcome>', 'of an outcome: accepted, accepted-with-exceptions or refused')
    .option('--rest <outcome>', 'of an outcome: what became of the rest of the line')
    .option('--reason <reason...>', 'of an outcome or exception: temperature, decay, damage, shortage …')
    .option('--words <text>', 'of an outcome or exception: the words')
    .option('--said-by <name>', 'of an outcome: who said so')
    .option('--told <whom>', 'of an outcome: to whom')
    .option('--told-name <name>', 'of an outcome: the name of the one who was told')
    .option('--on <document>', 'of an outcome, exception or inspection: on which document')
    .option('--defect <text...>', 'of an inspection: all its defects anew, each like "tipburn 8% serious 3%"')
    .option('--total <percent>', 'of an inspection')
    .option('--count <quantity>', 'of an inspection: of how many the lot is; of pallets: how many')
    .option('--samples <number>', 'of an inspection: how many were looked at')
    .option('--pulps <range>', 'of an inspection: lowest and highest pulp temperature')
    .option('--certificate <number>', 'of an inspection')
    .option('--where <place>', 'of an inspection')
    .option('--ended <time>', 'of an inspection')
    .option('--requested-by <name>', 'of an inspection: who asked for it')
    .option('--requested-at <time>', 'of an inspection')
    .option('--dumped <quantity>', 'of a dumping certificate')
    .option('--certified-by <who>', 'of a dumping certificate')
    .option('--marks <text>', 'of a dumping certificate')
    .option('--shipper <name>', 'of a dumping certificate')
    .option('--written-by <who>', 'of an outcome or exception: "driver R. Vela"')
    .option('--signed-by <who...>', 'of an outcome or exception: "shipper J. Ortiz"')
    .option('--subject <subject...>', 'of a contact')
    .option('--who <who>', 'of a particular')
    .option('--how-many <quantity>', 'of a particular')
    .option('--type <type>', 'of an instrument')
    .option('--serial <number>', 'of an instrument')
    .option('--owner <who>', 'of an instrument')
    .option('--accuracy <text>', 'of an instrument')
    .option('--calibrated <day>', 'of an instrument')
    .option('--serviced <day>', 'of an instrument')
    .option('--software <text>', 'of an instrument')
    .option('--ice-before <temperature>', 'of an instrument')
    .option('--ice-after <temperature>', 'of an instrument')
    .option('--rows <rows>', 'of a pattern or of pallets')
    .option('--pallet-weight <weight>', 'of a pattern')
    .option('--steer <weight>', 'of a scale ticket')
    .option('--drive <weight>', 'of a scale ticket')
    .option('--trailer <weight>', 'of a scale ticket')
    .option('--ticket <number>', 'of a scale ticket')
    .option('--what <event>', 'of a shock: shock, hard-braking, hard-acceleration, hard-turn or tilt')
    .option('--duration <time>', 'of a shock')
    .option('--axis <axis>', 'of a shock')
    .option('--threshold <acceleration>', 'of a shock')
    .option('--photo <evidence...>', 'of pallets: all its photographs anew')
    .option('--blocks <what...>', 'of a pattern')
    .option('--note <text>', 'more about it')
    .option('--caption <text>', 'a note beside it')
    .option('--sure', 'it is right, although it lies far from the rest of the delivery')
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier correct e12 39F --why "typed C for F"
  dossier correct e14 --at 2026-07-14T04:30 --why "typed the day of entry"

The first value stays in the record, with yours, the reason, who and when; only yours counts.
What was never so is struck: dossier strike. What a file shows is said with: dossier describe.`,
    )
    .action(async (target: string, word: string | undefined, options: Options) => {
      const { correct } = await import('../../jobs/correct.js');
      const { delivery, enteredBy, why, sure, json, ...fields } = options;
      const common = { folder: deliveryFolder(delivery), enteredBy: resolveEnteredBy(enteredBy), now };
      const report = await settleDoubts(output, { word, fields }, sure === true, (typed, settled) =>
        correct({ ...common, target, ...typed, why, sure: settled }),
      );
      if (report.is === 'unchanged')
        throw new DossierError('bad-value', `${report.evidence} says so already: ${report.said}`, {
          where: { field: target },
          fix: 'Give the value, or the option, that is to be put right. Nothing was written.',
        });
      if (json === true) return output.json(report);
      output.line(`${report.evidence}  ${escapeControls(report.after)}`);
      output.line(`  in place of ${escapeControls(report.before)} (entry ${report.entry})`);
    });
}
