import { assessGaps, nameOf } from '../core/assess/assess-gaps.js';
import type { Assessment, GapResult } from '../core/model/results.js';
import type { RecordState } from '../core/model/state.js';
import type { AssessDeliveryInput } from './assess.js';
import { readAssessInput } from './assess-input.js';
import { withDelivery } from './delivery.js';

/** The gaps of a delivery, with the rules that they were found by. */
export interface GapsReport {
  state: RecordState;
  ruleSet: Assessment['ruleSet'];
  gaps: GapResult[];
}

/**
 * What required evidence of a delivery is missing at a moment: the gaps of `assessDelivery`. The rest is only computed
 * where there is a claim, whose deadlines gaps name.
 * @throws DossierError when the delivery, its rule set or its deadlines can't be read
 */
export async function deliveryGaps(input: AssessDeliveryInput): Promise<GapsReport> {
  return withDelivery(input, false, async (record) => {
    if (record.state().claims.length > 0) {
      const { assessRecord } = await import('./assess.js');
      const { state, assessment } = await assessRecord(record, input.at, undefined, input.templates);
      return { state, ruleSet: assessment.ruleSet, gaps: assessment.gaps };
    }
    const read = await readAssessInput(record, input.at);
    return { state: read.state, ruleSet: nameOf(read.ruleSet), gaps: assessGaps(read) };
  });
}
