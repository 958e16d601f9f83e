/** The meaning of one word or a few of a note. */
export interface WordReading {
  /** The option of `dossier record` that they fill; `word` is the main one, an empty text says nothing more. */
  field: string;
  text: string;
  length: number;
}
