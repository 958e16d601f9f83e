/** `lettuce-romaine` as it is said when no better name is known. */
export const commonName = (key: string): string => {
  const words = key.replace(/-/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
};
