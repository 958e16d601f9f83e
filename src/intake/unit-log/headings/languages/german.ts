import type { WordList } from '../word-list.js';

export const GERMAN: readonly WordList[] = [
  {
    means: 'time',
    words: ['datum uhrzeit', 'datum zeit', 'zeitstempel', 'zeitpunkt', 'messzeit', 'messzeitpunkt'],
  },
  { means: 'date', words: ['datum', 'tag'] },
  { means: 'clock', words: ['uhrzeit', 'zeit', 'stunde'], not: ['laufzeit', 'betriebsstunden', 'intervall'] },
  {
    means: 'set-point',
    words: ['sollwert', 'solltemperatur', 'soll', 'temperatur soll'],
    not: ['alarm', 'feuchte'],
  },
  {
    means: 'return-air',
    words: ['ruckluft', 'rucklufttemperatur', 'umluft', 'umlufttemperatur', 'abluft', 'ablufttemperatur'],
    not: ['feuchte', 'alarm', 'sollwert'],
  },
  {
    means: 'supply-air',
    words: ['zuluft', 'zulufttemperatur', 'ausblas', 'ausblasluft', 'ausblastemperatur'],
    not: ['druck', 'spannung', 'alarm', 'sollwert'],
  },
  {
    means: 'ambient',
    words: ['umgebung', 'umgebungstemperatur', 'aussen', 'aussentemperatur', 'aussenluft'],
    not: ['feuchte', 'druck', 'licht'],
  },
  {
    means: 'probe',
    words: [
      'fuhler',
      'messfuhler',
      'kerntemperatur',
      'produkttemperatur',
      'ladungstemperatur',
      'einstichfuhler',
    ],
    weak: ['temperatur', 'messwert', 'wert', 'kanal'],
    not: [
      'batterie',
      'feuchte',
      'motor',
      'tur',
      'druck',
      'name',
      'seriennummer',
      'wasser',
      'kompressor',
      'verdampfer',
    ],
  },
  { means: 'mode', words: ['betriebsart', 'betriebsmodus', 'modus'], not: ['tur', 'alarm'] },
  { means: 'operation', words: ['betriebszustand', 'zustand', 'gerate status'], not: ['tur', 'alarm'] },
  { means: 'defrost', words: ['abtauung', 'abtauen'], not: ['alarm', 'temperatur'] },
  { means: 'door', words: ['tur', 'turen', 'turkontakt'], not: ['alarm'] },
  { means: 'power', words: ['ein aus', 'gerat ein', 'betrieb'], not: ['spannung', 'batterie', 'alarm'] },
  { means: 'alarm', words: ['alarmmeldung', 'alarmcode', 'storung', 'storungen', 'fehler', 'fehlercode'] },
  { means: 'fuel', words: ['kraftstoff', 'tankinhalt', 'tankstand'], not: ['druck', 'alarm'] },
];
