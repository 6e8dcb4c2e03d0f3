import { type Affine } from '../geometry/index.ts';
import { type Cautions, placeOf } from './cautions.ts';
import { type Length, MM_PER_PX, isFontRelative, lengthInPx, parseLength } from './length.ts';
import { type ArtworkProblem } from './problem.ts';
import { type ViewBox, DEFAULT_ASPECT_RATIO, parseAspectRatio, parseViewBox, viewBoxTransform } from './view-box.ts';
import { type XmlElement, shorten } from './xml.ts';

type Declared = ReadonlyMap<string, string>;

/** A viewport as its content sees it: the transform from content to outside, and the size that per cents refer to. */
export interface Viewport {
  readonly transform: Affine;
  readonly width: number;
  readonly height: number;
}

/**
 * The viewport an `svg` or `symbol` makes in `frame` (coordinates of its parent). Nothing when its view box or frame has
 * no area: its content is not drawn then.
 */
export function viewportOf(element: XmlElement, declared: Declared, frame: ViewBox, cautions: Cautions): Viewport | undefined {
  if (!(frame.width > 0 && frame.height > 0)) return undefined;
  const boxText = declared.get('viewBox');
  const box = boxText === undefined ? undefined : parseViewBox(boxText);
  const ratioText = declared.get('preserveAspectRatio');
  const ratio = ratioText === undefined ? DEFAULT_ASPECT_RATIO : parseAspectRatio(ratioText);
  if (boxText !== undefined && !box) cautions.add('value', element, `viewBox="${boxText}"`);
  if (!ratio) cautions.add('value', element, `preserveAspectRatio="${ratioText ?? ''}"`);
  if (!box) return { transform: [1, 0, 0, 1, frame.x, frame.y], width: frame.width, height: frame.height };
  if (box.width === 0 || box.height === 0) return undefined;
  return { transform: viewBoxTransform(box, frame, ratio ?? DEFAULT_ASPECT_RATIO), width: box.width, height: box.height };
}

/** The page in px, as wide and high as its drawing states or implies. */
export interface Page {
  readonly width: number;
  readonly height: number;
}

export type PageResult = { readonly ok: true; readonly page: Page } | { readonly ok: false; readonly problem: ArtworkProblem };

/** From px, y down, to mm, y up, origin at the page's lower left corner. The y axis is turned here and nowhere else. */
export const pageToMm = ({ height }: Page): Affine => [MM_PER_PX, 0, 0, -MM_PER_PX, 0, MM_PER_PX * height];

/** Where nothing states a size, CSS 2.1 (section 10.3.2) gives a picture 300 by 150 px. */
const UNSIZED = { width: 300, height: 150 };

/** The stated width or height; per cents of a page nobody knows count as not stated. */
function stated(root: XmlElement, declared: Declared, name: 'width' | 'height', cautions: Cautions): Length | undefined {
  const text = declared.get(name);
  if (text === undefined || text.trim() === 'auto') return undefined;
  const length = parseLength(text);
  if (!length) cautions.add('value', root, `${name}="${text}"`);
  else if (isFontRelative(length)) cautions.add('fontUnit', root, `${name}="${text}"`);
  return length?.unit === '%' ? undefined : length;
}

export function readPage(root: XmlElement, declared: Declared, cautions: Cautions, reach: number): PageResult {
  const [width, height] = [stated(root, declared, 'width', cautions), stated(root, declared, 'height', cautions)];
  const box = parseViewBox(declared.get('viewBox') ?? '');
  const page = pageInPx(width, height, box);
  if (!width || !height) cautions.add('noSize', root);
  else if ([width, height].some(({ unit }) => unit === '' || unit === 'px')) cautions.add('pxSize', root);
  const isUsable = [page.width, page.height].every((side) => side > 0 && side * MM_PER_PX <= reach);
  const isEmpty = box !== undefined && !(box.width > 0 && box.height > 0);
  return isUsable && !isEmpty ? { ok: true, page } : { ok: false, problem: badSize(root, declared, reach) };
}

/** A side that is not stated follows from the other one and the view box, or from the view box alone. */
function pageInPx(width: Length | undefined, height: Length | undefined, box: ViewBox | undefined): Page {
  const [w, h] = [width && lengthInPx(width, 0), height && lengthInPx(height, 0)];
  const shape = box ?? UNSIZED;
  if (w !== undefined && h !== undefined) return { width: w, height: h };
  if (w !== undefined) return { width: w, height: box && box.width > 0 ? (w * box.height) / box.width : shape.height };
  if (h !== undefined) return { width: box && box.height > 0 ? (h * box.width) / box.height : shape.width, height: h };
  return { width: shape.width, height: shape.height };
}

function badSize(root: XmlElement, declared: Declared, reach: number): ArtworkProblem {
  const quoted = ['width', 'height', 'viewBox'].flatMap((name) => declared.has(name) ? [`${name}="${declared.get(name) ?? ''}"`] : []);
  return {
    place: placeOf(root), expected: `a page with a width and height above zero and at most ${reach / 1000} m`, found: quoted.map(shorten).join(' '),
    advice: 'Set the size of the page in the drawing program and save it again.',
  };
}
