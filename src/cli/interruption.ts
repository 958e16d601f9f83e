/** Somebody pressed Ctrl-C. */
export class Interrupted extends Error {
  constructor() {
    super('Stopped by Ctrl-C.');
  }
}

/** Ctrl-C (SIGINT) as an AbortSignal. */
export class Interruption {
  readonly #stop = new AbortController();
  readonly #heard = () => this.#stop.abort(new Interrupted());

  /**
   * For long work, which ends with nothing half done when it is aborted. From here on the first Ctrl-C aborts it, and
   * the second ends the program at once.
   */
  signal(): AbortSignal {
    process.once('SIGINT', this.#heard);
    return this.#stop.signal;
  }

  end(): void {
    process.off('SIGINT', this.#heard);
  }
}
