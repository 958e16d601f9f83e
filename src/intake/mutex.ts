/** Runs works one after the other, each when the one before has ended, well or not. */
export class Turns {
  #last: Promise<unknown> = Promise.resolve();

  take<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work);
    this.#last = mine.catch(() => undefined);
    return mine;
  }
}
