import { omitUndefined } from './omit-undefined.js';
/**
 * Closed set of what can go wrong through the user's files, input or machine. Anything else that is thrown is a bug
 * (exit 70).
 */
export type ErrorCode =
  | 'bad-usage'
  | 'bad-value'
  /** What was typed lies far from its kin, and nobody has said that it is right. */
  | 'doubtful'
  | 'bad-delivery-file'
  | 'bad-rule-set'
  | 'bad-template'
  | 'unreadable-file'
  | 'unsupported-file'
  | 'file-too-large'
  | 'record-missing'
  | 'record-damaged'
  | 'record-locked'
  | 'disk'
  | 'typesetting'
  | 'identity'
  | 'time-stamp'
  /** The engine knows a time zone's name but not its rules. */
  | 'zone-rules';

/** Where in the user's material the problem is; rows count from 1 as a text editor shows them. */
export interface Where {
  file?: string;
  row?: number;
  column?: string;
  field?: string;
}

/** What is wrong, where, and what to do about it, for the person who has to fix it. */
export interface Problem {
  code: ErrorCode;
  message: string;
  where: Where;
  fix?: string;
  /** The other problems of the same file, one line each. */
  others?: readonly string[];
  /** Accepted words, where that is a short list: a person on a terminal is asked to choose. */
  choices?: readonly string[];
  /** The ways in which a table can be read: what a person says to choose one, and its first rows read so. */
  ways?: readonly { answer: string; rows: readonly string[] }[];
}

/** The one exception for what users can cause. */
export class DossierError extends Error implements Problem {
  override readonly name = 'DossierError';
  readonly code: ErrorCode;
  readonly where: Where;
  readonly fix?: string;
  readonly others?: readonly string[];
  readonly choices?: readonly string[];

  constructor(
    code: ErrorCode,
    message: string,
    options: {
      where?: Where;
      fix?: string;
      others?: readonly string[];
      choices?: readonly string[];
      cause?: unknown;
    } = {},
  ) {
    super(message, options.cause === undefined ? undefined : { cause: options.cause });
    this.code = code;
    this.where = options.where ?? {};
    if (options.fix !== undefined) this.fix = options.fix;
    if (options.others !== undefined) this.others = options.others;
    if (options.choices !== undefined) this.choices = options.choices;
  }

  /** The same as plain data. */
  toProblem(): Problem {
    return {
      code: this.code,
      message: this.message,
      where: this.where,
      ...omitUndefined({ fix: this.fix, others: this.others, choices: this.choices }),
    };
  }
}

/** Makes a forgotten case of a union a compile error, and an error at run time. */
export function assertNever(value: never): never {
  throw new Error(`unhandled case: ${JSON.stringify(value)}`);
}
