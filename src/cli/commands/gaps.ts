import { Command } from 'commander';
import { DossierError } from '../../model/error.js';
import type { GapResult, Outcome } from '../../model/results.js';
import type { Stage } from '../../model/rule-set.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { type Output, printable } from '../output.js';
import type { CliContext } from '../program.js';
import { tableLines, wrap } from '../table.js';
import { whoEnters } from '../who.js';

const STAGES: Record<Stage, string> = {
  'before-loading': 'Before loading',
  loading: 'Loading',
  'in-transit': 'On the way',
  arrival: 'Arrival',
  rejection: 'Refusal',
  claim: 'Claim',
};
const OPEN: readonly Outcome[] = ['missing', 'short', 'contradicted'];

interface Options {
  stage?: string;
  at?: string;
  all?: boolean;
  json?: boolean;
}

export function gapsCommand({ output, exit, now }: CliContext): Command {
  return new Command('gaps')
    .description('What required evidence is missing now, until when it can still be got, and how.')
    .argument('[folders...]', 'delivery folders (default: the one you are in)')
    .option('--stage <stage>', `only this stage: ${Object.keys(STAGES).join(', ')}`)
    .option('--at <time>', 'as it would be at this moment, such as 2026-07-14T12:00Z')
    .option('--all', 'also what is met, not yet due or does not apply')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Examples:
  dossier gaps
  dossier gaps deliveries/4711 --stage loading
  dossier gaps deliveries/* --json

Exits with 1 while something required is open.`,
    )
    .action(async (given: string[], options: Options) => {
      const { assessDelivery, readAt } = await import('../../jobs/assess.js');
      const at = readAt(options.at, now);
      const stage = readStage(options.stage);
      const folders = given.length === 0 ? [undefined] : given;
      const answers = [];
      for (const folder of folders) {
        const { assessment, state } = await assessDelivery({
          folder: deliveryFolder(folder),
          at,
          by: whoEnters(undefined),
          now,
        });
        answers.push({
          delivery: state.delivery.delivery,
          ruleSet: assessment.ruleSet,
          at,
          gaps: assessment.gaps.filter((gap) => stage === undefined || gap.stage === stage),
        });
      }
      if (answers.some(({ gaps }) => gaps.some((gap) => OPEN.includes(gap.outcome)))) exit(EXIT.no);
      if (options.json === true) return output.json(given.length > 1 ? answers : answers[0]);
      if (answers.length > 1) return printTable(output, answers);
      for (const { gaps } of answers) printGaps(output, gaps, options.all === true);
    });
}

function readStage(text: string | undefined): Stage | undefined {
  if (text === undefined) return undefined;
  const found = (Object.keys(STAGES) as Stage[]).find((stage) => stage === text);
  if (found === undefined) throw unknownStage(text);
  return found;
}

function printGaps(output: Output, gaps: readonly GapResult[], all: boolean): void {
  const open = gaps.filter((gap) => OPEN.includes(gap.outcome));
  for (const [stage, title] of Object.entries(STAGES)) {
    const shown = (all ? gaps : open).filter((gap) => gap.stage === stage).sort(byUrgency);
    if (shown.length === 0) continue;
    output.line(output.style('bold', title));
    for (const gap of shown) printGap(output, gap);
    output.line();
  }
  const met = gaps.filter((gap) => gap.outcome === 'met').length;
  const later = gaps.filter((gap) => gap.outcome === 'not-yet-due').length;
  output.line(`${open.length} open, ${met} met, ${later} not yet due.`);
}

function printGap(output: Output, gap: GapResult): void {
  const colour = OPEN.includes(gap.outcome) ? (gap.outcome === 'contradicted' ? 'red' : 'yellow') : 'green';
  output.line(
    `  ${output.style(colour, gap.outcome.toUpperCase().replaceAll('-', ' '))} ${printable(gap.title)}, ${closable(gap)}`,
  );
  if (!OPEN.includes(gap.outcome)) return;
  for (const lacking of gap.lacking) indented(output, lacking);
  if (gap.closable.is !== 'lost') indented(output, `How: ${gap.how}`);
  indented(output, `Why: ${gap.why}`);
  for (const near of gap.nearly)
    indented(output, `${near.evidence} nearly counts: ${near.why.replaceAll('-', ' ')}`);
  for (const instead of gap.substitutes)
    indented(output, `Instead: ${instead.what} (${instead.evidence.join(', ')})`);
}

function indented(output: Output, text: string): void {
  for (const line of wrap(printable(text.replace(/\s+/g, ' ').trim()), Math.max(30, output.width - 6)))
    output.line(`      ${line}`);
}

function closable(gap: GapResult): string {
  switch (gap.closable.is) {
    case 'now':
      return 'can still be got';
    case 'until':
      return `can still be got until ${words(gap.closable.moment)}`;
    case 'lost':
      return `can't be got any more since ${words(gap.closable.since)}`;
  }
}

const words = (moment: string) => moment.replaceAll('-', ' ');

/** What closes soonest first; what is lost last. */
function byUrgency(a: GapResult, b: GapResult): number {
  const rank = { until: 0, now: 1, lost: 2 } as const;
  return rank[a.closable.is] - rank[b.closable.is];
}

function printTable(
  output: Output,
  answers: readonly { delivery: string; gaps: readonly GapResult[] }[],
): void {
  const count = (gaps: readonly GapResult[], outcome: Outcome) =>
    String(gaps.filter((gap) => gap.outcome === outcome).length);
  const lines = tableLines(
    [
      ['delivery', 'missing', 'short', 'contradicted', 'met', 'not yet due'],
      ...answers.map(({ delivery, gaps }) => [
        delivery,
        count(gaps, 'missing'),
        count(gaps, 'short'),
        count(gaps, 'contradicted'),
        count(gaps, 'met'),
        count(gaps, 'not-yet-due'),
      ]),
    ],
    output.width,
  );
  for (const line of lines) output.line(line);
}

function unknownStage(text: string): DossierError {
  return new DossierError('bad-usage', `there is no stage "${text}"`, {
    where: { field: '--stage' },
    fix: `Use one of: ${Object.keys(STAGES).join(', ')}.`,
  });
}
