import { describe, expect, it } from 'vitest';
import {
  isBlankState,
  isDefrostWord,
  isNoAlarm,
  isOffWord,
} from '../../../../src/core/assess/temperature/state-words.js';

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
