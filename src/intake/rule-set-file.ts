import type { Sha256 } from '../core/model/evidence.js';
import { type RuleSetFile, ruleSetFile } from '../core/model/rule-set-file.js';
import { readYamlAs } from './yaml.js';

/** One rule file as parsed, before extended files are merged. */
export interface ParsedRuleSetFile {
  /** Name for messages and for the dossier: `produce.yaml`, or the path as given. */
  name: string;
  file: RuleSetFile;
  /** The rules as plain data before parsing, for extensions to change. */
  written: Record<string, unknown>;
  text: string;
  sha256: Sha256;
  /** Line of the node at a path, counted from 1. */
  rowOf(path: readonly PropertyKey[]): number;
}

/** Parses one rule file. Throws DossierError `bad-rule-set` at the first problem, with all of them in the message. */
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
