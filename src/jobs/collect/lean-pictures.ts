import type { FoundFile } from '../../intake/walk.js';

/** Endings of files that may hold pictures: themselves, or inside them. */
const PICTURES = /\.(?:jpe?g|png|hei[cf]|webp|tiff?|zip|eml)$/i;

/**
 * Runs work with the picture library set for many pictures that are each looked at once: one thread for each picture,
 * several pictures at a time, and nothing kept for later.
 */
export async function withLeanPictures<T>(files: readonly FoundFile[], work: () => Promise<T>): Promise<T> {
  if (!files.some(({ name }) => PICTURES.test(name))) return work();
  const { default: sharp } = await import('sharp');
  const threads = sharp.concurrency();
  const { memory, files: open, items } = sharp.cache();
  sharp.concurrency(1);
  sharp.cache(false);
  try {
    return await work();
  } finally {
    sharp.concurrency(threads);
    sharp.cache({ memory: memory.max, files: open.max, items: items.max });
  }
}
