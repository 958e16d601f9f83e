import type { Delivery } from '../core/model/delivery.js';
import { documentSubject, subjectName } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EvidenceItem } from '../core/model/state.js';
import type { OpenDelivery } from '../jobs/delivery.js';
import { withDelivery } from '../jobs/delivery.js';
import { describe, type TypedDescription } from '../jobs/describe.js';
import { openQuestions } from '../jobs/questions.js';
import { escapeControls, type Output } from './output.js';
import { matchChoice, prompt } from './prompts.js';

type Filed = Extract<EvidenceItem, { kind: 'photo' | 'document' }>;

/**
 * Prompts for what evidence shows and where, for evidence with open questions or named ids. Each answer is recorded
 * before the next question, so that stopping loses nothing.
 */
export async function promptForEvidence(
  output: Output,
  open: OpenDelivery,
  named: readonly string[],
): Promise<void> {
  const { delivery, items } = await withDelivery(open, false, async (record) => {
    const state = record.state();
    const asked = new Set(
      openQuestions(state)
        .filter(({ is }) => is !== 'log-zone')
        .flatMap(({ evidence }) => evidence),
    );
    const wanted = (item: EvidenceItem): item is Filed =>
      (item.kind === 'photo' || item.kind === 'document') &&
      (named.length > 0 ? named.includes(item.evidence) : asked.has(item.evidence));
    return { delivery: state.delivery, items: state.evidence.filter(wanted) };
  });
  if (items.length === 0) return output.line('Nothing is open.');
  output.note('Enter takes what stands in brackets, ? lists the choices, s skips one, q ends.');
  let said = 0;
  for (const [i, item] of items.entries()) {
    output.line(`${i + 1}/${items.length}  ${escapeControls(facts(item))}`);
    const answer = await promptAbout(item, delivery);
    if (answer === 'stop') break;
    if (answer === 'skip') continue;
    const report = await describe({ ...open, evidence: [item.evidence], act: 'say', says: answer });
    said += report.described.length;
  }
  output.line(`${said} of ${items.length} described.`);
}

function facts(item: Filed): string {
  const when =
    item.time.is === 'known' ? item.time.instant : item.time.is === 'local' ? item.time.local : 'no time';
  const from = item.subject?.from;
  return [
    item.evidence,
    item.file.name,
    when,
    item.place?.stop ?? 'no stop',
    item.caption,
    from === undefined ? undefined : `proposed by ${from}`,
    ...item.flags.map((flag) => flag.is),
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

async function promptAbout(item: Filed, delivery: Delivery): Promise<TypedDescription | 'skip' | 'stop'> {
  const subjects = item.kind === 'photo' ? subjectName.options : documentSubject.options;
  const subject = await answerTo('  What does it show', subjects, item.subject?.is);
  if (subject === 'skip' || subject === 'stop') return subject;
  const stops = delivery.stops.map(({ id }) => id);
  const stop = item.place?.stop ?? (await answerTo('  At which stop', [...stops, 'none'], 'none'));
  if (stop === 'skip' || stop === 'stop') return stop;
  return {
    subject,
    ...omitUndefined({ stop: stop === 'none' || stop === item.place?.stop ? undefined : stop }),
  };
}

async function answerTo(
  question: string,
  choices: readonly string[],
  fallback: string | undefined,
): Promise<string> {
  for (;;) {
    const answer = await prompt(question, fallback);
    if (answer === 'q') return 'stop';
    if (answer === 's' || answer === '') return 'skip';
    const found = matchChoice(answer, choices);
    if (found !== undefined) return found;
    process.stderr.write(`    ${choices.join(', ')}\n`);
  }
}
