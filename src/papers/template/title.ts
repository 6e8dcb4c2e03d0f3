import { entry, heading, paragraph, table } from '../blocks.ts';
import { type Book, innerWidth } from '../book.ts';
import { flow, turnPage } from '../flow.ts';
import { EDGE } from '../paper.ts';
import { ascent, leading, wrapped, write } from '../pen.ts';
import { counted, hundredths, tenths } from '../words.ts';
import type { NumberedHole, Template } from './job.ts';
import { drawMap } from './map.ts';
import { drawRuler } from './page.ts';
import type { Wording } from './wording.ts';

const TITLE = { size: 15, bold: true } as const;

/** The first page: how the pages are put together, the map, and every hole with its place. */
export function writeTitle(book: Book, template: Template): void {
  const { job, bounds, mounting } = template;
  const { wording } = job;
  let y = drawTitle(book, `${wording.title}: ${job.name}`);
  write(book, `Board ${tenths(bounds.maxX - bounds.minX)} x ${tenths(bounds.maxY - bounds.minY)} mm, ${counted(mounting.length, wording.hole)}, 1:1, ${wording.seen}.`, { x: EDGE, y: y + ascent(10) }, { size: 10 });
  y += 9;
  y += drawMap(book, template, { x: EDGE, y }, { width: innerWidth(book), height: book.height * 0.24 }).height + 2;
  write(book, 'Map of the pages: row/column. Crossed pages would be empty and are left out.', { x: EDGE, y: y + 3 }, { size: 8 });
  drawRuler(book, { x: EDGE, y: y + 12 });
  drawRuler(book, { x: book.width - EDGE - 6, y: y + 106 }, true);
  const nextPage = () => {
    turnPage(book);
    return drawTitle(book, `${wording.title}: ${job.name}, continued`);
  };
  flow(book, [
    heading(wording.use), ...wording.steps.map((text, i) => entry(`${i + 1}.`, text)),
    heading('Cautions'), ...wording.cautions.map((text) => entry('!', text)),
    heading('Holes, from the board\'s lower left corner'), holeTable(mounting, wording), paragraph('Check with a tape before drilling: distances from hole 1 go from middle to middle.'),
    ...(template.cables.length > 0 ? [paragraph(`Dashed circles are ${counted(template.cables.length, 'cable hole')} of the board. ${wording.cables}`)] : []),
  ], { columns: 1, top: y + 18, nextPage, right: 14 });
}

function drawTitle(book: Book, text: string): number {
  const lines = wrapped(book, text, innerWidth(book), TITLE);
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: EDGE + ascent(TITLE.size) + i * leading(TITLE.size) }, TITLE); });
  return EDGE + lines.length * leading(TITLE.size) + 1;
}

const holeTable = (mounting: readonly NumberedHole[], { shape }: Wording) => {
  const [first] = mounting;
  const right = { align: 'right' as const };
  return table(
    [{ title: 'hole', share: 14 }, { title: 'x', share: 20, ...right }, { title: 'y', share: 20, ...right }, { title: 'from hole 1', share: 26, ...right }, { title: '', share: 4 }, { title: 'shape', share: 60 }],
    mounting.map((hole) => [String(hole.number), hundredths(hole.x), hundredths(hole.y), hundredths(Math.hypot(hole.x - first!.x, hole.y - first!.y)), '', shape(hole)]),
  );
};
