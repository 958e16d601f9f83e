/** Attributes of an element; numbers are written with two decimals, so that bytes do not depend on float noise. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One ink in steps of grey, and one colour with a meaning: out of range. */
export const ink = {
  full: '#1d2733',
  soft: '#5a6673',
  line: '#aab2bb',
  hair: '#d9dde2',
  tint: '#eef0f3',
  alert: '#b23a12',
  alertTint: '#f6ddd3',
  paper: '#ffffff',
} as const;

const FONT = 'Source Sans 3';
/** Drawings are 500 units wide and printed at the text's width: on A4, the narrower format, this is 7 points. */
export const SMALL = 7.2;

export const escapeXml = (value: string): string =>
  value.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);

/** One element with its children, as text. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) =>
        ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(String(value))}"`,
    )
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}

const coordinate = (value: number): string => String(Math.round(value * 100) / 100);

export interface LabelOptions {
  size?: number;
  anchor?: 'start' | 'middle' | 'end';
  fill?: string;
  weight?: number;
  rotate?: number;
}

/** Text that stays text in the PDF, so that it can be searched. */
export function label(x: number, y: number, words: string, options: LabelOptions = {}): string {
  const { size = 8, anchor = 'start', fill = ink.full, weight = 400, rotate } = options;
  return element(
    'text',
    {
      x,
      y,
      'font-family': FONT,
      'font-size': size,
      'font-weight': weight,
      'text-anchor': anchor,
      fill,
      transform: rotate === undefined ? undefined : `rotate(${rotate} ${coordinate(x)} ${coordinate(y)})`,
    },
    escapeXml(words),
  );
}

export const line = (x1: number, y1: number, x2: number, y2: number, more: Attributes = {}): string =>
  element('line', { x1, y1, x2, y2, stroke: ink.full, 'stroke-width': 0.6, ...more });

export const box = (x: number, y: number, width: number, height: number, more: Attributes = {}): string =>
  element('rect', { x, y, width: Math.max(width, 0), height: Math.max(height, 0), ...more });

export function svg(width: number, height: number, ...children: readonly string[]): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width,
      height,
      viewBox: `0 0 ${coordinate(width)} ${coordinate(height)}`,
    },
    ...children,
  );
}

/** Estimated width of a text, in units of its size; rather too wide than too narrow. */
export const widthOf = (words: string, size: number): number => [...words].length * size * 0.52;
