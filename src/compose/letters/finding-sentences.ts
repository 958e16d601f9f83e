import type { Finding } from '../../core/model/results.js';
import { findingPlace } from '../view/compartment-words.js';
import type { CorrespondenceInput } from './input.js';
import { plainLine } from './text.js';
import { letterView } from './view.js';

/** Findings as plain sentences with their exhibit numbers, for the notes beside a letter. */
export async function findingSentences(
  input: CorrespondenceInput,
  findings: readonly Finding[],
): Promise<string[]> {
  const { words, number, labels, facts } = await letterView(input);
  return [...findings]
    .sort((a, b) => b.weight - a.weight)
    .map((finding) => {
      const numbers = finding.evidence
        .map(number)
        .filter((n) => n !== undefined)
        .sort((a, b) => a - b);
      return (
        findingPlace(labels, finding) +
        plainLine(words.line(`findings/${finding.id}`, facts(finding), numbers), labels('letter.exhibit'))
      );
    });
}
