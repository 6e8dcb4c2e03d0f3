import { type Point, type Region } from '../geometry/index.ts';
import { type Outline, type Stroke } from './artwork.ts';
import { printNumber } from './print-number.ts';
import { type PrintPoint, pathData, pointPrinter } from './write-path.ts';

/** How an item is drawn; what is not stated follows from its kind. Colours are names or numbers of CSS, widths in mm. */
export interface ItemStyle {
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly fill?: string;
  /** Lengths of dashes and gaps in turn, mm; drawn through when absent. */
  readonly dash?: readonly number[];
}

interface ItemCommon {
  /** Shown by viewers when the pointer rests on the item. */
  readonly title?: string;
  readonly style?: ItemStyle;
}

/** Something to draw. Millimetres, y up, origin at the page's lower left corner. */
export type DrawingItem =
  | ({ readonly kind: 'stroke'; readonly stroke: Stroke } & ItemCommon)
  | ({ readonly kind: 'outline'; readonly outline: Outline } & ItemCommon)
  | ({ readonly kind: 'region'; readonly region: Region } & ItemCommon)
  | ({ readonly kind: 'circle'; readonly centre: Point; readonly radius: number } & ItemCommon)
  /** Upright text in any plain typeface: `at` is its baseline's left end, `size` the height of its letters' body, mm. */
  | ({ readonly kind: 'text'; readonly at: Point; readonly size: number; readonly text: string } & ItemCommon);

export interface DrawingGroup {
  readonly id: string;
  readonly items: readonly DrawingItem[];
}

export interface DrawingPage {
  /** In mm. */
  readonly size: { readonly width: number; readonly height: number };
  readonly groups: readonly DrawingGroup[];
}

/** Width in mm of lines for which nothing states one: thin, and still seen on paper. */
const THIN = 0.25;

const INK = '#1f2933';
const SHADE = '#cbd2d9';

type Look = Required<Omit<ItemStyle, 'dash'>>;

/** Each kind with its look when no style says otherwise. */
const LOOKS: Readonly<Record<DrawingItem['kind'], Look>> = {
  stroke: { fill: 'none', stroke: INK, strokeWidth: THIN },
  outline: { fill: SHADE, stroke: 'none', strokeWidth: THIN },
  region: { fill: SHADE, stroke: 'none', strokeWidth: THIN },
  circle: { fill: 'none', stroke: INK, strokeWidth: THIN },
  text: { fill: INK, stroke: 'none', strokeWidth: THIN },
};

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };

/** Characters XML 1.0 (section 2.2) does not allow at all, halves of surrogate pairs among them. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text safe inside elements and quoted attributes. What XML cannot hold is replaced by U+FFFD. */
const escapeXml = (text: string): string => text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (c) => ENTITIES[c] ?? c);

function styleOf(item: DrawingItem): Look {
  const width = item.kind === 'stroke' ? item.stroke.width : undefined;
  return { ...LOOKS[item.kind], ...(width === undefined ? {} : { strokeWidth: width }), ...item.style };
}

function paintAttributes(item: DrawingItem): string {
  const { fill, stroke, strokeWidth } = styleOf(item);
  const line = stroke === 'none' ? '' : ` stroke-width="${printNumber(strokeWidth)}" stroke-linecap="round" stroke-linejoin="round"`;
  const dash = item.style?.dash?.length ? ` stroke-dasharray="${item.style.dash.map(printNumber).join(' ')}"` : '';
  return ` fill="${escapeXml(fill)}" stroke="${escapeXml(stroke)}"${line}${dash}`;
}

function loopsData({ loops }: Region, print: PrintPoint): string {
  return loops.filter((loop) => loop.length > 0).map((loop) => `M${loop.map(print).join('L')}Z`).join('');
}

/** Name and geometry of the element that shows an item. */
function shape(item: DrawingItem, print: PrintPoint): string {
  switch (item.kind) {
    case 'stroke':
      return `path d="${pathData(item.stroke.path, print)}"`;
    case 'outline':
      return `path d="${item.outline.paths.map((path) => pathData(path, print)).join('')}" fill-rule="${item.outline.fillRule}"`;
    case 'region':
      return `path d="${loopsData(item.region, print)}" fill-rule="evenodd"`;
    case 'circle': {
      const [cx, cy] = print(item.centre).split(' ');
      return `circle cx="${cx ?? ''}" cy="${cy ?? ''}" r="${printNumber(item.radius)}"`;
    }
    case 'text': {
      const [x, y] = print(item.at).split(' ');
      return `text x="${x ?? ''}" y="${y ?? ''}" font-family="sans-serif" font-size="${printNumber(item.size)}"`;
    }
  }
}

function element(item: DrawingItem, print: PrintPoint): string {
  const opening = `    <${shape(item, print)}${paintAttributes(item)}`;
  const content = (item.title === undefined ? '' : `<title>${escapeXml(item.title)}</title>`) + (item.kind === 'text' ? escapeXml(item.text) : '');
  const [name] = shape(item, print).split(' ');
  return content === '' ? `${opening}/>\n` : `${opening}>${content}</${name ?? ''}>\n`;
}

function group({ id, items }: DrawingGroup, print: PrintPoint): string {
  const opening = `  <g id="${escapeXml(id)}"`;
  return items.length === 0 ? `${opening}/>\n` : `${opening}>\n${items.map((item) => element(item, print)).join('')}  </g>\n`;
}

/**
 * Writes an SVG drawing: page and view box in mm, one group for each one given (empty ones too), y turned by writing the
 * numbers, at most 4 decimals. Reading it again gives the same curves within 0.001 mm. Throws a RangeError on numbers that
 * are not finite.
 */
export function writeDrawing({ size, groups }: DrawingPage): string {
  const [width, height] = [printNumber(size.width), printNumber(size.height)];
  const print = pointPrinter(size.height);
  const page = `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`;
  const content = groups.map((each) => group(each, print)).join('');
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" version="1.1" ${page}>\n${content}</svg>\n`;
}
