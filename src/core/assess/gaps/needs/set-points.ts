import type { SetPointStatement } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import { kelvin } from '../../../model/temperature.js';
import { differencesOf } from '../../agreement.js';
import type { RuleContext } from '../context.js';
import { shortfall } from '../shortfalls.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';

type AgreementNeed = Extract<SimpleNeed, { agreement: 'set-point' }>;

/** Whether the required sources state a set point and agree within the tolerance. */
export function agreementVerdict(context: RuleContext, need: AgreementNeed): NeedVerdict {
  const words = context.setPoints.words.filter(
    (word) => need.between.some((source) => source === word.source) && !isLater(context, word),
  );
  const silent = need.between
    .filter((source) => !words.some((word) => word.source === source))
    .map((source) => shortfall('source-silent', { source }));
  const counted = [...new Set(words.flatMap((word) => word.evidence ?? []))];
  const differences = differencesOf(words, kelvin(need.tolerance) + 1e-9);
  if (differences.length === 0) {
    const outcome = silent.length === 0 ? 'met' : words.length > 0 ? 'short' : 'missing';
    return { ...emptyVerdict(), outcome, counted, lacking: silent };
  }
  return {
    ...emptyVerdict(),
    outcome: 'contradicted',
    counted,
    against: [...new Set(differences.flatMap((one) => one.between.flatMap((word) => word.evidence ?? [])))],
    lacking: [
      ...silent,
      ...differences.map(({ between: [first, second] }) =>
        shortfall('sources-differ', {
          first: first.source,
          firstSays: { is: 'temperature', celsius: first.celsius },
          second: second.source,
          secondSays: { is: 'temperature', celsius: second.celsius },
        }),
      ),
    ],
  };
}

/** Whether a statement of the set point is later than the instant of assessment. */
function isLater(context: RuleContext, word: SetPointStatement): boolean {
  if (word.at !== undefined) return word.at > context.now;
  if (word.source !== 'log') return false;
  const log = context.logs.find((one) => one.evidence === word.evidence);
  return log !== undefined && (log.times.at(0) ?? context.now) > context.now;
}
