import { Command } from 'commander';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { Assessment, GapResult } from '../../core/model/results.js';
import type { Stage } from '../../core/model/rule-set.js';
import type { RecordState } from '../../core/model/state.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { printProblem } from '../problems.js';

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

interface Answer {
  folder: string;
  state: RecordState;
  ruleSet: Assessment['ruleSet'];
  gaps: GapResult[];
}
interface Refused {
  folder: string;
  problem: Problem;
}

export function gapsCommand({ output, exit, now }: CliContext): Command {
  return new Command('gaps')
    .description('What required evidence is missing now, until when it can still be got, and how.')
    .argument('[folders...]', 'delivery folders (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same, for one')
    .option('--stage <stage>', `only this stage: ${STAGES.join(', ')}`)
    .option('--at <time>', 'as it would be at this moment, such as 2026-07-14T12:00Z')
    .option('--why', 'also why each matters, what it helps to show, and its basis')
    .option('--all', 'also what is met, not yet due or does not apply')
    .option('--templates <folder>', 'say it in the words of your own templates folder')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Examples:
  dossier gaps
  dossier gaps deliveries/4711 --stage loading --why
  dossier gaps deliveries/*                     a table, one row for each

Exits with 1 while something required is open, with 2 when a delivery could not be read.`,
    )
    .action(async (folders: string[], options: Options) => {
      const given = [...folders, ...(options.delivery === undefined ? [] : [options.delivery])];
      const [{ assessDelivery, readAt }, { isOpen }] = await Promise.all([
        import('../../jobs/assess.js'),
        import('../../core/assess/gaps/gaps.js'),
      ]);
      const at = readAt(options.at, now);
      const stage = readStage(options.stage);
      const answer = async (folder: string | undefined): Promise<Answer> => {
        const { assessment, state } = await assessDelivery({
          folder: deliveryFolder(folder),
          at,
          by: resolveEnteredBy(undefined),
          now,
          templates: options.templates,
        });
        const gaps = assessment.gaps.filter((gap) => stage === undefined || gap.stage === stage);
        return { folder: folder ?? '.', state, ruleSet: assessment.ruleSet, gaps };
      };
      const asJson = ({ folder, state, ruleSet, gaps }: Answer) => ({
        folder,
        delivery: state.delivery.delivery,
        ruleSet,
        at,
        gaps,
      });
      const { gapWording } = await import('../../jobs/gap-wording.js');
      const { printGaps, printGapTable } = await import('../gaps-list.js');
      if (given.length < 2) {
        const one = await answer(given[0]);
        if (one.gaps.some(isOpen)) exit(EXIT.no);
        if (options.json === true) return output.json(asJson(one));
        const { delivery } = one.state;
        return printGaps(output, one.gaps, await gapWording(delivery, options.templates), delivery, {
          all: options.all === true,
          why: options.why === true,
        });
      }
      const answers = [];
      for (const folder of given) answers.push(await answer(folder).catch(refusedOf(folder)));
      const refused = answers.filter((one) => 'problem' in one);
      if (answers.some((one) => 'gaps' in one && one.gaps.some(isOpen))) exit(EXIT.no);
      if (refused.length > 0) exit(EXIT.badInput);
      if (options.json === true)
        return output.json(answers.map((one) => ('problem' in one ? one : asJson(one))));
      const rows = await Promise.all(
        answers.map(async (one) =>
          'problem' in one
            ? { name: one.folder }
            : {
                name: one.state.delivery.delivery,
                gaps: one.gaps,
                wording: await gapWording(one.state.delivery, options.templates),
              },
        ),
      );
      printGapTable(output, rows);
      for (const { folder, problem } of refused) {
        output.note(`${folder}:`);
        printProblem(output, problem);
      }
    });
}

/** An unreadable delivery does not stop the others; a bug stops everything. */
const refusedOf =
  (folder: string) =>
  (error: unknown): Refused => {
    if (error instanceof DossierError) return { folder, problem: error.toProblem() };
    throw error;
  };

function readStage(text: string | undefined): Stage | undefined {
  if (text === undefined) return undefined;
  const found = STAGES.find((stage) => stage === text);
  if (found !== undefined) return found;
  throw new DossierError('bad-usage', `there is no stage "${text}"`, {
    where: { field: '--stage' },
    fix: `Use one of: ${STAGES.join(', ')}.`,
  });
}
