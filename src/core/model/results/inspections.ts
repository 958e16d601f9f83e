/** What inspections found, and how that compares with what a good delivery may contain. */
import type { DefectNature, EvidenceId } from '../evidence.js';
import type { Zone } from '../time.js';

/** A percentage, or the bounds between which it is. */
export interface PercentRange {
  low: number;
  high: number;
}

/** A text on what usually causes a defect, quoted; never a verdict. */
export interface DefectCauseText {
  cause: 'freezing' | 'chilling' | 'warm' | 'ethylene' | 'carbon-dioxide' | 'drying' | 'field' | 'handling';
  name: string;
  address: string;
  quote: string;
}

/** One defect of a lot, as stated and as it counts. */
export interface InspectionDefect {
  /** What the certificate calls it. */
  name: string;
  percent: number;
  serious?: number;
  nature: DefectNature | 'not-known';
  /** What says so: the certificate, the regulation, a list of the trade, or common practice. */
  natureBy?: 'certificate' | '46.44' | 'trade' | 'practice';
  decay: boolean;
  causes: DefectCauseText[];
  evidence: EvidenceId;
}

/** One percentage held against what is allowed. */
export interface GoodDeliveryAnswer {
  of: 'damage' | 'serious' | 'decay';
  found: PercentRange;
  limit: PercentRange;
  answer: 'within' | 'exceeds' | 'undecided';
}

/** A lot held against the percentages of the contract, or of 7 CFR 46.44(a) for lettuce. */
export type GoodDelivery =
  | {
      is: 'compared';
      /** `agreed`: percentages for the destination; the others: 46.44(a)(1), (2) and (3). */
      rule: 'agreed' | 'grade' | 'no-grade' | 'specified';
      paragraph: '46.44(a)(5)' | '46.44(a)(1)' | '46.44(a)(2)' | '46.44(a)(3)';
      /** The one defect that the contract specifies; absent: all condition defects together. */
      defect?: string;
      /** No trade term is on record: the comparison holds if the goods were sold f.o.b. */
      ifFob: boolean;
      answers: GoodDeliveryAnswer[];
      answer: GoodDeliveryAnswer['answer'];
    }
  | {
      is: 'not-compared';
      why:
        | 'at-origin'
        | 'no-line'
        | 'no-defects'
        | 'other-goods'
        | 'other-lettuce'
        | 'delivered-sale'
        | 'acceptance-final'
        | 'inferior-quality'
        | 'tolerance-not-stated';
    };

/** What a reader must know of an inspection, with the evidence that it is about. */
export interface InspectionRemark {
  is:
    | 'before-arrival'
    | 'after-disposal'
    | 'total-differs'
    | 'nature-not-known'
    | 'serious-not-stated'
    | 'same-defect-differs';
  evidence: EvidenceId[];
  /** Percent that the defects come to, where the certificate's total is another. */
  percent?: number;
}

/** What one inspection states of one lot; rows of one certificate and lot are one. */
export interface InspectionResult {
  lot: string;
  line?: string;
  stop?: string;
  side?: 'load' | 'unload';
  certificate?: string;
  appeal?: true;
  evidence: EvidenceId[];
  documents: EvidenceId[];
  at?: number;
  zone?: Zone;
  defects: InspectionDefect[];
  /** Damage by condition defects, serious damage and decay of it, and damage by permanent defects. */
  totals: { condition: PercentRange; serious: PercentRange; decay: PercentRange; permanent: PercentRange };
  /** Seconds from departure to arrival, from the planned arrival to it, and from it to the inspection. */
  transitSeconds?: number;
  lateSeconds?: number;
  afterArrivalSeconds?: number;
  goodDelivery: GoodDelivery;
  remarks: InspectionRemark[];
}
