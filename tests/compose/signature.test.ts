import { describe, expect, it } from 'vitest';
import { textWithin } from './pages.js';
import { FRAMES, framedDossier, lowerHalf, type Rectangle } from './signature-frame.js';

describe('the frame for the signature', () => {
  it.each(FRAMES)(
    'on %s in %s stands on the last page, exactly where it is said',
    async (paper, language, _, words) => {
      const { made, signer } = await framedDossier(paper, language);
      expect(made.signature?.page).toBe(made.pages);
      const rectangle: Rectangle = made.signature?.rectangle ?? [0, 0, 0, 0];
      expect(await textWithin(made.pdf, made.pages, rectangle)).toMatch(words);
      expect(made.signature?.alt).toContain(signer.replace(/^CN=/, ''));
      // Nothing of the page stands in its lower half: what was asked for is the frame and no more.
      expect(await textWithin(made.pdf, made.pages, lowerHalf(rectangle))).not.toMatch(/^(Signature|Firma) /);
    },
  );
});
