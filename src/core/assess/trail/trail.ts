import { type Entry, firstEntered } from '../../model/entry.js';
import { entryEvidence } from '../../model/entry-evidence.js';
import { assertNever } from '../../model/error.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { TrailField, TrailRow } from '../../model/results/trail.js';
import { changesBetween, fieldsOf } from './fields.js';
import { daysLate } from './late-entry.js';

/** Fields shown in columns of their own, or too large for a table: the ledger has them in full. */
const OWN_PLACE = new Set(['evidence', 'time', 'file', 'within', 'source']);
const LARGE = new Set(['mapping', 'statedTimes', 'sceneHash', 'signature', 'token']);
const SHOWN_ELSEWHERE = new Set([...OWN_PLACE, ...LARGE]);
/** A correction may move an entry to another time, which is a change like any other. */
const CORRECTION_HIDES = new Set([...SHOWN_ELSEWHERE].filter((name) => name !== 'time'));

/**
 * Every entry of a record, in order: who entered it, when, what it says, from which file, and what it changed.
 * Nothing is judged and nothing left out.
 */
export function trailOf(entries: readonly Entry[]): TrailRow[] {
  const standing = new Map<EvidenceId, Map<string, string>>();
  const corrected = new Map<number, TrailField[]>();
  let facts: TrailField[] = [];
  return entries.map((entry): TrailRow => {
    const head = {
      seq: entry.seq,
      type: entry.type,
      at: entry.at,
      by: entry.by,
      ...omitUndefined({ origin: originOf(entry) }),
      evidence: [] as EvidenceId[],
      fields: [] as TrailField[],
      changes: [],
    };
    switch (entry.type) {
      case 'delivery-facts': {
        const now = fieldsOf(entry.body.facts);
        const first = facts.length === 0;
        const changes = first ? [] : changesBetween(facts, now);
        facts = now;
        return { ...head, fields: first ? now : [], changes };
      }
      case 'evidence-received': {
        const { body } = entry;
        const { name, bytes, sha256 } = body.file;
        const fields = fieldsOf(body, SHOWN_ELSEWHERE);
        standing.set(body.evidence, asMap(body));
        return {
          ...head,
          evidence: [body.evidence],
          time: body.time,
          file: { name, bytes, sha256 },
          ...omitUndefined({ from: body.within }),
          fields,
        };
      }
      case 'reading-recorded': {
        const { body } = entry;
        standing.set(body.evidence, asMap(body));
        return {
          ...head,
          evidence: [body.evidence],
          time: body.time,
          ...omitUndefined({
            daysLate: daysLate(firstEntered(entry).at, body.time),
            from:
              body.source.is === 'row' ? { evidence: body.source.evidence, row: body.source.row } : undefined,
          }),
          fields: fieldsOf(body, SHOWN_ELSEWHERE),
        };
      }
      case 'evidence-described': {
        const { evidence, why, ...said } = entry.body;
        const was = standing.get(evidence) ?? new Map<string, string>();
        const now = new Map([...was, ...asMap(said)]);
        standing.set(evidence, now);
        return {
          ...head,
          evidence: [evidence],
          ...omitUndefined({ time: said.time }),
          fields: why === undefined ? [] : [{ field: 'why', value: why }],
          changes: changesBetween(asFields(was), asFields(now)),
        };
      }
      case 'evidence-withheld':
        return {
          ...head,
          evidence: [entry.body.evidence],
          fields: [{ field: 'why', value: entry.body.why }],
        };
      case 'clock-compared': {
        const { photo, replaces, ...body } = entry.body;
        const log = body.clock.is === 'unit-log' ? body.clock.evidence : undefined;
        return {
          ...head,
          evidence: [photo, log].filter((id) => id !== undefined),
          fields: [
            ...fieldsOf(body),
            ...(replaces === undefined ? [] : [{ field: 'in place of entries', value: replaces.join(', ') }]),
          ],
        };
      }
      case 'fingerprint-published':
      case 'time-stamp-received': {
        const { size, ...body } = entry.body;
        return { ...head, covers: size, fields: fieldsOf(body, LARGE) };
      }
      case 'dossier-built': {
        const { file: name, bytes, sha256, size, ...body } = entry.body;
        return { ...head, covers: size, file: { name, bytes, sha256 }, fields: fieldsOf(body) };
      }
      case 'claim-noted': {
        const { evidence, claim, replaces, ...body } = entry.body;
        const earlier = entries[replaces ?? -1];
        return {
          ...head,
          evidence,
          ...omitUndefined({ claim }),
          fields: fieldsOf(body),
          ...omitUndefined({ corrects: replaces }),
          changes:
            earlier?.type === 'claim-noted'
              ? changesBetween(claimFields(earlier.body), claimFields(entry.body))
              : [],
        };
      }
      case 'evidence-admitted':
        return {
          ...head,
          evidence: [entry.body.evidence],
          fields: [{ field: 'why', value: entry.body.why }],
        };
      case 'entry-corrected': {
        const { entry: corrects, becomes, why } = entry.body;
        const wrong = entries[corrects];
        const was = corrected.get(corrects) ?? fieldsOf(wrong?.body ?? {}, CORRECTION_HIDES);
        const now = fieldsOf(becomes.body, CORRECTION_HIDES);
        corrected.set(corrects, now);
        return {
          ...head,
          evidence: wrong === undefined ? [] : entryEvidence(wrong),
          corrects,
          ...omitUndefined({
            time: becomes.type === 'reading-recorded' ? becomes.body.time : undefined,
            daysLate:
              becomes.type === 'reading-recorded'
                ? daysLate(firstEntered(entry).at, becomes.body.time)
                : undefined,
          }),
          fields: [{ field: 'why', value: why }],
          changes: changesBetween(was, now),
        };
      }
      case 'entry-struck': {
        const { entry: strikes, why } = entry.body;
        const wrong = entries[strikes];
        return {
          ...head,
          evidence: wrong === undefined ? [] : entryEvidence(wrong),
          strikes,
          fields: [{ field: 'why', value: why }],
        };
      }
      case 'record-merged': {
        const { other, own, shared } = entry.body;
        return {
          ...head,
          fields: fieldsOf({ other, 'this record before': own, 'entries in both': shared }),
        };
      }
      default:
        return assertNever(entry);
    }
  });
}

