import type { Delivery } from '../core/model/delivery.js';
import { documentSubject, type EvidenceId, subjectName } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EvidenceItem } from '../core/model/state.js';
import { formatEventTime } from '../jobs/collect/report.js';
import type { OpenDelivery } from '../jobs/delivery.js';
import { withDelivery } from '../jobs/delivery.js';
import { describe, type TypedDescription } from '../jobs/describe.js';
import { openQuestions } from '../jobs/questions.js';
import { openFile } from './open-file.js';
import { escapeControls, type Output } from './output.js';
import { printWrapped } from './print.js';
import { matchChoice, prompt } from './prompts.js';
import { subjectChoices, subjectMeaning } from './subject-words.js';

type Filed = Extract<EvidenceItem, { kind: 'photo' | 'document' }>;

/** How a person is asked, and shown a file. */
export interface Asking {
  ask: typeof prompt;
  /** Opens a file; false where nothing could open it. */
  show: typeof openFile;
}

/**
 * Prompts for what evidence shows and where, for evidence with open questions or named ids. Each answer is recorded
 * before the next question, so that stopping loses nothing.
 */
export async function promptForEvidence(
  output: Output,
  open: OpenDelivery,
  named: readonly string[],
  asking: Asking = { ask: prompt, show: openFile },
): Promise<void> {
  const { delivery, items, paths } = await withDelivery(open, false, async (record) => {
    const state = record.state();
    const asked = new Set(
      openQuestions(state)
        .filter(({ is }) => is !== 'log-zone')
        .flatMap(({ evidence }) => evidence),
    );
    const wanted = (item: EvidenceItem): item is Filed =>
      (item.kind === 'photo' || item.kind === 'document') &&
      (named.length > 0 ? named.includes(item.evidence) : asked.has(item.evidence));
    const items = state.evidence.filter(wanted);
    const paths = new Map<EvidenceId, string | undefined>();
    for (const { evidence, file } of items) paths.set(evidence, await record.originalPath(file.sha256));
    return { delivery: state.delivery, items, paths };
  });
  if (items.length === 0) return output.line('Nothing is open.');
  output.note(
    'Enter takes what stands in brackets, ? lists the choices with what they mean, o opens the file, s skips one, q ends.',
  );
  let said = 0;
  for (const [i, item] of items.entries()) {
    const path = paths.get(item.evidence);
    printItem(output, `${i + 1}/${items.length}  `, item, path);
    const answer = await promptAbout(item, delivery, output, asking, path);
    if (answer === 'stop') break;
    if (answer === 'skip') continue;
    const report = await describe({ ...open, evidence: [item.evidence], act: 'say', says: answer });
    said += report.described.length;
  }
  output.line(`${said} of ${items.length} described.`);
}

function printItem(output: Output, mark: string, item: Filed, path: string | undefined): void {
  const further = ' '.repeat(mark.length);
  printWrapped(output, facts(item), { mark });
  const subject = item.subject;
  if (subject !== undefined)
    printWrapped(
      output,
      `${subject.sure === 'confirmed' ? 'said' : `proposed${subject.from === undefined ? '' : ` by ${subject.from}`}`}: ${subjectMeaning(subject.is)}`,
      { mark: further },
    );
  // In one piece, so that it can be copied.
  if (path !== undefined) output.line(`${further}${escapeControls(path)}`);
}

function facts(item: Filed): string {
  const when = formatEventTime(item.time);
  return [
    item.evidence,
    item.file.name,
    when === '' ? 'no time' : when,
    item.place?.stop ?? 'no stop',
    item.caption,
    ...item.flags.map((flag) => flag.is.replaceAll('-', ' ')),
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

async function promptAbout(
  item: Filed,
  delivery: Delivery,
  output: Output,
  asking: Asking,
  path: string | undefined,
): Promise<TypedDescription | 'skip' | 'stop'> {
  const subjects = item.kind === 'photo' ? subjectName.options : documentSubject.options;
  const choices = {
    ...asking,
    output,
    path,
    list: () => subjectChoices(item.kind, output.width),
  };
  const subject = await answerTo('  What does it show', subjects, item.subject?.is, choices);
  if (subject === 'skip' || subject === 'stop') return subject;
  const stops = [...delivery.stops.map(({ id }) => id), 'none'];
  const places = {
    ...choices,
    list: () => [
      ...delivery.stops.map(({ id, place }, i) => `    ${i + 1}  ${id}  ${escapeControls(place)}`),
      `    ${stops.length}  none  on the way, or not known`,
    ],
  };
  const stop = item.place?.stop ?? (await answerTo('  At which stop', stops, 'none', places));
  if (stop === 'skip' || stop === 'stop') return stop;
  return {
    subject,
    ...omitUndefined({ stop: stop === 'none' || stop === item.place?.stop ? undefined : stop }),
  };
}

interface Choices extends Asking {
  output: Output;
  /** The file that `o` opens. */
  path: string | undefined;
  /** Lines with the choices and what they mean. */
  list(): string[];
}

async function answerTo(
  question: string,
  known: readonly string[],
  fallback: string | undefined,
  { ask, show, output, path, list }: Choices,
): Promise<string> {
  for (;;) {
    const answer = await ask(question, fallback);
    switch (answer) {
      case 'q':
        return 'stop';
      case 's':
      case '':
        return 'skip';
      case 'o':
        if (path === undefined || !(await show(path)))
          output.note('    Nothing here could open it; its path stands above.');
        continue;
    }
    const found = matchChoice(answer, known);
    if (found !== undefined) return found;
    for (const line of list()) output.note(line);
  }
}
