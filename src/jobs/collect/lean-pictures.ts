import type { FoundFile } from '../../intake/walk.js';

/** Endings of files that may hold pictures: themselves, or inside them. */
const PICTURES = /\.(?:jpe?g|png|hei[cf]|webp|tiff?|zip|eml)$/i;

/**
 * Runs work with the picture library set for many pictures that are each looked at once: one thread for each picture,
 * several pictures at a time, and nothing kept for later. The library loads while the work begins; modules that use it
 * can't begin before it is loaded, and then it is set.
 * @param found what the work is about; it must not be touched before this settles
 */
export async function withLeanPictures<T>(
  found: Promise<readonly FoundFile[]>,
  work: () => Promise<T>,
): Promise<T> {
  const lean = found.then((files) =>
    files.some(({ name }) => PICTURES.test(name)) ? makeLean() : undefined,
  );
  // Whoever uses a library that can't be loaded says so.
  const setBack = lean.catch(() => undefined);
  try {
    return await work();
  } finally {
    (await setBack)?.();
  }
}

/** Gives what sets the library back. */
async function makeLean(): Promise<() => void> {
  const { default: sharp } = await import('sharp');
  const threads = sharp.concurrency();
  const { memory, files, items } = sharp.cache();
  sharp.concurrency(1);
  sharp.cache(false);
  return () => {
    sharp.concurrency(threads);
    sharp.cache({ memory: memory.max, files: files.max, items: items.max });
  };
}
