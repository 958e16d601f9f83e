import { describe, expect, it } from 'vitest';
import {
  isBlankState,
  isDefrostWord,
  isNoAlarm,
  isOffWord,
} from '../../../../src/core/assess/temperature/state-words.js';
import { operationIn } from '../../../../src/core/model/operation.js';

describe('the words of a log’s states, in its language', () => {
  it.each(['Closed', 'Cerrada', 'FERMÉE', 'no', 'Non', '---', ''])(
    'a door that is "%s" is not open',
    (text) => {
      expect(isBlankState(text)).toBe(true);
    },
  );
  it.each(['Open', 'Abierta', 'Ouverte', '1'])('a door that is "%s" is not closed', (text) => {
    expect(isBlankState(text)).toBe(false);
  });
  it.each(['Defrost', 'En deshielo', 'Dégivrage'])('mode "%s" is a defrost', (text) => {
    expect(isDefrostWord(text)).toBe(true);
  });
  it.each(['Continuous', 'Continuo', 'Marche continue'])('mode "%s" is neither defrost nor off', (text) => {
    expect([isDefrostWord(text), isOffWord(text)]).toEqual([false, false]);
  });
  it.each(['Off', 'Apagado', 'Arrêt'])('power "%s" is off', (text) => {
    expect(isOffWord(text)).toBe(true);
  });
  it.each(['None', 'Ninguna', 'Sin alarmas', 'Aucune alarme', '0'])('alarm "%s" is none', (text) => {
    expect(isNoAlarm(text)).toBe(true);
  });
  it.each(['63', 'High air', 'Avería del sensor'])('alarm "%s" is one', (text) => {
    expect(isNoAlarm(text)).toBe(false);
  });
});

describe('what a column of operation says', () => {
  const TABLE = {
    cooling: [
      ...['Cool', 'COOLING', 'High speed cool', 'Low Speed Cool', 'LS Cool', 'Unit cooling', 'Refrigerating'],
      ...[
        'Pull-down',
        'Enfriando',
        'Enfriamiento',
        'Refrigeración',
        'Refroidissement',
        'Froid',
        'Kühlen',
        'Kühlung',
      ],
    ],
    heating: [
      ...['Heat', 'Heating', 'HS Heat', 'Calentando', 'Calefacción', 'Chauffage', 'Réchauffage', 'Heizen'],
    ],
    idle: [
      ...[
        'Null',
        'NULL',
        'Idle',
        'Standby',
        'Stand-by',
        'Off cycle',
        'Cycle off',
        'Nulo',
        'En espera',
        'Reposo',
      ],
      ...['En veille', 'Neutre', 'Pause', 'Bereit', 'Leerlauf'],
    ],
    defrost: [
      ...[
        'Defrost',
        'DEFROSTING',
        'Unit: defrost',
        'Deshielo',
        'En deshielo',
        'Descongelamiento',
        'Desescarche',
      ],
      ...['Dégivrage', 'En dégivrage', 'Abtauen', 'Abtauung'],
    ],
    off: [
      ...[
        'Off',
        'OFF',
        'Unit off',
        'Power off',
        'Engine off',
        'Shut down',
        'Shutdown',
        'Stopped',
        'Not running',
      ],
      ...['Apagado', 'Equipo apagado', 'Parado', 'Detenido', 'Arrêt', 'Éteint', 'Hors tension', 'Aus'],
    ],
  };
  it.each(Object.entries(TABLE).flatMap(([is, texts]) => texts.map((text) => [text, is] as const)))(
    '"%s" is %s',
    (text, is) => {
      expect(operationIn(text)).toBe(is);
    },
  );
  it.each([
    '',
    '0',
    '1',
    '17',
    'Continuous',
    'Start-Stop',
    'Stop/Start',
    'Arranque y paro',
    'On',
    'TX',
    'OK',
    'Pretrip',
  ])('"%s" is not known to be any', (text) => {
    expect(operationIn(text)).toBeUndefined();
  });
});
