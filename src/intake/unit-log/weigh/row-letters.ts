import type { Zone } from '../../../core/model/time.js';
import { zoneIn } from '../../time/stated-zone.js';
import { zoneLetters } from '../rows/zone-letters.js';

/** The letters of a zone in the rows of a table. */
export type LettersVerdict =
  | { is: 'none' }
  /** Minutes east of UTC of each. */
  | { is: 'offsets'; offsets: Record<string, number> }
  /** Letters that mean nothing here, or several things; or rows without them among rows with them. */
  | { is: 'unclear'; letters: string[] };

/** Collects the letters of the rows of a whole table. */
export class RowLetters {
  readonly #found = new Set<string>();
  #without = 0;

  add(time: string): void {
    const text = time.trim();
    if (text === '') return;
    const letters = zoneLetters(text)?.letters;
    if (letters === undefined) this.#without += 1;
    else if (this.#found.size < 50) this.#found.add(letters);
  }

  get letters(): readonly string[] {
    return [...this.#found];
  }

  /** What the letters mean where the stops lie in `near`. */
  verdict(near: readonly Zone[]): LettersVerdict {
    if (this.#found.size === 0) return { is: 'none' };
    const offsets: Record<string, number> = {};
    const unclear: string[] = [];
    for (const letters of this.#found) {
      const stated = zoneIn(letters, near);
      if (stated?.is === 'word' && stated.named.offset !== undefined) offsets[letters] = stated.named.offset;
      else unclear.push(letters);
    }
    if (unclear.length > 0) return { is: 'unclear', letters: unclear };
    return this.#without > 0 ? { is: 'unclear', letters: [...this.#found] } : { is: 'offsets', offsets };
  }
}
