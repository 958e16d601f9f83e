import type { OmittedOriginal } from '../../core/model/manifest.js';
import { numbersFor } from '../../core/words/numbers.js';

const { bytes } = numbersFor('en');

/** Sentences on originals that are not attached: one for each reason, with the count and the names. */
export function formatOmittedOriginals(leftOut: readonly OmittedOriginal[], mostBytes: number): string[] {
  const why: Record<OmittedOriginal['why'], (one: boolean) => string> = {
    'empty-file': (one) => (one ? 'it is empty' : 'they are empty'),
    'size-budget': () => `the dossier may be ${bytes(mostBytes)}`,
    withheld: (one) => (one ? 'it is withheld' : 'they are withheld'),
    position: (one) => (one ? 'it may tell where it was made' : 'they may tell where they were made'),
    'blacked-out': (one) => (one ? 'parts of it are made black' : 'parts of them are made black'),
    'in-dossier': (one) => (one ? 'the dossier has it' : 'the dossier has them'),
    'not-counted': (one) => (one ? 'it does not count' : 'they do not count'),
  };
  return [...new Set(leftOut.map((one) => one.why))].map((reason) => {
    const files = leftOut.filter((one) => one.why === reason).map(({ name }) => name);
    const names = files.sort().join(', ');
    return files.length === 1
      ? `The original of ${names} is not inside, only its hash: ${why[reason](true)}.`
      : `The originals of ${files.length} files are not inside, only their hashes: ${why[reason](false)}: ${names}.`;
  });
}
