import { pMapIterable } from 'p-map';

/** Work on many things that is done some pieces ahead, with results in the order of the things. */
export class WorkAhead {
  readonly #running = new Set<Promise<unknown>>();

  /** @param atOnce pieces that are worked on side by side, and ahead of the one whose turn it is */
  constructor(readonly atOnce: number) {}

  results<T, R>(
    things: readonly T[],
    work: (thing: T) => Promise<R>,
  ): AsyncIterable<{ thing: T; result: R }> {
    return pMapIterable(things, async (thing) => ({ thing, result: await this.#watched(work(thing)) }), {
      concurrency: this.atOnce,
      backpressure: this.atOnce,
    });
  }

  /** Waits for pieces that are still worked on when nobody wants their results any more. */
  async settle(): Promise<void> {
    await Promise.allSettled(this.#running);
  }

  #watched<R>(piece: Promise<R>): Promise<R> {
    this.#running.add(piece);
    const done = () => this.#running.delete(piece);
    piece.then(done, done);
    return piece;
  }
}