/** Where an entry was entered first. */
function originOf({ origin }: Entry): TrailRow['origin'] {
  if (origin === undefined) return undefined;
  const { merge, entry, at, by } = origin;
  return { merge, entry, at, by };
}

const CLAIM_HEAD = new Set(['claim', 'replaces']);
const claimFields = (body: object) => fieldsOf(body, CLAIM_HEAD);

function asMap(body: object): Map<string, string> {
  return new Map(
    fieldsOf(body, new Set([...LARGE, 'evidence', 'file', 'within', 'source'])).map(({ field, value }) => [
      field,
      value,
    ]),
  );
}
const asFields = (map: ReadonlyMap<string, string>): TrailField[] =>
  [...map].map(([field, value]) => ({ field, value }));

/**
 * The history of one item of evidence: the entries that add it, describe it, were read from it or came in it, and
 * the fingerprints, time stamps and dossiers that cover its entry.
 */
export function evidenceHistory(rows: readonly TrailRow[], id: EvidenceId): TrailRow[] {
  const born = rows.find(({ evidence, type }) => BRINGS_IN.has(type) && evidence.includes(id));
  if (born === undefined) return [];
  return rows.filter(
    (row) =>
      row.evidence.includes(id) ||
      row.from?.evidence === id ||
      (row.covers !== undefined && row.covers > born.seq),
  );
}
const BRINGS_IN: ReadonlySet<TrailRow['type']> = new Set(['evidence-received', 'reading-recorded']);
