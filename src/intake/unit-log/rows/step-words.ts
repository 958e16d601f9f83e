import type { ClockStep } from '../../../core/model/unit-log.js';

export const toTheSecond = (at: number) => `${new Date(at).toISOString().slice(0, 19)}Z`;

/** A step of a log's clock as one sentence: how much, where, what is left out for it, and what to do. */
export function stepInWords({ from, to, seconds, uncertaintySeconds, hiddenRows }: ClockStep): string {
  const way = seconds < 0 ? 'back' : 'forward';
  const size = `${formatSpan(Math.abs(seconds))}, give or take ${formatSpan(uncertaintySeconds)}`;
  const hidden =
    hiddenRows === 0
      ? ''
      : `; ${hiddenRows.toLocaleString('en-US')} rows with times of rows on its other side are left out`;
  return `the clock of the log was put ${way} by ${size}: from ${toTheSecond(from)} it goes to ${toTheSecond(to)} and runs on from there. Nothing is corrected${hidden}; say which part is wrong with dossier record clock-step`;
}

/** `2 h`, `1 h 55 min`, `5 min 30 s`. */
export function formatSpan(seconds: number): string {
  const whole = Math.round(seconds);
  const parts = [
    [Math.floor(whole / 3600), 'h'],
    [Math.floor((whole % 3600) / 60), 'min'],
    [whole % 60, 's'],
  ] as const;
  const told = parts.filter(([n]) => n > 0).map(([n, unit]) => `${n} ${unit}`);
  return told.length === 0 ? '0 s' : told.join(' ');
}
