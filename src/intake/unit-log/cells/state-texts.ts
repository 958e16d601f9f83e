const LONGEST = 200;
const MOST_KNOWN = 10_000;

/** Texts of a state column, which says few things in many rows: each is kept once. */
export class StateTexts {
  readonly #known = new Map<string, string>();

  /** The text of a cell as it is kept: trimmed, cut where it is too long, control characters as marks. */
  read(cell: string): string {
    const text = cell.trim().slice(0, LONGEST);
    const known = this.#known.get(text);
    if (known !== undefined) return known;
    // A slice of a line keeps the whole chunk it came from alive; a copy does not.
    const own = Buffer.from(text, 'utf16le').toString('utf16le');
    const kept = own.replaceAll(/\p{Cc}/gu, '\ufffd');
    if (this.#known.size < MOST_KNOWN) this.#known.set(own, kept);
    return kept;
  }
}
