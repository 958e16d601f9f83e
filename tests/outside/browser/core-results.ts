import { parse } from 'yaml';
import { numberExhibits } from '../../../src/compose/exhibits.js';
import type { ComposeInput } from '../../../src/compose/input.js';
import { viewOf } from '../../../src/compose/view/context.js';
import { documentOf } from '../../../src/compose/view/document.js';
import { assess } from '../../../src/core/assess/assess.js';
import { correctLog } from '../../../src/core/assess/camera-clocks/log-times.js';
import { logPoints } from '../../../src/core/assess/camera-clocks/points.js';
import { joinLogs } from '../../../src/core/assess/logs/join.js';
import { reconcileTimes } from '../../../src/core/assess/reconcile-times.js';
import { foldEntries } from '../../../src/core/ledger/fold.js';
import { claimDeadlines } from '../../../src/core/model/claim-deadlines.js';
import type { Language } from '../../../src/core/model/delivery.js';
import { entry } from '../../../src/core/model/entry.js';
import { sha256 } from '../../../src/core/model/evidence.js';
import { type RuleSetOrigin, ruleSet } from '../../../src/core/model/rule-set.js';
import { instant } from '../../../src/core/model/time.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { readLabels } from '../../../src/core/words/labels.js';
import { readRemarks, untranslated } from '../../../src/core/words/remarks.js';

/** What is computed from: the record's rows, its logs as they were read, and the shipped files as plain values. */
export interface CoreInput {
  rows: readonly unknown[];
  root: string;
  logs: readonly UnitLog[];
  rules: { text: string; sha256: string; origin: RuleSetOrigin };
  clocks: string;
  words: Readonly<
    Record<Language, { templates: Readonly<Record<string, string>>; labels: string; remarks?: string }>
  >;
  at: string;
}

/** Everything that the core makes of a record, down to each sentence and drawing of the pages, in both languages. */
export function coreResults(text: string): string {
  const input: CoreInput = revived(text);
  const { rules } = input;
  const rows = input.rows.map((row) => entry.parse(row));
  const root = sha256.parse(input.root);
  const state = reconcileTimes(foldEntries(rows, rows.length, root));
  const logs = input.logs.map((log) => correctLog(log, logPoints(state.clocks, log.evidence, [])));
  const { joined, ...overlaps } = joinLogs(logs);
  const assessment = assess({
    state,
    logs: joined,
    ruleSet: { ruleSet: ruleSet.parse(parse(rules.text)), sha256: rules.sha256, origin: rules.origin },
    at: instant.parse(input.at),
    claimDeadlines: claimDeadlines.parse(parse(input.clocks)),
  });
  const pages = (['en', 'es'] as const).map((language) => {
    const { templates, labels, remarks } = input.words[language];
    const inLanguage = {
      ...state,
      delivery: { ...state.delivery, show: { ...state.delivery.show, language } },
    };
    const composed: ComposeInput = {
      state: inLanguage,
      assessment,
      logs: joined,
      overlaps,
      exhibits: numberExhibits(inLanguage),
      attachments: [],
      readOriginal: async () => new Uint8Array(),
      builtAt: instant.parse(input.at),
      fingerprint: { delivery: state.delivery.delivery, size: rows.length, root },
      signer: { name: 'Nobody', certificateSha256: root },
      tool: { name: 'load-dossier', version: '0' },
    };
    const view = viewOf(
      composed,
      {
        templates: new Map(Object.entries(templates)),
        folder: language,
        remarks: remarks === undefined ? untranslated : readRemarks({ text: remarks, file: 'remarks.yaml' }),
      },
      readLabels({ text: labels, file: 'labels.yaml' }),
    );
    return documentOf(view, {
      pictures: new Map(),
      documents: new Map(),
      bytes: 0,
      quality: { longest: 1, quality: 1 },
    });
  });
  return written({ state, assessment, pages });
}

/** JSON that keeps what JSON loses: numbers that are none, columns of numbers, maps. */
export function written(value: unknown): string {
  return JSON.stringify(value, (_, one: unknown) => {
    if (typeof one === 'number' && !Number.isFinite(one)) return { is: 'number', text: String(one) };
    if (one instanceof Float64Array) return { is: 'numbers', of: Array.from(one) };
    if (one instanceof Map) return { is: 'map', of: [...one] };
    return one;
  });
}

function revived(text: string): CoreInput {
  return JSON.parse(text, (_, one: unknown) => {
    if (typeof one !== 'object' || one === null || !('is' in one)) return one;
    if (one.is === 'number' && 'text' in one) return Number(one.text);
    if (one.is === 'numbers' && 'of' in one && Array.isArray(one.of)) return Float64Array.from(one.of);
    return one;
  });
}
