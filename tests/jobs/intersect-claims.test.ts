import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../src/core/assess/assess.js';
import type { EventName } from '../../src/core/model/evidence.js';
import { ruleSet } from '../../src/core/model/rule-set.js';
import { type Instant, toInstant, type Zone } from '../../src/core/model/time.js';
import { parseClaimDeadlines } from '../../src/intake/claim-deadlines-file.js';
import { intersectClaims } from '../../src/jobs/redaction/intersect-claims.js';
import { claimEntries, claimReceived } from '../core/assess/claim/made.js';
import { HASH, items, state } from '../core/assess/made.js';

const produce = ruleSet.parse(parse(readFileSync('templates/rule-sets/produce.yaml', 'utf8')));
const claimClocks = parseClaimDeadlines(
  readFileSync('templates/claim-deadlines.yaml', 'utf8'),
  'claim-deadlines.yaml',
);
const happened = (event: EventName, at: string) => ({
  kind: 'event' as const,
  event,
  place: { stop: 'drop-1' },
  time: {
    is: 'known' as const,
    instant: toInstant(Date.parse(at)),
    zone: 'America/Chicago' as Zone,
    basis: 'typed' as const,
    uncertaintySeconds: 0,
  },
});
const told = (at: string) => {
  const { place, time } = happened('inspected', at);
  const how = { with: 'shipper', how: 'call', notice: 'inspection-delay' } as const;
  return { kind: 'contact' as const, about: 'No inspector before tomorrow', ...how, place, time };
};
const paper = { kind: 'document' as const, subject: { is: 'invoice' as const, sure: 'confirmed' as const } };
const assessed = (leaveOut: readonly string[]) => {
  const evidence = items(
    happened('arrived', '2026-07-14T08:00-05:00'),
    happened('inspection-requested', '2026-07-14T09:00-05:00'),
    happened('inspection-unavailable', '2026-07-14T11:00-05:00'),
    told('2026-07-14T12:00-05:00'),
    happened('inspected', '2026-07-15T10:00-05:00'),
    happened('refused', '2026-07-15T11:00-05:00'),
    paper,
  ).filter((item) => !leaveOut.includes(item.evidence));
  return assess({
    state: { ...state(evidence), claims: claimEntries(claimReceived('2026-07-20')) },
    logs: [],
    ruleSet: { ruleSet: produce, sha256: HASH },
    at: '2026-08-01T00:00:00.000Z' as Instant,
    claimDeadlines: claimClocks,
  });
};

describe('what a copy says of claims', () => {
  const whole = assessed([]);

  it('is all of it when nothing is left out', () => {
    expect(intersectClaims(whole, assessed([]))).toEqual({
      claims: whole.claims,
      refusalClocks: whole.refusalClocks,
    });
  });

  it('is not that the goods were refused late when the inspection is what is left out', () => {
    const part = assessed(['e2', 'e3', 'e4', 'e5']);
    expect(whole.refusalClocks?.map(({ state: how }) => how)).toEqual(['not-shown']);
    expect(part.refusalClocks?.map(({ state: how }) => how)).toEqual(['done-late']);
    expect(intersectClaims(whole, part).refusalClocks).toEqual([]);
  });

  it('is not that a paper is missing which was left out', () => {
    const [claim] = intersectClaims(whole, assessed(['e7'])).claims ?? [];
    expect(claim?.papers.map(({ id }) => id)).not.toContain('invoice');
    expect(claim?.clocks).toEqual(whole.claims?.[0]?.clocks);
  });
});
