import { entry, heading, paragraph, table } from '../blocks.ts';
import { type Book, innerWidth } from '../book.ts';
import { flow, turnPage } from '../flow.ts';
import { EDGE } from '../paper.ts';
import { ascent, leading, wrapped, write } from '../pen.ts';
import { counted, hundredths, tenths } from '../words.ts';
import type { NumberedHole, Template } from './job.ts';
import { drawMap } from './map.ts';
import { drawRuler, shapeWords } from './page.ts';
import { OVERLAP } from './tiles.ts';

const TITLE = { size: 15, bold: true } as const;

/** The first page: how the pages are put together, the map, and every hole with its place. */
export function writeTitle(book: Book, template: Template): void {
  const { job, bounds, mounting } = template;
  let y = drawTitle(book, `Wall template: ${job.name}`);
  write(book, `Board ${tenths(bounds.maxX - bounds.minX)} x ${tenths(bounds.maxY - bounds.minY)} mm, ${counted(mounting.length, 'mounting hole')}, 1:1, seen from the front.`, { x: EDGE, y: y + ascent(10) }, { size: 10 });
  y += 9;
  y += drawMap(book, template, { x: EDGE, y }, { width: innerWidth(book), height: book.height * 0.24 }).height + 2;
  write(book, 'Map of the pages: row/column. Crossed pages would be empty and are left out.', { x: EDGE, y: y + 3 }, { size: 8 });
  drawRuler(book, { x: EDGE, y: y + 12 });
  drawRuler(book, { x: book.width - EDGE - 6, y: y + 106 }, true);
  const nextPage = () => {
    turnPage(book);
    return drawTitle(book, `Wall template: ${job.name}, continued`);
  };
  flow(book, [
    heading('Putting it up'), ...STEPS.map((text, i) => entry(`${i + 1}.`, text)),
    heading('Cautions'), ...CAUTIONS.map((text) => entry('!', text)),
    heading('Holes, from the board\'s lower left corner'), holeTable(mounting), paragraph('Check with a tape before drilling: distances from hole 1 go from middle to middle.'),
    ...(template.cables.length > 0 ? [paragraph(`Dashed circles are ${counted(template.cables.length, 'cable hole')} of the board. Drill the wall there only where a cable goes into it.`)] : []),
  ], { columns: 1, top: y + 18, nextPage, right: 14 });
}

function drawTitle(book: Book, text: string): number {
  const lines = wrapped(book, text, innerWidth(book), TITLE);
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: EDGE + ascent(TITLE.size) + i * leading(TITLE.size) }, TITLE); });
  return EDGE + lines.length * leading(TITLE.size) + 1;
}

const STEPS = [
  'Print at 100 % on paper of this size, without fitting to the page. Measure both rulers here and the one on every page: exactly 100 mm. If not, the holes will not fit.',
  `Cut every page along its frame on the left, where it has a neighbour there, and at the top likewise. Pages overlap by ${OVERLAP} mm.`,
  'Lay each page over its neighbour on the left and above: its cut edge on the dotted line, the arms of register marks with the same number in one line. Tape them together flat.',
  'Hold the template at its place, arrows upward, and bring the level lines level with a spirit level.',
  'Check two holes far apart with a tape against the list of holes. Mark each hole through the paper at the middle of its cross.',
];

const CAUTIONS = [
  'Find out what lies in the wall before drilling: cables, pipes, reinforcement. Use a detector, and switch off circuits that may run there.',
  'Choose fixings for this kind of wall and for the board\'s weight, and drill to their diameter and depth, not to the board\'s holes. If in doubt ask somebody who knows the building.',
  'A slot in the board is marked at its middle: its screw sits there, so that the board can grow and shrink. Leave screws in slots a little loose.',
  'Mains is the work of a licensed person. Wear eye protection; stand safely.',
];

const holeTable = (mounting: readonly NumberedHole[]) => {
  const [first] = mounting;
  const right = { align: 'right' as const };
  return table(
    [{ title: 'hole', share: 14 }, { title: 'x', share: 20, ...right }, { title: 'y', share: 20, ...right }, { title: 'from hole 1', share: 26, ...right }, { title: '', share: 4 }, { title: 'shape', share: 60 }],
    mounting.map((hole) => [String(hole.number), hundredths(hole.x), hundredths(hole.y), hundredths(Math.hypot(hole.x - first!.x, hole.y - first!.y)), '', shapeWords(hole)]),
  );
};
