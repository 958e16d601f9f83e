/** 0 fine · 1 done, and the answer is no · 2 bad use or bad input · 70 a bug · 130 stopped by Ctrl-C (128 and SIGINT's number). */
export const EXIT = { fine: 0, no: 1, badInput: 2, bug: 70, interrupted: 130 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
