import { celsius } from '../../model/temperature.js';
import type { RuleContext } from './context.js';

/** The bill's temperature that an air temperature is nearest to, and how far it is from it; undefined when the bill is silent. */
export function nearestInstruction(
  context: Pick<RuleContext, 'scope' | 'lines'>,
  air: number,
): { asked: number; kelvin: number } | undefined {
  const lines = context.scope.line === undefined ? context.lines : [context.scope.line];
  const asked = lines.flatMap((line) =>
    line.instruction === undefined ? [] : [celsius(line.instruction.setPoint)],
  );
  return asked
    .map((one) => ({ asked: one, kelvin: Math.abs(air - one) }))
    .reduce<{ asked: number; kelvin: number } | undefined>(
      (best, one) => (best === undefined || one.kelvin < best.kelvin ? one : best),
      undefined,
    );
}
