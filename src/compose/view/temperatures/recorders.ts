import type {
  RecorderComparison,
  RecorderIdentity,
  SeenClockStep,
  TemperatureResult,
} from '../../../core/model/results.js';
import { type Block, plain, text } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';
import { tableOf } from '../tables.js';

/** The recorders of a delivery: whose they are, where they lay, and how far clocks and values are apart. */
export function recorderBlocks(view: View): Block[] {
  const { recorders } = view.input.assessment;
  if (recorders === undefined) return [];
  const { labels, format } = view;
  const { identities, comparisons } = recorders;
  const limits = [...new Set(comparisons.map((one) => format.difference(one.difference.limitKelvin)))];
  const or = (said: string | undefined) => said ?? labels('recorder.not-on-record');
  return [
    { is: 'heading', level: 2, text: labels('sub.recorders') },
    tableOf(view, identities, [
      ['recorder', 2, ({ instrument }) => labels(`recorder.${instrument}`)],
      ['serial', 2, ({ serial }) => or(serial)],
      [
        'owner',
        2,
        ({ owner }) => or(owner === undefined ? undefined : (labels.find(`word.${owner}`) ?? owner)),
      ],
      ['lay', 2, (one) => placeOf(view, one)],
      ['exhibit', 1, ({ evidence }) => exhibitLinks(view, evidence)],
    ]),
    ...(comparisons.length === 0
      ? []
      : [
          {
            is: 'paragraph' as const,
            of: plain(labels('recorder.limits').replace('LIMIT', limits.join('; '))),
          },
          tableOf(view, comparisons, [
            [
              'sensors',
              3.4,
              ({ difference: { first, second } }) => [
                text(`${labels(`channel.${first.channel}`)} `),
                ...exhibitLinks(view, [first.log]),
                text(` − ${labels(`channel.${second.channel}`).toLowerCase()} `),
                ...exhibitLinks(view, [second.log]),
              ],
            ],
            ['clock', 2.4, (one) => clockWords(view, one)],
            ['mean', 1.6, ({ difference }) => format.signed(difference.mean), 'right'],
            [
              'apart-share',
              1,
              ({ difference }) =>
                difference.knownSeconds === 0
                  ? '–'
                  : format.share(difference.apartSeconds / difference.knownSeconds),
              'right',
            ],
            [
              'agreement',
              1.6,
              ({ verdict }) => {
                const said = labels(`recorder.${verdict}`);
                return verdict === 'disagree' ? { is: 'alert', of: plain(said) } : said;
              },
            ],
          ]),
        ]),
  ];
}

function placeOf({ labels }: View, { place, instrument }: RecorderIdentity): string {
  if (place !== undefined) return labels.find(`position.${place}`) ?? place;
  return labels(instrument === 'unit' ? 'recorder.unit' : 'recorder.not-on-record');
}

function clockWords({ labels, format }: View, { clock, moved }: RecorderComparison): string {
  if (clock === undefined) return labels('recorder.clock-unknown');
  const within = format.duration(clock.uncertaintySeconds);
  if (!moved) return labels('recorder.clock-same').replace('WITHIN', within);
  return labels(clock.seconds > 0 ? 'recorder.clock-slow' : 'recorder.clock-fast')
    .replace('SIZE', format.duration(Math.abs(clock.seconds)))
    .replace('WITHIN', within);
}

/** Where the clock of a log was set and nobody said which part is wrong. */
export function clockStepBlocks(view: View, { log, clockSteps = [] }: TemperatureResult): Block[] {
  const seen = (view.input.assessment.recorders?.comparisons ?? []).flatMap((one) =>
    one.clockSteps.filter((step) => step.log === log),
  );
  const told = (step: Omit<SeenClockStep, 'log'>, where: string): Block => {
    const { labels, format, startZone } = view;
    const words = labels('recorder.step')
      .replace('AT', format.time(step.at, startZone))
      .replace('WAY', labels(step.seconds > 0 ? 'recorder.forward' : 'recorder.back'))
      .replace('SIZE', format.duration(Math.abs(step.seconds)))
      .replace('WITHIN', format.duration(step.uncertaintySeconds))
      .replace('WHERE', where);
    return { is: 'paragraph', of: [{ is: 'strong', of: plain(words) }] };
  };
  const byRows = clockSteps.map(({ from, row, ...step }) =>
    told({ at: from, ...step }, view.labels('recorder.step-row').replace('ROW', String(row))),
  );
  const byCurve = seen.filter((step, i) => {
    const isFirst = seen.findIndex(({ at }) => at === step.at) === i;
    return isFirst && !clockSteps.some(({ from }) => from === step.at);
  });
  return [...byRows, ...byCurve.map((step) => told(step, view.labels('recorder.step-seen')))];
}
