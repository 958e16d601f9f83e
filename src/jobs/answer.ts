import { join } from 'node:path';
import { yamlFile } from '../compose/load-words.js';
import { SHIPPED } from '../compose/shipped.js';
import type { Language } from '../core/model/delivery.js';
import { DossierError } from '../core/model/error.js';
import type { ClaimDeadline, ClaimResult } from '../core/model/results.js';
import type { Instant } from '../core/model/time.js';
import { type Labels, readLabels } from '../core/words/labels.js';
import { type AssessedDelivery, assessDelivery } from './assess.js';
import { loadClaimDeadlines } from './claim-deadlines.js';
import { type OpenDelivery, withDelivery } from './delivery.js';

/** What is asked about the claims of a delivery. */
export interface AnswerInput extends OpenDelivery {
  /** The instant at which deadlines are judged. */
  at: Instant;
  /** Only this claim, such as c1. */
  claim?: string | undefined;
  /** The carrier's own folder of templates, which may hold its claim deadlines. */
  templates?: string | undefined;
}

/** What is due when for the claims of a delivery, and what is late. */
export interface AnswerReport extends AssessedDelivery {
  claims: ClaimResult[];
  refusalClocks: ClaimDeadline[];
  /** Overdue carrier actions of all claims shown. */
  overdue: ClaimDeadline[];
  /** Entries by which the contract sets a deadline that the rules lack. */
  unknownTerms: { seq: number; clock: string }[];
}

/**
 * Deadlines of a delivery's claims, and which are overdue. Throws DossierError `bad-value` for an unknown claim,
 * `bad-template` when the deadlines cannot be read.
 */
export async function answer(input: AnswerInput): Promise<AnswerReport> {
  const assessed = await assessDelivery(input);
  const all = assessed.assessment.claims ?? [];
  const claims = input.claim === undefined ? all : all.filter(({ claim }) => claim === input.claim);
  if (input.claim !== undefined && claims.length === 0) throw noSuchClaim(input.claim, all);
  const clocks = claims.flatMap((claim) => claim.clocks);
  const { clocks: rules } = await loadClaimDeadlines(input.templates);
  const known = new Set(rules.map(({ id }) => id));
  return {
    ...assessed,
    claims,
    refusalClocks: assessed.assessment.refusalClocks ?? [],
    overdue: clocks.filter(({ binds, state }) => binds === 'carrier' && state === 'overdue'),
    unknownTerms: assessed.state.claims.flatMap((entry) =>
      entry.is === 'clock-set' && entry.replacedBy === undefined && !known.has(entry.clock)
        ? [{ seq: entry.seq, clock: entry.clock }]
        : [],
    ),
  };
}

/** What an answer says of the claims alone. */
export type ClaimDuties = Pick<AnswerReport, 'state' | 'claims' | 'overdue'>;

/** The same, without assessing a delivery that has no claim: most of many have none. */
export async function claimDuties(input: AnswerInput): Promise<ClaimDuties> {
  const state = await withDelivery(input, false, async (record) => record.state());
  if (state.claims.length > 0) return answer(input);
  if (input.claim !== undefined) throw noSuchClaim(input.claim, []);
  return { state, claims: [], overdue: [] };
}

function noSuchClaim(named: string, all: readonly ClaimResult[]): DossierError {
  const choices = all.map(({ claim }) => claim);
  return new DossierError('bad-value', `there is no claim "${named}"`, {
    where: { field: '--claim' },
    fix:
      choices.length === 0
        ? 'No claim is recorded at that moment: dossier record claim received'
        : `Use one of: ${choices.join(', ')}.`,
    choices,
  });
}

/**
 * Labels for deadlines in a language; what answer.yaml lacks is in labels.yaml, which the pages share. Throws
 * DossierError `bad-template` when they can't be read.
 */
export async function answerWords(language: Language): Promise<Labels> {
  const [own, shared] = ['answer.yaml', 'labels.yaml'].map((name) =>
    readLabels(yamlFile(join(SHIPPED, 'words', language, name))),
  );
  if (own === undefined || shared === undefined) throw new Error('two files, two sets of labels');
  const find = (key: string) => own.find(key) ?? shared.find(key);
  return Object.assign((key: string) => find(key) ?? own(key), { find });
}
