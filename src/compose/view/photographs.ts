import geodesic from 'geographiclib-geodesic';
import type { ContentCredentials, SubjectName } from '../../core/model/evidence.js';
import type { Exhibit } from '../../core/model/manifest.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { EvidenceItem } from '../../core/model/state.js';
import { type ExhibitImageBlock, type Fact, plain } from '../../core/words/blocks.js';
import type { PreparedImages } from '../exhibit-images.js';
import type { PreparedPicture } from '../pictures.js';
import { timeBasisText } from './basis.js';
import { placeText, type View } from './context.js';
import { flagLines, titleOf } from './summary.js';

type Filed = Extract<EvidenceItem, { kind: 'photo' | 'document' }>;

/** Subjects of key photographs, which are shown large. */
const LARGE = new Set<SubjectName>(['damage', 'load-at-opening']);

export const imageAsset = (sha256: string, page?: number): string =>
  `plate-${sha256.slice(0, 32)}${page === undefined ? '' : `-${page}`}.jpg`;

/** The image block of a picture or document; undefined for what is only listed. */
export function exhibitImageBlock(
  view: View,
  exhibit: Exhibit,
  item: EvidenceItem,
  prepared: PreparedImages,
  seenIn: (number: number) => ExhibitImageBlock['seenIn'],
): ExhibitImageBlock | undefined {
  if (item.withheld !== undefined || (item.kind !== 'photo' && item.kind !== 'document')) return undefined;
  const paper = prepared.documents.get(item.file.sha256);
  const picture = prepared.pictures.get(item.file.sha256);
  if (picture === undefined && (paper === undefined || paper.is === 'unreadable')) return undefined;
  const { labels } = view;
  const title = titleOf(view, item);
  const caption = item.caption === undefined ? undefined : view.remark('caption', item.caption);
  const alt = [
    `${labels('document.exhibit')} ${exhibit.exhibit}: ${title}`,
    caption,
    view.format.eventTime(item.time),
    placeText(view, item),
  ]
    .filter((part) => part !== undefined && part !== '')
    .join('; ');
  const common = {
    is: 'plate' as const,
    number: exhibit.exhibit,
    title,
    caption: caption === undefined ? [] : plain(caption),
    facts: facts(view, exhibit, item, pagesShown(view, paper)),
    flags: [
      ...((item.blackOut ?? []).length === 0 ? [] : [labels('plate.blacked-out')]),
      ...flagLines(view, item),
    ],
    sha256: item.file.sha256,
    seenIn: seenIn(exhibit.exhibit),
  };
  if (paper?.is === 'pages')
    return {
      ...common,
      size: 'paper',
      pictures: paper.pages.flatMap((page, i) =>
        shown(page, imageAsset(item.file.sha256, i + 1), `${alt}; ${labels('plate.page')} ${i + 1}`),
      ),
    };
  if (paper?.is === 'text') return { ...common, size: 'paper', pictures: [], words: paper.text };
  const trouble = troubleOf(view, picture);
  return {
    ...common,
    size: item.subject !== undefined && LARGE.has(item.subject.is) ? 'large' : 'small',
    pictures: shown(picture, imageAsset(item.file.sha256), alt),
    ...omitUndefined({ trouble }),
  };
}

function shown(
  picture: PreparedPicture | undefined,
  asset: string,
  alt: string,
): ExhibitImageBlock['pictures'] {
  return picture?.is === 'picture' ? [{ asset, width: picture.width, height: picture.height, alt }] : [];
}

function troubleOf(view: View, picture: PreparedPicture | undefined): string | undefined {
  const { labels } = view;
  if (picture?.is === 'picture') return picture.damaged ? labels('plate.damaged') : undefined;
  return `${labels('plate.unreadable')} ${view.remark('picture', picture?.why ?? '')}`.trim();
}

function pagesShown(
  { labels }: View,
  paper: ReturnType<PreparedImages['documents']['get']>,
): string | undefined {
  if (paper?.is === 'pages')
    return labels('plate.first-of').replace('N', String(paper.pages.length)).replace('ALL', String(paper.of));
  return paper?.is === 'text' && paper.cut ? labels('plate.beginning') : undefined;
}

function facts(view: View, exhibit: Exhibit, item: Filed, pages: string | undefined): Fact[] {
  const { labels, format } = view;
  const camera =
    item.kind === 'photo'
      ? [item.camera?.make, item.camera?.model].filter((part) => part !== undefined).join(' ')
      : '';
  const fact = (label: string, value: string | undefined): Fact[] =>
    value === undefined || value === '' ? [] : [{ label: labels(label), value: plain(value) }];
  return [
    { label: labels('plate.time'), value: plain(format.eventTime(item.time)) },
    ...fact('plate.basis', timeBasisText(view, item)),
    ...fact(
      'plate.place',
      [placeText(view, item), ...position(view, item)].filter((part) => part !== '').join('; '),
    ),
    ...fact('plate.line', item.line === undefined ? undefined : view.names.line(item.line)),
    ...fact('plate.by', item.by),
    ...fact('plate.camera', camera),
    ...fact('plate.credentials', item.kind === 'photo' ? credentialsText(view, item.credentials) : undefined),
    ...fact('plate.pages', pages),
    ...fact('plate.file', `${item.file.name}, ${format.bytes(item.file.bytes)}`),
    ...fact(
      'plate.inside',
      exhibit.attachedAs === undefined
        ? labels('plate.not-attached')
        : `${labels('plate.attached')} ${exhibit.attachedAs}`,
    ),
  ];
}

/** What was checked, and apart from it what is only claimed. */
function credentialsText({ labels }: View, credentials: ContentCredentials | undefined): string | undefined {
  if (credentials === undefined) return undefined;
  const { state, signer, claims } = credentials;
  const signed =
    signer === undefined
      ? []
      : [
          ...(signer.name === undefined ? [] : [`${labels('credentials.signed-by')} ${signer.name}`]),
          labels(signer.trusted ? 'credentials.trusted' : 'credentials.not-vouched-for'),
        ];
  const claimed = [claims?.madeWith, ...(claims?.actions ?? []).slice(0, 6)].filter(
    (one) => one !== undefined,
  );
  return [
    [labels(`credentials.${state}`), ...signed].join(', '),
    ...(claimed.length === 0 ? [] : [`${labels('credentials.claims')} ${claimed.join(', ')}`]),
  ].join('; ');
}

/**
 * Position of the camera, and its distance along the WGS 84 ellipsoid from the stop (Karney 2013, by
 * GeographicLib).
 */
function position(view: View, item: Filed): string[] {
  const gps = item.place?.gps;
  if (gps === undefined) return [];
  const { format, labels, names } = view;
  const stop = view.input.state.delivery.stops.find(({ id }) => id === item.place?.stop);
  const words = `${gps.latitude.toFixed(5)}, ${gps.longitude.toFixed(5)}`;
  if (stop?.at === undefined) return [words];
  const metres = geodesic.Geodesic.WGS84.Inverse(gps.latitude, gps.longitude, ...stop.at).s12;
  if (metres === undefined) return [words];
  return [
    `${words}, ${format.distance(metres)} ${labels('plate.from').replace('STOP', () => names.stop(stop.id))}`,
  ];
}
