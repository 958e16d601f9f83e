import { describe, expect, it } from 'vitest';
import {
  saysDefrost,
  saysNoAlarm,
  saysNothing,
  saysOff,
} from '../../../../src/core/assess/temperature/state-words.js';

describe('the words of a log’s states, in its language', () => {
  it.each(['Closed', 'Cerrada', 'FERMÉE', 'no', 'Non', '---', ''])(
    'a door that is "%s" is not open',
    (text) => {
      expect(saysNothing(text)).toBe(true);
    },
  );
  it.each(['Open', 'Abierta', 'Ouverte', '1'])('a door that is "%s" is not closed', (text) => {
    expect(saysNothing(text)).toBe(false);
  });
  it.each(['Defrost', 'En deshielo', 'Dégivrage'])('mode "%s" is a defrost', (text) => {
    expect(saysDefrost(text)).toBe(true);
  });
  it.each(['Continuous', 'Continuo', 'Marche continue'])('mode "%s" is neither defrost nor off', (text) => {
    expect([saysDefrost(text), saysOff(text)]).toEqual([false, false]);
  });
  it.each(['Off', 'Apagado', 'Arrêt'])('power "%s" is off', (text) => {
    expect(saysOff(text)).toBe(true);
  });
  it.each(['None', 'Ninguna', 'Sin alarmas', 'Aucune alarme', '0'])('alarm "%s" is none', (text) => {
    expect(saysNoAlarm(text)).toBe(true);
  });
  it.each(['63', 'High air', 'Avería del sensor'])('alarm "%s" is one', (text) => {
    expect(saysNoAlarm(text)).toBe(false);
  });
});
