/** Why a line is not understood; caught by the loop over lines. */
export class UnreadableNote extends Error {
  readonly fix: string | undefined;

  constructor(message: string, fix?: string) {
    super(message);
    this.fix = fix;
  }
}
