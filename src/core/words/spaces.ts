/** Between a number and its unit: no line ends there. */
export const NBSP = '\u00a0';

/** Plain spaces in the place of no-break ones, for text that is copied and searched. */
export const plainSpaces = (text: string): string => text.replaceAll(NBSP, ' ');
