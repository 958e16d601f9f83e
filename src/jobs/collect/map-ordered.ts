/**
 * Files that are examined side by side: enough that some are always ready while others wait for the disk. What takes
 * much memory has limits of its own: pictures are decoded by the thread pool, HEIC and large PDFs one at a time.
 */
const AT_ONCE = 12;

/** Runs `work` a few at a time and hands each result on in the order of the list. */
export async function inOrder<T, R>(
  list: readonly T[],
  work: (item: T) => Promise<R>,
  then: (item: T, result: R) => Promise<void>,
): Promise<void> {
  const running = new Map<number, Promise<R>>();
  const start = (i: number) => {
    const item = list[i];
    if (item === undefined) return;
    const promise = work(item);
    // Awaited below in its turn; this only keeps an early failure from counting as unhandled.
    promise.catch(() => undefined);
    running.set(i, promise);
  };
  for (let i = 0; i < AT_ONCE; i += 1) start(i);
  for (const [i, item] of list.entries()) {
    const promise = running.get(i);
    if (promise === undefined) continue;
    const result = await promise;
    running.delete(i);
    start(i + AT_ONCE);
    await then(item, result);
  }
}
