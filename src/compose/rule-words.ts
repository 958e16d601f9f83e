import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Assessment } from '../core/model/results.js';
import type { RuleSetOrigin } from '../core/model/rule-set.js';
import type { RuleSetWords } from '../core/model/rule-words.js';

/** An assessment with the texts of its rules replaced, where there are replacements. Results stay the same. */
export function withRuleWords(assessment: Assessment, words: RuleSetWords): Assessment {
  const { gaps, ruleSet } = assessment;
  const { origin } = ruleSet;
  return {
    ...assessment,
    gaps: gaps.map((gap) => ({ ...gap, ...words.rules.get(gap.rule) })),
    ruleSet: {
      ...ruleSet,
      title: words.title ?? ruleSet.title,
      ...omitUndefined({
        origin:
          origin === undefined
            ? undefined
            : {
                ...origin,
                off: origin.off.map((one, i) => ({ ...one, ...words.off[i] })),
                changed: origin.changed.map((one, i) => ({ ...one, ...words.changed[i] })),
                ...omitUndefined({ conflicts: inWords(origin, words) }),
              },
      }),
    },
  };
}

/** Conflicts with the titles of their rules, those of rules that are switched off too. */
function inWords({ conflicts, off }: RuleSetOrigin, words: RuleSetWords): RuleSetOrigin['conflicts'] {
  return conflicts?.map((one) => {
    const title =
      words.rules.get(one.rule ?? '')?.title ??
      words.off[off.findIndex(({ rule }) => rule === one.rule)]?.title ??
      one.title;
    return { ...one, ...omitUndefined({ title }) };
  });
}
