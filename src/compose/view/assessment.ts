import type { Section } from '../../core/words/blocks.js';
import { positionSection } from './claim.js';
import type { View } from './context.js';
import type { DrawnSection } from './drawn-section.js';
import { findingsSection } from './findings.js';
import { goodDeliverySection } from './good-delivery.js';
import { marginSection } from './margins.js';
import { methodSection, verifySection } from './method.js';
import { missingSection } from './missing.js';
import { nextSection } from './next-steps.js';
import { productSection } from './product.js';
import { differenceSection } from './set-points.js';

/** The sections of an assessment, with their drawings. */
export function assessmentSections(view: View): {
  sections: Section[];
  drawings: ReadonlyMap<string, string>;
} {
  const product: DrawnSection | undefined = productSection(view);
  const sections = [
    nextSection(view),
    findingsSection(view),
    positionSection(view),
    differenceSection(view),
    product?.section,
    marginSection(view),
    ...goodDeliverySection(view),
    missingSection(view),
    methodSection(view),
    verifySection(view),
  ];
  return {
    sections: sections.filter((section) => section !== undefined),
    drawings: product?.drawings ?? new Map(),
  };
}
