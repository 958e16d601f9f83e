import type { LanguageWords } from '../../compose/language.js';
import { loadLanguageWords } from '../../compose/language.js';
import { paper as paperSchema } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import type { RecordState } from '../../core/model/state.js';
import type { RecordView } from '../../record/record-at.js';
import { type AssessedDelivery, assessRecord } from '../assess.js';
import { intersectAssessments } from '../redaction/intersect-assessments.js';
import { redactedState, unredactedState } from '../redaction/redact.js';
import { loadRuleWords } from '../rule-set.js';
import type { RenderInput } from './render-input.js';

/** The contents of a dossier for its reader, and their language. */
export interface AssessedForReader {
  /** Of the copy, where it is one; on the paper that is wanted. Findings of a copy are those that the whole record bears out. */
  assessed: AssessedDelivery;
  /** Findings and requirements of the whole record that rest on what a copy redacts. */
  leftOut: { findings: number; requirements: number };
  words: LanguageWords;
  ruleWords: Awaited<ReturnType<typeof loadRuleWords>>;
}

/** @throws DossierError as `assessRecord` does, and `bad-usage` for a paper that there is not */
export async function assessForReader(
  record: RecordView,
  { builtAt, copy, out, templates }: RenderInput,
  paper: string | undefined,
): Promise<AssessedForReader> {
  const { own } = templates;
  const select = (state: RecordState) =>
    copy === undefined ? unredactedState(state) : redactedState(state, out, copy);
  const assessed = await assessRecord(record, builtAt, select, own);
  const { assessment, findingsLeftOut, requirementsLeftOut } =
    copy === undefined
      ? { assessment: assessed.assessment, findingsLeftOut: 0, requirementsLeftOut: 0 }
      : intersectAssessments(
          (await assessRecord(record, builtAt, undefined, own)).assessment,
          assessed.assessment,
        );
  const state = onPaper(assessed.state, paper);
  const { language } = state.delivery.show;
  const [words, ruleWords] = await Promise.all([
    loadLanguageWords(language, templates),
    loadRuleWords(assessed.ruleSet, language),
  ]);
  return {
    assessed: { ...assessed, state, assessment },
    leftOut: { findings: findingsLeftOut, requirements: requirementsLeftOut },
    words,
    ruleWords,
  };
}

function onPaper(state: RecordState, wanted: string | undefined): RecordState {
  if (wanted === undefined) return state;
  const read = paperSchema.safeParse(wanted);
  if (!read.success)
    throw new DossierError('bad-usage', `there is no paper "${wanted}"`, {
      where: { field: '--paper' },
      fix: 'Use Letter or A4.',
    });
  return {
    ...state,
    delivery: { ...state.delivery, show: { ...state.delivery.show, paper: read.data } },
  };
}
