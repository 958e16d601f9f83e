/** A sentence of a port's contract, and whether what was tried kept it. */
export type RuleResult =
  | { rule: string; holds: true }
  /** Why it does not, for the one who wrote it. */
  | { rule: string; holds: false; why: string };

/** Said where a rule is not kept. */
class Broken extends Error {}

/** Ends a trial: the rule is not kept. */
export function broken(why: string): never {
  throw new Broken(why);
}

/** Tries the rules of a contract one after the other; one that is not kept never stops the others. */
export class Rules {
  readonly results: RuleResult[] = [];

  /** @param trial throws where the rule is not kept */
  async try(rule: string, trial: () => Promise<void>): Promise<void> {
    try {
      await trial();
      this.results.push({ rule, holds: true });
    } catch (error) {
      this.results.push({ rule, holds: false, why: error instanceof Error ? error.message : String(error) });
    }
  }
}

/** What an action rejects with. @throws Broken when it resolves */
export async function rejectionOf(action: () => Promise<unknown>, instead: string): Promise<unknown> {
  try {
    await action();
  } catch (error) {
    return error;
  }
  return broken(`it resolved, ${instead}`);
}
