/** All of the library: the parts that stand behind names of their own, and building, letters and identities. */
export * from './assess.js';
export type { PictureQuality } from './compose/pictures.js';
export * from './former-names.js';
export { type BuildInput, type BuildOptions, type BuildReport, build } from './jobs/build.js';
export type { Sizing } from './jobs/dossier/size.js';
export {
  type IdentityInput,
  type IdentityReport,
  makeNewIdentity,
  type PassphraseStrength,
  renewOwnIdentity,
  type ShownIdentity,
  type Succession,
  showOwnIdentity,
  useGivenIdentity,
} from './jobs/identity.js';
export type { PackedFile } from './jobs/letter-package/files.js';
export type { TypedLetter } from './jobs/letter-package/letter-request.js';
export type { SenderNotes } from './jobs/letter-package/sender-notes.js';
export {
  type LetterPackageInput,
  type LetterPackageReport,
  type PackOptions,
  writeLetterPackage,
} from './jobs/letter-package.js';
export * from './record.js';
export * from './reference.js';
export * from './verify.js';
