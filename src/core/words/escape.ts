const PUNCTUATION = /[!"#$%&'()*+,\-./:;<=>?@[\\\]^_`{|}~]/g;
const BREAKS = /\s*[\r\n\u2028\u2029]+\s*/g;

/**
 * Escapes a value so that Markdown shows it literally: every ASCII punctuation mark may be escaped by a backslash
 * (CommonMark 0.31 §2.4), and no value can start a new line.
 */
export function escapeMarkdown(value: string): string {
  return value.replace(BREAKS, ' ').replace(/\t/g, ' ').trim().replace(PUNCTUATION, '\\$&');
}
