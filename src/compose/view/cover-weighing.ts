import type { CoverLine, CoverWeighing } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { coverFindings } from './cover-lines.js';
import { findingLine } from './findings.js';
import { heaviestGaps, missingCounts, missingLine } from './missing.js';

/** Most unmet requirements on the first page. */
const MOST_MISSING = 4;

/** The heaviest findings and unmet requirements, for the first page of an assessment. */
export function coverWeighing(view: View): CoverWeighing {
  const { labels, words } = view;
  const { findings } = view.input.assessment;
  const shown = coverFindings(findings, view.names, labels('cover.and'));
  return {
    linesTitle: labels('cover.lines'),
    lines: shown.map(
      ({ finding }): CoverLine => ({
        weighs: finding.weighs,
        mark: labels(`cover.${finding.weighs}`),
        of: findingLine(view, finding),
      }),
    ),
    more:
      shown.length === 0
        ? words.line('cover-none')
        : words.line('cover-more', {
            more: findings.length - shown.reduce((sum, one) => sum + one.standsFor, 0),
            total: findings.length,
          }),
    missingTitle: labels('cover.missing'),
    missing: words.line('cover-missing', { ...missingCounts(view) }),
    missingLines: heaviestGaps(view, MOST_MISSING).map((gap) => missingLine(view, gap)),
  };
}
