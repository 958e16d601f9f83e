/**
 * The time of a GeneralizedTime with seconds, in UTC, and a fraction at will (X.690 §11.7); undefined when it is written
 * otherwise, or there is no such time. Engines differ in what they make of 30 February.
 */
export function parseGeneralizedTime(text: string): Date | undefined {
  const match = /^(\d{4})(\d{2})(\d{2})(\d{2})(\d{2})(\d{2})(?:\.(\d{1,9}))?Z$/.exec(text);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second, fraction = ''] = match;
  const written = `${year}-${month}-${day}T${hour}:${minute}:${second}.${fraction.slice(0, 3).padEnd(3, '0')}Z`;
  const time = new Date(written);
  return !Number.isNaN(time.getTime()) && time.toISOString() === written ? time : undefined;
}
