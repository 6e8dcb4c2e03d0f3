/**
 * The shape of a port's word tells what kind of thing it carries, so that nobody has to learn a code of colours:
 * - `drawn` (square corners): geometry that lies on the sheet;
 * - `made` (corner cut off): what is taken in hand or leaves the shop, such as cutters, sheets, programs;
 * - `told` (round ends): words, figures and findings.
 * On top of that a double edge means several wires, a dashed one that the wire may be left out. A type nobody has put into a
 * family is `made`.
 */
export type Family = 'drawn' | 'made' | 'told';

const DRAWN = new Set(['strokes', 'outlines', 'region', 'channel', 'holes', 'tabs', 'lighting', 'image', 'passes', 'seams']);
const TOLD = new Set(['number', 'text', 'checks', 'quantities']);

export function familyOf(type: string | undefined): Family {
  if (type !== undefined && DRAWN.has(type)) return 'drawn';
  return type === undefined || TOLD.has(type) ? 'told' : 'made';
}
