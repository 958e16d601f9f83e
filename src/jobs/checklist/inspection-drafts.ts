import type { ChecklistBox } from '../../compose/checklist/box.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { splitDefects } from '../../intake/inspection-words.js';
import { approximateTime, type ChecklistContext, typedEventTime, withUnit } from './context.js';
import { type BoxDraft, draft, lineOfLetter, missingCompanion } from './drafts.js';

type InspectionQuestion = Extract<ChecklistBox['question'], { is: 'inspection' }>;
const PARTS = [
  'line',
  'at',
  'inspector',
  'count',
  'samples',
  'low',
  'high',
  'certificate',
  'requested-by',
  'requested-at',
  'defects',
] as const satisfies readonly InspectionQuestion['part'][];

/** What the form says that an inspection found of one lot. */
export function inspectionDrafts(
  number: number,
  { part, stop }: InspectionQuestion,
  text: string,
  context: ChecklistContext,
): BoxDraft[] {
  const { answer, delivery } = context;
  const of = (name: InspectionQuestion['part']) => (other: ChecklistBox['question']) =>
    other.is === 'inspection' && other.part === name && other.stop === stop;
  if (part !== 'lot') return missingCompanion(number, context, of('lot'), 'the lot');
  const said = (name: InspectionQuestion['part']) => answer(of(name))?.text;
  const at = said('at');
  const requested = said('requested-at');
  const line = said('line');
  const degrees = (name: 'low' | 'high') => {
    const typed = said(name);
    return typed === undefined ? undefined : withUnit(typed, delivery.show.temperature);
  };
  const [low, high] = [degrees('low'), degrees('high')];
  return [
    draft([number, ...PARTS.flatMap((name) => answer(of(name))?.number ?? [])], () => ({
      kind: 'inspection',
      word: text,
      fields: {
        stop,
        ...(at === undefined
          ? approximateTime(stop, 'unloaded', context)
          : { at: typedEventTime(at, stop, context) }),
        ...omitUndefined({
          line: line === undefined ? undefined : lineOfLetter(line, context).id,
          by: said('inspector'),
          count: said('count'),
          samples: said('samples'),
          pulps: low === undefined && high === undefined ? undefined : `${low ?? high} to ${high ?? low}`,
          certificate: said('certificate'),
          requestedBy: said('requested-by'),
          requestedAt: requested === undefined ? undefined : typedEventTime(requested, stop, context),
          defect: said('defects') === undefined ? undefined : splitDefects(said('defects') ?? ''),
        }),
      },
    })),
  ];
}
