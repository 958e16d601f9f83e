import { milliseconds } from '../../core/model/time.js';
import type { Section } from '../../core/words/blocks.js';
import type { View } from './context.js';

export function methodSection(view: View): Section {
  const { ruleSet, at } = view.input.assessment;
  return {
    id: 'method',
    title: view.labels('section.method'),
    blocks: view.words.blocks('sections/method', {
      assessment: view.volume === 'assessment',
      title: ruleSet.title,
      name: ruleSet.name,
      version: ruleSet.version,
      sha256: ruleSet.sha256,
      at: { is: 'time', at: milliseconds(at), zone: view.startZone },
      tool: view.input.tool.name,
      version2: view.input.tool.version,
    }),
  };
}

export function verifySection(view: View): Section {
  return {
    id: 'verify',
    title: view.labels('section.verify'),
    blocks: view.words.blocks('sections/verify', {
      certificate: view.input.signer.certificateSha256,
      root: view.input.fingerprint.root,
    }),
  };
}
