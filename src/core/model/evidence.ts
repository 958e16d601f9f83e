/** Everything that a record can hold about its delivery: files as they came in, and what people say. */
import { z } from 'zod';
import { document, readingsTable } from './evidence/document.js';
import { contact, event, statement } from './evidence/events.js';
import { exception } from './evidence/exception.js';
import { pallets, scale, shock } from './evidence/handling.js';
import { inspection } from './evidence/inspection.js';
import { instrumentRecord } from './evidence/instrument.js';
import { bracing, pattern, seal } from './evidence/load.js';
import { outcome } from './evidence/outcome.js';
import { particular } from './evidence/particular.js';
import { photo } from './evidence/photo.js';
import { pulp, setPoint, unitCheck } from './evidence/readings.js';
import { unitLogEvidence } from './evidence/unit-log.js';

export * from './evidence/document.js';
export * from './evidence/events.js';
export * from './evidence/exception.js';
export type { Source } from './evidence/fields.js';
export * from './evidence/file.js';
export * from './evidence/flag.js';
export * from './evidence/handling.js';
export * from './evidence/ids.js';
export * from './evidence/inspection.js';
export * from './evidence/instrument.js';
export * from './evidence/load.js';
export * from './evidence/outcome.js';
export * from './evidence/particular.js';
export * from './evidence/photo.js';
export * from './evidence/place.js';
export * from './evidence/readings.js';
export * from './evidence/signatory.js';
export * from './evidence/subject.js';
export * from './evidence/unit-log.js';

export const receivedEvidence = z.discriminatedUnion('kind', [
  photo,
  unitLogEvidence,
  readingsTable,
  document,
]);
export type ReceivedEvidence = z.infer<typeof receivedEvidence>;

export const reading = z.discriminatedUnion('kind', [
  pulp,
  setPoint,
  unitCheck,
  seal,
  bracing,
  pattern,
  scale,
  shock,
  pallets,
  event,
  outcome,
  inspection,
  exception,
  instrumentRecord,
  particular,
  contact,
  statement,
]);
export type Reading = z.infer<typeof reading>;
/** What a reading says, before it has an id and a source. */
export type ReadingBody = WithoutOrigin<Reading>;
type WithoutOrigin<T> = T extends unknown ? Omit<T, 'evidence' | 'source'> : never;

export const evidence = z.discriminatedUnion('kind', [...receivedEvidence.options, ...reading.options]);
/** A piece of evidence, by its kind: a file that was received, or a reading that was written down. */
export type Evidence = z.infer<typeof evidence>;
/** What a piece of evidence is. */
export type EvidenceKind = Evidence['kind'];

/** One member of the union, by its kind. */
export type EvidenceOf<K extends EvidenceKind> = Extract<Evidence, { kind: K }>;

export const readingKind = z.enum([
  'pulp',
  'set-point',
  'round',
  'seal',
  'bracing',
  'pattern',
  'scale',
  'shock',
  'pallets',
  'event',
  'outcome',
  'inspection',
  'exception',
  'instrument',
  'particular',
  'contact',
  'statement',
]);
/** What a reading is of. */
export type ReadingKind = z.infer<typeof readingKind>;
