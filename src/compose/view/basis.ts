import type { EvidenceItem } from '../../core/model/state.js';
import type { View } from './context.js';

/** The source of a time, its uncertainty, and its correction. */
export function timeBasisText(view: View, { time }: EvidenceItem): string {
  const { labels, format } = view;
  if (time.is !== 'known') return view.remark('no-time', time.why);
  return [
    labels(`basis.${time.basis}`),
    ...(time.uncertaintySeconds > 0
      ? [`${labels('time.plus-minus')} ${format.duration(time.uncertaintySeconds)}`]
      : []),
    ...(time.correction === undefined
      ? []
      : [
          `${labels('time.corrected')} ${time.correction.addedSeconds < 0 ? '−' : '+'}${format.duration(time.correction.addedSeconds)}` +
            ` (${labels('column.entry').toLowerCase()} ${time.correction.comparedAt}${time.stated === undefined ? '' : `; ${labels('time.stated')} ${time.stated}`})`,
        ]),
  ].join(', ');
}
