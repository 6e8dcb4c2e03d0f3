import { type Book, innerWidth } from '../book.ts';
import { EDGE } from '../paper.ts';
import { drawCross, drawDot, type Line, setFill, setLine, textWidth, type View, write } from '../pen.ts';
import { SEAM_DASH, SHADES } from './layers.ts';
import { holdDownsIn, pinsIn, supportsIn } from './set-up-drawing.ts';
import type { Turn, Work } from './work.ts';

/** A sign of the drawing, drawn in a field of 7 x 3 mm about a place of the page, and what it stands for. */
interface Sign {
  readonly text: string;
  readonly draw: (book: Book, x: number, y: number) => void;
}

const SIGN = 7;
const HEIGHT = 4.6;

/** What the signs of a set-up's drawing mean; returns the y below. */
export function drawLegend(book: Book, work: Work, turn: Turn, { top, scale }: { readonly top: number; readonly scale: number }): number {
  let x = EDGE, y = top + 2;
  for (const { text, draw } of signsOf(work, turn)) {
    const width = SIGN + 1.2 + textWidth(book, text, { size: 8 }) + 4;
    if (x > EDGE && x + width > EDGE + innerWidth(book)) [x, y] = [EDGE, y + HEIGHT];
    draw(book, x + SIGN / 2, y);
    write(book, text, { x: x + SIGN + 1.2, y: y + 1 }, { size: 8 });
    x += width;
  }
  const says = `Drawing 1:${scale}, from above; X and Y as programs count them.`;
  if (x > EDGE && x + textWidth(book, says, { size: 8 }) > EDGE + innerWidth(book)) [x, y] = [EDGE, y + HEIGHT];
  write(book, says, { x, y: y + 1 }, { size: 8 });
  return y + HEIGHT - 1;
}

function signsOf(work: Work, { place, number }: Turn): Sign[] {
  const downs = holdDownsIn(work, place);
  const earlier = work.turns.some((turn) => turn.place < place);
  const pins = pinsIn(work, place);
  return [
    { text: `window of set-up ${number}: cut now`, draw: box(SHADES.here, { width: 0.7 }) },
    ...(work.groove.loops.length > 0 ? [{ text: 'groove cut now', draw: bar(SHADES.now) }] : []),
    ...(earlier && work.groove.loops.length > 0 ? [{ text: 'cut before', draw: bar(SHADES.done) }] : []),
    { text: 'machine bed', draw: box(SHADES.bed, { width: 0.2, grey: 90, dash: [2, 1] }) },
    ...(pins.length > 0 ? [{ text: 'pin', draw: dots((book, view, at) => { drawDot(book, view, at, 1.1, { fill: 0 }); drawDot(book, view, at, 1.7, { width: 0.25 }); }) }] : []),
    ...(downs.length > 0 ? [{ text: `${[...new Set(downs.map(({ kind }) => kind))].join(', ')} in its keep-out disc`, draw: dots((book, view, at) => {
      drawDot(book, view, at, 1.7, { width: 0.2, dash: [0.8, 0.5] });
      drawDot(book, view, at, 0.8, { width: 0.2, fill: 255 });
      drawCross(book, view, at, 0.8);
    }) }] : []),
    ...(supportsIn(work, place).length > 0 ? [{ text: 'support under the sheet', draw: dash({ width: 1.1, grey: 90, dash: [1.6, 0.8] }) }] : []),
    ...(work.tiling.seams.length > 0 ? [{ text: 'seam', draw: dash({ width: 0.3, dash: SEAM_DASH }) }] : []),
  ];
}

const box = (grey: number, line: Line): Sign['draw'] => (book, x, y) => {
  setLine(book, line);
  setFill(book, grey).rect(x - 3, y - 1.4, 6, 2.8, 'DF');
};

const bar = (grey: number): Sign['draw'] => (book, x, y) => { setFill(book, grey).rect(x - 3, y - 0.6, 6, 1.2, 'F'); };

const dash = (line: Line): Sign['draw'] => (book, x, y) => {
  setLine(book, line);
  book.pdf.line(x - 3.4, y, x + 3.4, y);
};

/** A sign made of what is drawn about a place. */
const dots = (draw: (book: Book, view: View, at: { readonly x: number; readonly y: number }) => void): Sign['draw'] => (book, x, y) => {
  draw(book, { scale: 1, origin: { x: 0, y: 0 }, at: { x, y } }, { x: 0, y: 0 });
};
