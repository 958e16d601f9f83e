/** How far two pictures are apart, or why that could not be found out. */
export type PictureDistance =
  | {
      /** Natural logarithm of the ratio of their shapes, width to height. */
      shape: number;
      /** Steps of grey, 0 to 255, between the means of the blocks that differ most. */
      worst: number;
    }
  | { why: string };

/** Decodes pictures of strangers and compares them, where that can do no harm. */
export interface PictureComparer {
  /** Never rejects for what the bytes are. */
  compare(original: Uint8Array, printed: Uint8Array): Promise<PictureDistance>;
  /** Ends what was started for it. */
  close(): void;
}
