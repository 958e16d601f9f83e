import type { Check, CheckResult, Verdict } from '../model/verification.js';
import { CHECKS, CHECKS_BY_SUBJECT, type CheckId } from './checks.js';
import { Malformed } from './malformed.js';

export type { CheckId } from './checks.js';

const MOST_NAMED = 20;

/** Collects the results of checks; a check without a result counts as not checked. */
export class CheckResults {
  private readonly results = new Map<CheckId, { result: CheckResult; detail: string }>();

  constructor(private readonly asked: readonly CheckId[] = CHECKS_BY_SUBJECT.dossier) {}

  pass(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'passed', detail });
  }

  /** Passes the check with something that the reader should know. */
  notice(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'notice', detail });
  }

  fail(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'failed', detail });
  }

  skip(id: CheckId, detail: string): void {
    this.results.set(id, { result: 'not-checked', detail });
  }

  /** Fails with the list, or passes when it is empty. */
  failIf(id: CheckId, wrong: readonly string[], good: string): void {
    if (wrong.length === 0) this.pass(id, good);
    else this.fail(id, named(wrong));
  }

  /** Notes the list, or passes when it is empty. */
  noteIf(id: CheckId, found: readonly string[], good: string): void {
    if (found.length === 0) this.pass(id, good);
    else this.notice(id, named(found));
  }

  /** Runs a strict reader: Malformed fails the check and gives undefined; a value passes it. */
  attempt<T>(id: CheckId, read: () => T, good: (value: T) => string): T | undefined {
    try {
      const value = read();
      this.pass(id, good(value));
      return value;
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      this.fail(id, error.message);
      return undefined;
    }
  }

  /** Runs a strict reader that answers later, as `attempt` does. */
  async attemptLater<T>(
    id: CheckId,
    read: () => Promise<T>,
    good: (value: T) => string,
  ): Promise<T | undefined> {
    try {
      const value = await read();
      this.pass(id, good(value));
      return value;
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      this.fail(id, error.message);
      return undefined;
    }
  }

  has(result: CheckResult, id?: CheckId): boolean {
    if (id !== undefined) return this.results.get(id)?.result === result;
    return [...this.results.values()].some((one) => one.result === result);
  }

  checks(): Check[] {
    return this.asked.map((id) => ({
      id,
      what: CHECKS[id],
      ...(this.results.get(id) ?? {
        result: 'not-checked',
        detail: 'An earlier check failed that this one needs.',
      }),
    }));
  }
}

function named(all: readonly string[]): string {
  if (all.length <= MOST_NAMED) return all.join('; ');
  return `${all.slice(0, MOST_NAMED).join('; ')}; and ${all.length - MOST_NAMED} more`;
}

const BADNESS: Record<Verdict, number> = { intact: 0, 'intact-signer-not-vouched-for': 1, broken: 2 };

/** The worst of several verdicts; `intact` of none. */
export function worst(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((a, b) => (BADNESS[b] > BADNESS[a] ? b : a), 'intact');
}
