import { composeDossier } from '../../src/compose/compose.js';
import { sampleInput } from './sample.js';

/** What the frame for the signature says on each paper, and how high the paper is, in points. */
export const FRAMES = [
  [
    'Letter',
    'en',
    792,
    /^Signature over the whole file Signer .* Certificate SHA-256 [0-9a-f]{16} … .* UTC\).* no changes allowed.* told you by another way\.$/,
  ],
  [
    'A4',
    'es',
    842,
    /^Firma sobre todo el archivo Firmante .* SHA-256 del certificado [0-9a-f]{16} … .* UTC\).* ningún cambio.* comunicó por otra vía\.$/,
  ],
] as const;

/** Left, bottom, right and top in points, from the lower left corner of the page. */
export type Rectangle = readonly [left: number, bottom: number, right: number, top: number];

export const lowerHalf = ([left, bottom, right, top]: Rectangle): Rectangle => [
  left,
  bottom,
  right,
  (bottom + top) / 2,
];

/** A dossier without evidence, and who is to sign it. */
export async function framedDossier(paper: 'Letter' | 'A4', language: 'en' | 'es') {
  const input = await sampleInput({ change: () => [] });
  const { delivery } = input.state;
  const state = { ...input.state, delivery: { ...delivery, show: { ...delivery.show, paper, language } } };
  return { made: await composeDossier({ ...input, state }), signer: input.signer.name };
}
