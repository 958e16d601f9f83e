import { THRESHOLDS } from '../../core/model/rule-need.js';

/** A rule as plain data, before it is parsed. */
export type WrittenRule = Readonly<Record<string, unknown>>;

interface Changed {
  written: WrittenRule;
  problem?: { path: string[]; message: string };
}

/**
 * Replaces fields of a rule by those of a change. Thresholds are set wherever the needs state them; where they are
 * stated nowhere and there is only one need, they are added to it.
 */
export function changeRule(rule: WrittenRule, change: WrittenRule): Changed {
  const { thresholds, ...fields } = change;
  const written: Record<string, unknown> = { ...rule, ...fields };
  if (!isMap(thresholds)) return { written };
  for (const [name, value] of Object.entries(thresholds)) {
    const set = setEverywhere(written.needs, name, value);
    const { needs } = written;
    if (set.times > 0) written.needs = set.needs;
    else if (isMap(needs) && !['all', 'any', 'none'].some((key) => key in needs))
      written.needs = { ...needs, [name]: value };
    else
      return {
        written,
        problem: {
          path: ['thresholds', name],
          message: `the rule's needs state no ${name}; give the whole needs instead`,
        },
      };
  }
  return { written };
}

function setEverywhere(needs: unknown, name: string, value: unknown): { needs: unknown; times: number } {
  if (Array.isArray(needs)) {
    const parts = needs.map((one: unknown) => setEverywhere(one, name, value));
    return {
      needs: parts.map((part) => part.needs),
      times: parts.reduce((sum, part) => sum + part.times, 0),
    };
  }
  if (!isMap(needs)) return { needs, times: 0 };
  let times = 0;
  const entries = Object.entries(needs).map(([key, one]): [string, unknown] => {
    if (key === name && isThreshold(name)) {
      times += 1;
      return [key, value];
    }
    const inner = setEverywhere(one, name, value);
    times += inner.times;
    return [key, inner.needs];
  });
  return { needs: Object.fromEntries(entries), times };
}

const isThreshold = (name: string) => THRESHOLDS.some((one) => one === name);

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
