/** Why a worker gave no answer. */
export type WorkerFailure =
  /** What it was asked failed; the message says how. */
  | 'refused'
  /** It took longer than it may, and was stopped. */
  | 'too-slow'
  /** Its objects filled the memory that it may have. */
  | 'out-of-memory'
  /** It crashed, could not be started, or went away without a word. */
  | 'ended';

export class WorkerError extends Error {
  override readonly name = 'WorkerError';

  constructor(
    readonly is: WorkerFailure,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}
