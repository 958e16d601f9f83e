import { z } from 'zod';
import { claimDeadlines } from '../core/model/claim-deadlines.js';
import { delivery } from '../core/model/delivery.js';
import { ruleSetFile } from '../core/model/rule-set-file.js';
import { logMap } from './unit-log/log-map.js';

/** JSON Schema (draft 2020-12) of delivery.yaml as people write it, for editors to complete. */
export function deliverySchema(): object {
  return { title: 'A delivery', ...z.toJSONSchema(delivery, { io: 'input' }) };
}

/** JSON Schema (draft 2020-12) of a rule set as people write it. */
export function ruleSetSchema(): object {
  return { title: 'A rule set', ...z.toJSONSchema(ruleSetFile, { io: 'input' }) };
}

/** JSON Schema (draft 2020-12) of a map file for a unit log as people write it. */
export function logMapSchema(): object {
  return { title: 'How a unit log is read', ...z.toJSONSchema(logMap, { io: 'input' }) };
}

/** JSON Schema (draft 2020-12) of the clocks of a claim as people write them. */
export function claimDeadlinesSchema(): object {
  return { title: 'Clocks of a claim', ...z.toJSONSchema(claimDeadlines, { io: 'input' }) };
}
