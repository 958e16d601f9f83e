import type { Problem } from '../../core/model/error.js';
import { DossierError } from '../../core/model/error.js';
import type { ChecklistQuestion, ChecklistReport } from '../../jobs/checklist/enter.js';
import type { OpenDelivery } from '../../jobs/delivery.js';
import { type Ask, opening, promptForBoxes, type Sitting } from '../checklist-prompts.js';
import type { CliContext } from '../context.js';
import { EXIT } from '../exit.js';
import { escapeControls } from '../output.js';
import { printProblem } from '../problems.js';
import { hasLinesAhead, isInteractive, prompt } from '../prompts.js';
import { tableLines } from '../table.js';

export interface ChecklistOptions {
  /** A file of typed answers, or `true` to prompt for them. */
  checklist: string | true;
  dryRun: boolean;
  /** Answers far from their kin are right all the same. */
  sure: boolean;
  /** Why answers are others than a form said before. */
  why?: string | undefined;
  json: boolean;
}

/** `dossier record --checklist`: the entries of the printed form, from a file or prompted box by box. */
export async function recordChecklist(
  { output, exit }: CliContext,
  open: OpenDelivery,
  { checklist, dryRun, sure, why, json }: ChecklistOptions,
  asking: Ask | undefined = isInteractive() ? prompt : undefined,
): Promise<void> {
  const { enterChecklist } = await import('../../jobs/checklist/enter.js');
  const report =
    checklist === true
      ? await asked(open, dryRun, asking, output)
      : await enterChecklist({ ...open, from: { file: checklist }, dryRun, sure, why });
  if (report === undefined) return;
  if (report.problems.length > 0) exit(EXIT.badInput);
  if (json) return output.json(report);
  for (const line of tableLines(rows(report), output.width)) output.line(line);
  for (const problem of report.problems) printProblem(output, problem);
  output.line(summary(report, dryRun));
}

/**
 * Prompts for every box that is not answered yet, then again for answers that do not go together or are far from their
 * kin; the same answer a second time is meant. Nothing is recorded before all is settled; what was typed is saved with
 * each answer, and a later sitting goes on from there. Undefined when the person stops.
 */
async function asked(
  open: OpenDelivery,
  dryRun: boolean,
  asking: Ask | undefined,
  output: CliContext['output'],
): Promise<ChecklistReport | undefined> {
  if (asking === undefined)
    throw new DossierError('bad-usage', 'nobody is here to be asked', {
      where: { field: '--checklist' },
      fix: 'Name a file with the answers: dossier record --checklist filled.txt',
    });
  const { enterChecklist, checklistQuestions, checklistCheck } = await import(
    '../../jobs/checklist/enter.js'
  );
  const { openSavedAnswers } = await import('../../jobs/checklist/saved-answers.js');
  const questions = await checklistQuestions(open);
  const saved = await openSavedAnswers(open.folder, questions.length);
  const answers = new Map(saved.answers);
  const sure = new Set<number>();
  let doubted: ReadonlySet<string | undefined> = new Set();
  const sitting: Sitting = {
    answers,
    check: await checklistCheck(open),
    ask: asking,
    tell: (what) => (typeof what === 'string' ? output.note(what) : printProblem(output, what)),
    save: saved.save,
    pasted: hasLinesAhead,
    repeated: (number) => {
      if (doubted.has(`box ${number}`)) sure.add(number);
    },
  };
  for (const line of opening(questions.length, answers.size)) output.note(line);
  const last = questions.findLastIndex(({ number }) => answers.has(number));
  let boxes: readonly ChecklistQuestion[] = questions;
  for (let begin = last + 1; ; begin = 0) {
    if ((await promptForBoxes(boxes, begin, sitting)) === 'stopped') {
      output.note(
        answers.size === 0
          ? 'Stopped; nothing was filled in.'
          : `Saved in ${escapeControls(saved.file)}: ${answers.size} boxes. The same command goes on from there.`,
      );
      return undefined;
    }
    const report = await enterChecklist({ ...open, from: { answers }, dryRun: true, sure });
    const fields = (problems: readonly Problem[]) => new Set(problems.map(({ where }) => where.field));
    const wrong = fields(report.problems);
    boxes = questions.filter(({ number }) => wrong.has(`box ${number}`));
    if (boxes.length === 0) {
      const done = dryRun ? report : await enterChecklist({ ...open, from: { answers }, dryRun, sure });
      if (!dryRun && done.problems.length === 0) await saved.remove();
      return done;
    }
    for (const problem of report.problems) printProblem(output, problem);
    doubted = fields(report.problems.filter(({ code }) => code === 'doubtful'));
  }
}

const rows = ({ readings }: ChecklistReport): string[][] =>
  readings.map(({ boxes, evidence, said, held, doubts, corrects }) => [
    boxes.join(' '),
    evidence ?? '',
    corrects !== undefined
      ? `${said} (in place of what entry ${corrects} says)`
      : held
        ? `${said} (recorded before)`
        : doubts === undefined
          ? said
          : `${said} (to be looked at again)`,
  ]);

function summary({ readings, problems, evidence, heldAs }: ChecklistReport, dryRun: boolean): string {
  const misunderstood = problems.filter(({ code }) => code !== 'doubtful').length;
  if (misunderstood > 0)
    return `${misunderstood} ${misunderstood === 1 ? 'answer is' : 'answers are'} not understood; nothing was written.`;
  const held = readings.filter((one) => one.held).length;
  const doubted = readings.filter((one) => one.doubts !== undefined).length;
  const open = doubted === 0 ? '' : `; ${doubted} to be looked at again, not recorded`;
  const before = held === 0 ? '' : `, ${held} of them recorded before`;
  if (dryRun) return `${readings.length - doubted} understood${before}${open}; nothing was written.`;
  if (held > 0 && held === readings.length)
    return `All ${held} were recorded before${heldAs === undefined ? '' : `, from this file as ${heldAs}`}; nothing added.`;
  const from = evidence === undefined ? '' : ` from ${evidence}`;
  return `${readings.length - held - doubted} recorded${from}${held === 0 ? '' : `; ${held} recorded before, nothing added for those`}${open}.`;
}
