import type { Finding } from '../../core/model/results.js';
import type { PaperInput } from './input.js';
import { plainWords } from './text.js';
import { letterView } from './view.js';

/** Findings as plain sentences with the numbers of their exhibits, to be told beside a letter. */
export async function plainFindings(input: PaperInput, findings: readonly Finding[]): Promise<string[]> {
  const { words, number, labels, facts } = await letterView(input);
  return [...findings]
    .sort((a, b) => b.weight - a.weight)
    .map((finding) => {
      const numbers = finding.evidence
        .map(number)
        .filter((n) => n !== undefined)
        .sort((a, b) => a - b);
      return plainWords(
        words.line(`findings/${finding.id}`, facts(finding), numbers),
        labels('letter.exhibit'),
      );
    });
}
