import type { z } from 'zod';
import { deliveryOf, type description, type Entry, firstEntered } from '../model/entry.js';
import { assertNever } from '../model/error.js';
import type { EvidenceId, FlagName, ReceivedEvidence, Sha256 } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { ClaimEntry, EvidenceItem, RecordState } from '../model/state.js';
import { countedEntries } from './counted-entries.js';
import { withFlagsNow } from './flags-now.js';

/** Flags of a file that belongs to another trailer or time than this delivery. */
const ELSEWHERE: ReadonlySet<FlagName> = new Set(['other-trailer', 'outside-delivery-time']);
const belongsElsewhere = (item: EvidenceItem) =>
  'flags' in item && item.flags.some(({ is }) => ELSEWHERE.has(is));

/**
 * What the entries say, taken in order: later facts replace earlier ones, descriptions lie over what was received.
 * What was struck is folded as if it had never been entered, what was corrected as if it had been entered right.
 * `size` and `root` are those of the tree over the same entries.
 * Entries must be such as the store lets in (`referenceProblem`); others throw a plain Error.
 */
export function foldEntries(entries: readonly Entry[], size: number, root: Sha256): RecordState {
  const evidence = new Map<EvidenceId, EvidenceItem>();
  const clocks: RecordState['clocks'] = [];
  const published: RecordState['published'] = [];
  const timeStamps: RecordState['timeStamps'] = [];
  const dossiers: RecordState['dossiers'] = [];
  const merges: RecordState['merges'] = [];
  const claims = new Map<number, ClaimEntry>();
  let facts: Extract<Entry, { type: 'delivery-facts' }> | undefined;

  const change = (id: EvidenceId, to: (item: EvidenceItem) => EvidenceItem) => {
    const item = evidence.get(id);
    if (item === undefined) throw new Error(`no evidence ${id} before it is spoken of`);
    evidence.set(id, to(item));
  };

  const replace = (by: ReceivedEvidence) => {
    if (by.kind === 'unit-log' && by.replaces !== undefined)
      change(by.replaces, (item) => ({ ...item, replacedBy: by.evidence }));
  };

  const counted = countedEntries(entries);
  for (const { entry, correctedBy } of counted.entries) {
    switch (entry.type) {
      case 'delivery-facts':
        facts = entry;
        break;
      case 'evidence-received':
      case 'reading-recorded': {
        const { at, by } = firstEntered(entry);
        evidence.set(entry.body.evidence, {
          ...entry.body,
          seq: entry.seq,
          enteredAt: at,
          enteredBy: by,
          describedBy: [],
          correctedBy,
          ...omitUndefined({ origin: entry.origin }),
        });
        if (entry.type === 'evidence-received') replace(entry.body);
        break;
      }
      case 'evidence-described':
        change(entry.body.evidence, (item) => described(item, entry.body, entry.seq));
        break;
      case 'evidence-withheld':
        change(entry.body.evidence, (item) => ({ ...item, withheld: entry.body.why }));
        break;
      case 'clock-compared':
        clocks.push({ ...entry.body, seq: entry.seq });
        break;
      case 'fingerprint-published':
        published.push(entry);
        break;
      case 'time-stamp-received':
        timeStamps.push(entry);
        break;
      case 'dossier-built':
        dossiers.push(entry);
        break;
      case 'claim-noted': {
        const { seq, body } = entry;
        const { at, by } = firstEntered(entry);
        claims.set(seq, { ...body, seq, enteredAt: at, enteredBy: by });
        const replaced = body.replaces === undefined ? undefined : claims.get(body.replaces);
        if (replaced !== undefined) claims.set(replaced.seq, { ...replaced, replacedBy: seq });
        break;
      }
      case 'evidence-admitted':
        change(entry.body.evidence, (item) => ({ ...item, admitted: entry.body.why }));
        break;
      case 'record-merged':
        merges.push(entry);
        break;
      case 'entry-corrected':
      case 'entry-struck':
        break;
      default:
        assertNever(entry);
    }
  }
  if (facts === undefined) throw new Error('a record without delivery facts');
  const now = deliveryOf(facts.body.facts);
  const all = [...evidence.values()].map((item) => withFlagsNow(item, now));
  return {
    delivery: now,
    deliveryHash: facts.body.sha256,
    evidence: all.filter((item) => item.admitted !== undefined || !belongsElsewhere(item)),
    notCounted: all.filter((item) => item.admitted === undefined && belongsElsewhere(item)),
    corrections: counted.corrections,
    strikes: counted.strikes,
    merges,
    clocks,
    published,
    timeStamps,
    dossiers,
    claims: [...claims.values()],
    size,
    root,
  };
}

/** Applies a description: its fields replace earlier ones; a place is completed field by field. */
function described(item: EvidenceItem, says: z.infer<typeof description>, seq: number): EvidenceItem {
  const common = {
    ...omitUndefined({
      place: says.place === undefined ? undefined : { ...item.place, ...says.place },
      line: says.line,
      by: says.by,
      caption: says.caption,
      time: says.time,
      blackOut: says.blackOut,
    }),
    describedBy: [...item.describedBy, seq],
  };
  switch (item.kind) {
    case 'photo':
    case 'unit-log':
    case 'readings':
    case 'document':
      return { ...item, ...common, ...omitUndefined({ subject: says.subject }) };
    default:
      return { ...item, ...common };
  }
}
