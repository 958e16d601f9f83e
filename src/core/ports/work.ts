/** How far long work has come. */
export interface Progress {
  /** What is being done, in a few words for a person, such as a file's name. */
  what: string;
  /** How many of `total` are reached, this one included; absent where nothing is counted. */
  done?: number;
  total?: number;
}

/** What every long work takes: it can be called off, and tells how far it is. */
export interface LongWork {
  /**
   * Calls the work off. It then rejects with the signal's reason as soon as nothing is half done: what was confirmed
   * before stays, the rest is taken back.
   */
  signal?: AbortSignal | undefined;
  /** Told of each step before it is done. What it throws ends the work. */
  progress?: ((at: Progress) => void) | undefined;
}

/** Tells of the next step, or rejects in its place when the work was called off. @throws the signal's reason */
export function nextStep({ signal, progress }: LongWork, at: Progress): void {
  signal?.throwIfAborted();
  progress?.(at);
}
