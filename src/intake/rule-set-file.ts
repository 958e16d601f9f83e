import type { Sha256 } from '../core/model/evidence.js';
import { type RuleSetFile, ruleSetFile } from '../core/model/rule-set-file.js';
import { readYamlAs } from './yaml.js';

/** One file of rules as read, before what it extends is worked in. */
export interface ParsedRuleSetFile {
  /** Name for messages and for the dossier: `produce.yaml`, or the path as it was named. */
  name: string;
  file: RuleSetFile;
  /** The same as plain data before parsing: what an extension changes. */
  written: Record<string, unknown>;
  text: string;
  sha256: Sha256;
  /** Line of the node at a path, counted from 1. */
  rowOf(path: readonly PropertyKey[]): number;
}

/**
 * Reads one file of rules.
 * Throws DossierError `bad-rule-set`: place of the first problem, all of them in the message.
 */
export function readRuleSetFile(text: string, name: string): ParsedRuleSetFile {
  const { read, written, sha256, rowOf } = readYamlAs(
    ruleSetFile,
    text,
    name,
    'bad-rule-set',
    'rule-set-file',
  );
  return { name, file: read, written: written as Record<string, unknown>, text, sha256, rowOf };
}
