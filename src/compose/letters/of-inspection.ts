import { omitUndefined } from '../../core/model/omit-undefined.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { type Facts, MarkdownText } from '../../core/words/facts.js';
import { defectWords } from '../view/inspection-words.js';
import type { LetterInput } from './input.js';
import type { LetterView } from './view.js';

/** Inspections of goods at a place of unloading, each with what it found, and whether the certificates are on file. */
export function inspectionFacts(view: LetterView<LetterInput>): Facts {
  const { input, format, labels, names } = view;
  const found = (input.assessment.inspections ?? []).filter(
    ({ side, appeal, defects, goodDelivery }) =>
      side !== 'load' && appeal === undefined && (defects.length > 0 || goodDelivery.is === 'compared'),
  );
  const inspected = found.map((one) => {
    const said = [
      `${labels('inspection.lot')} ${one.lot}`,
      ...(one.line === undefined ? [] : [names.line(one.line)]),
      ...(one.certificate === undefined ? [] : [`${labels('inspection.certificate')} ${one.certificate}`]),
      ...(one.stop === undefined ? [] : [names.stop(one.stop)]),
      ...(one.at === undefined || one.zone === undefined ? [] : [format.time(one.at, one.zone)]),
    ].join(', ');
    const defects = one.defects.map(({ name, percent, serious, nature, natureBy }) =>
      defectWords(view, {
        ...{ name, percent },
        ...omitUndefined({
          serious,
          nature: nature !== 'not-known' && natureBy === 'certificate' ? nature : undefined,
        }),
      }),
    );
    const words = defects.length === 0 ? said : `${said}: ${defects.join('; ')}`;
    return new MarkdownText(`${escapeMarkdown(words)}${view.source([...one.evidence, ...one.documents])}`);
  });
  return {
    inspected,
    certificateFiled: found.length > 0 && found.every(({ documents }) => documents.length > 0),
  };
}
