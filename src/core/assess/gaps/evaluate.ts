import { assertNever } from '../../model/error.js';
import type { Need } from '../../model/rule-set.js';
import type { RuleContext } from './context.js';
import { alarmsVerdict } from './needs/alarms.js';
import { claimVerdict } from './needs/claims.js';
import { delaysVerdict } from './needs/delays.js';
import { documentVerdict, photoVerdict } from './needs/files.js';
import { instructionVerdict } from './needs/instructions.js';
import { logVerdict } from './needs/logs.js';
import { instrumentVerdict, particularVerdict } from './needs/particulars.js';
import { pulpAgreementVerdict, pulpVerdict } from './needs/pulps.js';
import { eventVerdict, readingVerdict } from './needs/readings.js';
import { sealVerdict } from './needs/seals.js';
import { agreementVerdict } from './needs/set-points.js';
import { unitCheckVerdict } from './needs/unit-checks.js';
import { combineAll, combineAny, combineNone, type NeedVerdict } from './verdict.js';

/** Evaluates one need of the rule language against the record. */
export function evaluate(context: RuleContext, need: Need): NeedVerdict {
  const each = (needs: readonly Need[]) => needs.map((one) => evaluate(context, one));
  if ('all' in need) return combineAll(each(need.all));
  if ('any' in need) return combineAny(each(need.any));
  if ('none' in need) return combineNone(each(need.none));
  if ('photo' in need) return photoVerdict(context, need);
  if ('document' in need) return documentVerdict(context, need);
  if ('event' in need) return eventVerdict(context, need);
  if ('particular' in need) return particularVerdict(context, need);
  if ('instrument' in need) return instrumentVerdict(context, need);
  if ('instruction' in need) return instructionVerdict(context, need);
  if ('agreement' in need)
    return need.agreement === 'pulp' ? pulpAgreementVerdict(context, need) : agreementVerdict(context, need);
  if ('log' in need) return logVerdict(context, need);
  if ('alarms' in need) return alarmsVerdict(context, need);
  if ('delays' in need) return delaysVerdict(context, need);
  if ('claim' in need) return claimVerdict(context, need);
  switch (need.reading) {
    case 'pulp':
      return pulpVerdict(context, need);
    case 'round':
      return unitCheckVerdict(context, need);
    case 'seal':
      return sealVerdict(context, need);
    case 'set-point':
    case 'bracing':
    case 'contact':
    case 'statement':
    case 'exception':
      return readingVerdict(context, need);
    default:
      return assertNever(need);
  }
}
