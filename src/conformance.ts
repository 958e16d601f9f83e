/** Trying what you put in the place of ours against the contracts of the ports: in your own tests. */
export { checkClock } from './conformance/check-clock.js';
export { checkOriginalsStore } from './conformance/check-originals-store.js';
export { checkSigner } from './conformance/check-signer.js';
export { checkTimeStampClient } from './conformance/check-time-stamp-client.js';
export type { RuleResult } from './conformance/rules.js';
export type { Sha256 } from './core/model/evidence.js';
export type { Clock } from './core/ports/clock.js';
export type { KeptOriginal, OriginalOrder, OriginalsStore } from './core/ports/originals-store.js';
export type { Signer, ToSign } from './core/ports/signer.js';
export type { TimeStampClient, TimeStampOrder } from './core/ports/time-stamps.js';
