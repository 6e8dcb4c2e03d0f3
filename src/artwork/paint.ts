import { type Inherited } from './cascade.ts';

/** Whether a shape is painted inside and along its outline, as far as cutting asks. */
export interface Paint {
  readonly fill: boolean;
  /** False when the fill is only the default black that nobody chose. */
  readonly fillStated: boolean;
  readonly stroke: boolean;
  /** A gradient or pattern is among the paints. */
  readonly server: boolean;
}

const CLEAR_FUNCTION = /^(?:rgb|hsl)a?\([^)]*[,/]\s*(?:0+(?:\.0*)?|\.0+)%?\s*\)$/i;
const CLEAR_HEX = /^#(?:[0-9a-f]{3}0|[0-9a-f]{6}00)$/i;

/** A colour of alpha zero: `transparent`, `#rgb0`, `#rrggbb00` or a colour function with four parts. */
function isClear(colour: string): boolean {
  if (colour.toLowerCase() === 'transparent' || CLEAR_HEX.test(colour)) return true;
  const parts = colour.includes('/') ? 4 : colour.split(',').length;
  return parts === 4 && CLEAR_FUNCTION.test(colour);
}

function isVisible(paint: string, color: string): boolean {
  if (paint.toLowerCase() === 'none') return false;
  return !isClear(paint.toLowerCase() === 'currentcolor' ? color : paint);
}

/** Zero of a number or percentage; anything else, readable or not, shows. */
export const isZero = (opacity: string | undefined): boolean => opacity !== undefined && /^[+-]?(?:0+(?:\.0*)?|\.0+)%?$/.test(opacity);

/** SVG 2, section 13: the fill is black and the stroke none unless stated. */
export function paintOf(style: Inherited): Paint {
  const color = style.color ?? 'black';
  const fill = isVisible(style.fill ?? 'black', color) && !isZero(style['fill-opacity']);
  const stroke = isVisible(style.stroke ?? 'none', color) && !isZero(style['stroke-opacity']);
  const isServer = (paint: string | undefined) => /^url\(/i.test(paint ?? '');
  const server = (fill && isServer(style.fill)) || (stroke && isServer(style.stroke));
  return { fill, fillStated: style.fill !== undefined, stroke, server };
}
