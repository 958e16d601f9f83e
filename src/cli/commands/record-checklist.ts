import type { Problem } from '../../core/model/error.js';
import { DossierError } from '../../core/model/error.js';
import type { ChecklistQuestion, ChecklistReport } from '../../jobs/checklist/enter.js';
import type { OpenDelivery } from '../../jobs/delivery.js';
import type { CliContext } from '../context.js';
import { EXIT } from '../exit.js';
import { escapeControls } from '../output.js';
import { printProblem } from '../problems.js';
import { isInteractive, prompt } from '../prompts.js';
import { tableLines } from '../table.js';

export interface ChecklistOptions {
  /** A file of typed answers, or `true` to prompt for them. */
  checklist: string | true;
  dryRun: boolean;
  /** Answers far from their kin are right all the same. */
  sure: boolean;
  json: boolean;
}

type Ask = (question: string, fallback?: string) => Promise<string>;

/** `dossier record --checklist`: the entries of the printed form, from a file or prompted box by box. */
export async function recordChecklist(
  { output, exit }: CliContext,
  open: OpenDelivery,
  { checklist, dryRun, sure, json }: ChecklistOptions,
  asking: Ask | undefined = isInteractive() ? prompt : undefined,
): Promise<void> {
  const { enterChecklist } = await import('../../jobs/checklist/enter.js');
  const report =
    checklist === true
      ? await asked(open, dryRun, asking, (problem) => printProblem(output, problem))
      : await enterChecklist({ ...open, from: { file: checklist }, dryRun, sure });
  if (report.problems.length > 0) exit(EXIT.badInput);
  if (json) return output.json(report);
  for (const line of tableLines(rows(report), output.width)) output.line(line);
  for (const problem of report.problems) printProblem(output, problem);
  output.line(summary(report, dryRun));
}

/**
 * Prompts for every box in the order of its number, then again for answers that were not understood or are far from
 * their kin; the same answer a second time is meant. Nothing is written before all is settled.
 */
async function asked(
  open: OpenDelivery,
  dryRun: boolean,
  asking: Ask | undefined,
  say: (problem: Problem) => void,
): Promise<ChecklistReport> {
  if (asking === undefined)
    throw new DossierError('bad-usage', 'nobody is here to be asked', {
      where: { field: '--checklist' },
      fix: 'Name a file with the answers: dossier record --checklist filled.txt',
    });
  const { enterChecklist, checklistQuestions } = await import('../../jobs/checklist/enter.js');
  const questions = await checklistQuestions(open);
  const answers = new Map<number, string>();
  const sure = new Set<number>();
  let doubted: ReadonlySet<string | undefined> = new Set();
  let next: readonly ChecklistQuestion[] = questions;
  for (;;) {
    for (const { number, words } of next) {
      const before = answers.get(number);
      const answer = (await asking(`${number} ${escapeControls(words)}`, before)).trim();
      if (answer === '' || answer === '-') answers.delete(number);
      else answers.set(number, answer);
      if (answer === before && doubted.has(`box ${number}`)) sure.add(number);
      else sure.delete(number);
    }
    const report = await enterChecklist({ ...open, from: { answers }, dryRun: true, sure });
    const fields = (problems: readonly Problem[]) => new Set(problems.map(({ where }) => where.field));
    const wrong = fields(report.problems);
    const again = questions.filter(({ number }) => wrong.has(`box ${number}`));
    if (again.length === 0)
      return dryRun ? report : enterChecklist({ ...open, from: { answers }, dryRun, sure });
    for (const problem of report.problems) say(problem);
    doubted = fields(report.problems.filter(({ code }) => code === 'doubtful'));
    next = again;
  }
}

const rows = ({ readings }: ChecklistReport): string[][] =>
  readings.map(({ boxes, evidence, said, held, doubts }) => [
    boxes.join(' '),
    evidence ?? '',
    held ? `${said} (recorded before)` : doubts === undefined ? said : `${said} (to be looked at again)`,
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
