import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import type { Stage } from '../../core/model/rule-set.js';
import type { GapsReport } from '../../jobs/gaps.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { askEach, nameWidth } from '../several.js';

/** Listed here because the model loads its schemas, and help should not wait for them. */
const STAGES = Object.keys({
  'before-loading': true,
  loading: true,
  'in-transit': true,
  arrival: true,
  rejection: true,
  claim: true,
} satisfies Record<Stage, true>) as Stage[];

interface Options {
  delivery?: string;
  stage?: string;
  at?: string;
  all?: boolean;
  why?: boolean;
  templates?: string;
  json?: boolean;
}

export function gapsCommand(context: CliContext): Command {
  return new Command('gaps')
    .description('What required evidence is missing now, until when it is obtainable, and how.')
    .argument('[folders...]', 'delivery folders (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same, for one')
    .option('--stage <stage>', `only this stage: ${STAGES.join(', ')}`)
    .option('--at <time>', 'as it would be at this moment, such as 2026-07-14T12:00Z')
    .option('--why', 'also why each matters, what it helps to show, and its basis')
    .option('--all', 'also what is met, not yet due or does not apply')
    .option('--templates <folder>', 'say it in the words of your own templates folder')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier gaps
  dossier gaps deliveries/4711 --stage loading --why
  dossier gaps deliveries/*                     a table, one line for each as it is known

Exits with 1 while something required is open, with 2 when a delivery could not be read.`,
    )
    .action(async (folders: string[], options: Options) => {
      const given = [...folders, ...(options.delivery === undefined ? [] : [options.delivery])];
      const [
        { deliveryGaps },
        { isOpen },
        { readAt },
        { gapWording },
        { printGaps, printRuleConflicts, gapTable },
      ] = await Promise.all([
        import('../../jobs/gaps.js'),
        import('../../core/assess/gaps/gaps.js'),
        import('../../jobs/typed/read-at.js'),
        import('../../jobs/gap-wording.js'),
        import('../lists/gaps-list.js'),
      ]);
      const { output, exit, now } = context;
      const { templates } = options;
      const at = readAt(options.at, now);
      const stage = readStage(options.stage);
      const ask = async (folder: string | undefined) => {
        const by = resolveEnteredBy(undefined);
        const report = await deliveryGaps({ folder: deliveryFolder(folder), at, by, now, templates });
        const gaps = report.gaps.filter((gap) => stage === undefined || gap.stage === stage);
        if (gaps.some(isOpen)) exit(EXIT.no);
        return { ...report, gaps };
      };
      const asJson = (folder: string, { state, ruleSet, gaps }: GapsReport) => ({
        folder,
        delivery: state.delivery.delivery,
        ruleSet,
        at,
        gaps,
      });
      if (given.length < 2) {
        const one = await ask(given[0]);
        if (options.json === true) return output.json(asJson(given[0] ?? '.', one));
        const { delivery } = one.state;
        printGaps(output, one.gaps, await gapWording(delivery, templates), delivery, {
          all: options.all === true,
          why: options.why === true,
        });
        return printRuleConflicts(output, one.ruleSet.origin?.conflicts ?? []);
      }
      if (options.json === true) {
        const list = output.jsonList();
        await askEach(context, given, ask, {
          answered: (folder, report) => list.item(asJson(folder, report)),
          refused: (folder, problem) => list.item({ folder, problem }),
        });
        return list.end();
      }
      const table = gapTable(output, nameWidth(given));
      await askEach(
        context,
        given,
        async (folder) => {
          const report = await ask(folder);
          return { ...report, wording: await gapWording(report.state.delivery, templates) };
        },
        {
          answered: (_, { state, gaps, wording }) => table.row(state.delivery.delivery, gaps, wording),
          refused: (folder) => table.refused(folder),
        },
      );
    });
}

function readStage(text: string | undefined): Stage | undefined {
  if (text === undefined) return undefined;
  const found = STAGES.find((stage) => stage === text);
  if (found !== undefined) return found;
  throw new DossierError('bad-usage', `there is no stage "${text}"`, {
    where: { field: '--stage' },
    fix: `Use one of: ${STAGES.join(', ')}.`,
  });
}
