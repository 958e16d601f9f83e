import { celsius } from '../../model/temperature.js';
import type { RuleContext } from './context.js';

/**
 * The instructed temperature nearest to an air temperature, and the distance between them; undefined without an
 * instruction.
 */
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
