import type { Channel, StateColumn } from '../../model/evidence.js';

/** What a column of a log can be. `time` holds date and time, `date` and `clock` one each. */
export type Meaning = 'time' | 'date' | 'clock' | Channel | StateColumn;

export interface WordList {
  means: Meaning;
  /** Headings or parts of headings, in lower case without accents or punctuation. */
  words: readonly string[];
  /** A heading with one of these is something else. */
  not?: readonly string[];
}

/** Trade words on column headings, by language (BCP 47). A further language is a further list. */
export const HEADING_WORDS: Readonly<Record<string, readonly WordList[]>> = {
  en: [
    {
      means: 'time',
      words: [
        'date time',
        'datetime',
        'date and time',
        'date hour',
        'timestamp',
        'time stamp',
        'local time',
        'utc time',
        'gmt time',
        'time utc',
        'time gmt',
        'logged at',
        'log time',
        'recorded at',
        'sample time',
      ],
    },
    { means: 'date', words: ['date', 'day'], not: ['update', 'due'] },
    {
      means: 'clock',
      words: ['time', 'hour', 'clock'],
      not: ['run', 'hours', 'elapsed', 'total', 'defrost'],
    },
    {
      means: 'set-point',
      words: ['set point', 'setpoint', 'setpt', 'set pt', 'set temp', 'set temperature', 'sp', 'target temp'],
      not: ['alarm', 'humidity'],
    },
    {
      means: 'return-air',
      words: [
        'return air',
        'return',
        'ret air',
        'ret',
        'return temp',
        'ra temp',
        'ra',
        'box air',
        'box temp',
      ],
      not: ['humidity', 'alarm', 'set'],
    },
    {
      means: 'supply-air',
      words: [
        'supply air',
        'supply',
        'discharge air',
        'discharge',
        'delivery air',
        'sup air',
        'disch air',
        'disch',
        'da temp',
        'sa temp',
      ],
      not: ['pressure', 'voltage', 'alarm', 'set'],
    },
    {
      means: 'ambient',
      words: ['ambient', 'ambient air', 'amb', 'outside air', 'outside temp', 'outdoor', 'external temp'],
      not: ['humidity', 'light'],
    },
    {
      means: 'probe',
      words: [
        'probe',
        'pulp',
        'product temp',
        'cargo temp',
        'spare sensor',
        'sensor',
        'logger',
        'temp',
        'temperature',
      ],
      not: ['battery', 'humidity', 'coil', 'engine', 'coolant', 'door'],
    },
    {
      means: 'mode',
      words: [
        'mode',
        'operating mode',
        'op mode',
        'run mode',
        'unit mode',
        'operation',
        'unit status',
        'status',
      ],
      not: ['door', 'alarm', 'power', 'defrost', 'fuel'],
    },
    {
      means: 'defrost',
      words: ['defrost', 'defrosting', 'defrost state'],
      not: ['alarm', 'interval', 'timer'],
    },
    { means: 'door', words: ['door', 'doors', 'door state', 'door status', 'rear door'], not: ['alarm'] },
    {
      means: 'power',
      words: ['power', 'unit on', 'unit power', 'on off', 'unit state', 'engine running', 'running'],
      not: ['voltage', 'battery', 'alarm', 'hours'],
    },
    { means: 'alarm', words: ['alarm', 'alarms', 'alarm code', 'alarm codes', 'fault', 'faults'] },
    { means: 'fuel', words: ['fuel', 'fuel level', 'fuel tank', 'tank level'], not: ['pressure', 'alarm'] },
  ],
};

/** What a cell says when a sensor is broken, missing or out of reach. */
export const FAULT_WORDS: ReadonlySet<string> = new Set([
  '-',
  '--',
  '---',
  '----',
  '*',
  '**',
  '***',
  '****',
  '?',
  'n/a',
  'na',
  'nan',
  'null',
  'none',
  'err',
  'error',
  'fail',
  'failed',
  'fault',
  'open',
  'short',
  'shorted',
  'invalid',
  'missing',
  'no data',
  'nodata',
  'no sensor',
  'off scale',
  'out of range',
  'over',
  'under',
]);
