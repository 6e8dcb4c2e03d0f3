import { type Affine, identity, multiply, translation } from '../geometry/index.ts';
import { lengthInPx, parseLength } from './length.ts';
import { type Reading, type Surroundings, looksLikeNoNumber, refuseCoordinates } from './reading.ts';
import { parseTransformList } from './transform-list.ts';
import { type XmlElement } from './xml.ts';

type Declared = ReadonlyMap<string, string>;

const KEYWORDS: Readonly<Record<string, string>> = { left: '0%', top: '0%', center: '50%', right: '100%', bottom: '100%' };

/** `transform-origin` in user units (CSS Transforms 1, section 6), per cents of the viewport; nothing when malformed. */
function parseOrigin(text: string, { width, height }: Surroundings): { readonly x: number; readonly y: number } | undefined {
  const words = text.trim().toLowerCase().split(/\s+/);
  if (words.length > 3) return undefined;
  const [first = '', second = 'center'] = words;
  const swapped = /^(?:top|bottom)$/.test(first) || /^(?:left|right)$/.test(second);
  const [x, y] = (swapped ? [second, first] : [first, second]).map((word) => parseLength(KEYWORDS[word] ?? word));
  return x && y ? { x: lengthInPx(x, width), y: lengthInPx(y, height) } : undefined;
}

const BOXES_OF_THE_SHAPE = /^(?:fill-box|stroke-box|content-box)$/i;

/** The element's own transform; what cannot be read leaves a caution and moves nothing. */
export function elementTransform(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings): Affine {
  const text = declared.get('transform') ?? '';
  const own = parseTransformList(text);
  for (const name of ['translate', 'rotate', 'scale']) {
    if ((declared.get(name) ?? 'none') !== 'none') reading.cautions.add('transform', element, `${name}: ${declared.get(name) ?? ''}`);
  }
  if (own && !own.every(Number.isFinite)) refuseCoordinates(reading, element, `transform="${text}"`);
  else if (!own && /\b(?:nan|inf)/i.test(text)) refuseCoordinates(reading, element, `transform="${text}"`);
  else if (!own) reading.cautions.add('transform', element, text);
  return own && own !== identity ? aboutOrigin(reading, element, declared, around, own) : identity;
}

function aboutOrigin(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings, own: Affine): Affine {
  const box = declared.get('transform-box') ?? '';
  if (BOXES_OF_THE_SHAPE.test(box.trim())) reading.cautions.add('transform', element, `transform-box: ${box}`);
  const text = declared.get('transform-origin');
  if (text === undefined) return own;
  const origin = parseOrigin(text, around);
  if (looksLikeNoNumber(text)) refuseCoordinates(reading, element, `transform-origin="${text}"`);
  else if (!origin) reading.cautions.add('transform', element, `transform-origin: ${text}`);
  if (!origin) return own;
  return multiply(translation(origin.x, origin.y), multiply(own, translation(-origin.x, -origin.y)));
}
