/** What publications say, source by source. */

/** What one source publishes; an end that it does not give is absent. °C, or for humidity a share of 1. */
export interface PublishedLimit {
  low?: number;
  high?: number;
  /** Short name of the source. */
  source: string;
  /** As the source prints it, in its own units. */
  printed: string;
  /** Passage of the reference library that it stands in: the id of the source and a number. */
  passage: string;
  /** The source itself was not read, but a document that retells it. */
  secondary: boolean;
}
