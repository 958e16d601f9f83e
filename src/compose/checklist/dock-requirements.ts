import type { Delivery } from '../../core/model/delivery.js';
import { type Position, type SubjectName, sceneSubject } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Need, Rule, RuleSet, SimpleNeed } from '../../core/model/rule-set.js';

export type StopSide = 'load' | 'unload';

/** Evidence required by a rule set that a person on the dock can write down or photograph. */
export interface DockRequirements {
  /** Readings by kind, at loading, in transit or at unloading. */
  reads(
    kind: 'pulp' | 'set-point' | 'round' | 'seal' | 'bracing' | 'contact' | 'statement',
    side: StopSide | 'transit',
  ): boolean;
  /** Whether the rules require the receiver's own pulps. */
  receiverPulps: boolean;
  positions: Position[];
  events: ReadonlySet<string>;
  photos(side: StopSide): SubjectName[];
  /** Hours between unit checks, if the rules state them. */
  everyHours?: number;
}

/**
 * Reads the requirements for the form of one delivery from a rule set. Rules for events that have not happened (a
 * rejection, a claim) are left out.
 */
export function dockRequirements(ruleSet: RuleSet, delivery: Delivery): DockRequirements {
  const found = ruleSet.rules
    .filter((rule) => rule.stage !== 'rejection' && rule.stage !== 'claim')
    .filter((rule) => meant(rule, delivery))
    .flatMap((rule) => simple(rule.needs).map((need) => ({ need, side: sideOf(rule, need) })));
  const needs = found.map(({ need }) => need);
  const hours = needs.flatMap((need) =>
    'everyHours' in need && need.everyHours !== undefined ? [need.everyHours] : [],
  );
  return {
    reads: (kind, side) =>
      found.some((one) => 'reading' in one.need && one.need.reading === kind && one.side === side),
    receiverPulps: needs.some(
      (need) =>
        ('reading' in need && need.reading === 'pulp' && need.from === 'receiver') ||
        ('agreement' in need && need.agreement === 'pulp' && need.between.includes('receiver')),
    ),
    positions: unique(
      needs.flatMap((need) =>
        'reading' in need && need.reading === 'pulp' ? (need.spread?.position ?? []) : [],
      ),
    ),
    events: new Set(needs.flatMap((need) => ('event' in need ? [need.event].flat() : []))),
    photos: (side) =>
      unique(
        found.flatMap(({ need, side: here }) =>
          'photo' in need && here === side ? [need.photo].flat() : [],
        ),
      ).filter((subject) => sceneSubject.options.some((scene) => scene === subject)),
    ...omitUndefined({ everyHours: hours.length === 0 ? undefined : Math.min(...hours) }),
  };
}

const unique = <T>(list: readonly T[]): T[] => [...new Set(list)];

function meant(rule: Rule, { lines, equipment }: Delivery): boolean {
  const { iced, airChute, drains, happened } = rule.applies ?? {};
  return (
    happened === undefined &&
    (iced === undefined || lines.some((line) => line.iced === iced)) &&
    (airChute === undefined || (equipment.trailer.airChute ?? true) === airChute) &&
    (drains === undefined || (equipment.trailer.drains !== 'none') === drains)
  );
}

/** The needs at the leaves; excluded evidence is not on the form. */
function simple(need: Need): SimpleNeed[] {
  if ('all' in need) return need.all.flatMap(simple);
  if ('any' in need) return need.any.flatMap(simple);
  if ('none' in need) return [];
  return [need];
}

/** Where a need is met: at its own side, else at its rule's stage. */
function sideOf(rule: Rule, need: SimpleNeed): StopSide | 'transit' {
  const at = 'at' in need ? need.at : undefined;
  if (at === 'loading-stop') return 'load';
  if (at === 'unloading-stop') return 'unload';
  if (rule.stage === 'in-transit') return 'transit';
  return rule.stage === 'arrival' ? 'unload' : 'load';
}
