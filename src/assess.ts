/** Computing, with neither disk nor clock. */
export { type AssessInput, assess } from './core/assess/assess.js';
export type { GapsInput } from './core/assess/assess-gaps.js';
export { amountsOf } from './core/assess/claim/amounts.js';
export { quantitiesOf } from './core/assess/claim/quantities.js';
export { loadPlan } from './core/assess/loading/plan.js';
export { productAfter, sevenEighthsTime, timeConstant } from './core/assess/product/cooling.js';
export { reconcileTimes } from './core/assess/reconcile-times.js';
export { meanKineticTemperature } from './core/assess/temperature/kinetic.js';
export { summarise } from './core/assess/temperature/summary.js';
export { evidenceHistory, trailOf } from './core/assess/trail/trail.js';
export { foldEntries } from './core/ledger/fold.js';
export { DossierError } from './core/model/error.js';
export type * from './types.js';
