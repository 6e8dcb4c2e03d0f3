import { type Cutter, peopleToLift, sheetWeight } from '../../machining/index.ts';
import { entry, heading, paragraph, table } from '../blocks.ts';
import { type Book, bottomOf, innerWidth } from '../book.ts';
import { type Block, flow, turnPage } from '../flow.ts';
import { EDGE, scaleFor, type Size } from '../paper.ts';
import { ascent, drawDimension, drawLead, onPage, textWidth, type View, write, writeOver } from '../pen.ts';
import { capital, counted, duration, hundredths, tenths } from '../words.ts';
import { drawBox, drawCut, drawSeams, SHADES, sheetBox } from './layers.ts';
import { drawHead } from './page.ts';
import { placingWords } from './set-up-drawing.ts';
import { setupMinutes, simplified, totalMinutes, type Work } from './work.ts';

/** Sheets longer than this bend when one person lifts them, mm (common practice, no source). */
const LONG = 1500;

/** The first page: the whole sheet, and all that is to be known before the first set-up. */
export function writeCover(book: Book, work: Work): void {
  const title = `Set-up sheets: ${work.name}`;
  let y = drawHead(book, work, title);
  write(book, summary(work), { x: EDGE, y: y + ascent(10) }, { size: 10 });
  y = drawSheet(book, work, y + 7);
  const nextPage = () => {
    turnPage(book);
    return drawHead(book, work, `${title}, continued`);
  };
  flow(book, [...checkBlocks(work), ...orderBlocks(work), ...cutterBlocks(work), ...sheetBlocks(work), ...seamBlocks(work), ...noteBlocks(work), ...safetyBlocks()], { columns: 2, top: y + 2, nextPage });
}

const summary = ({ stock, turns, setups }: Work): string =>
  `Sheet ${tenths(stock.width)} x ${tenths(stock.height)} x ${tenths(stock.thickness)} mm, ${counted(turns.length, 'set-up')}, ${counted(setups.flatMap(({ programs }) => programs).length, 'program')}, ${duration(totalMinutes(turns))} in all.`;

const ROW = 7;
/** Below the sheet: its set-ups' names, then its width. */
const FOOT = 2 * ROW - 1;

function drawSheet(book: Book, work: Work, top: number): number {
  const across = work.tiling.seams.some(({ axis }) => axis === 'x'), along = work.tiling.seams.some(({ axis }) => axis === 'y');
  const [above, right] = [across ? 6 : 2, along ? 23 : 9];
  const sizeAt = (scale: number): Size => ({ width: work.stock.width / scale + right, height: above + work.stock.height / scale + 3 * ROW });
  const scale = scaleFor(sizeAt, { width: innerWidth(book), height: (bottomOf(book) - top) * 0.42 });
  const size = sizeAt(scale);
  const view: View = { scale, origin: { x: 0, y: 0 }, at: { x: EDGE + (innerWidth(book) - size.width) / 2, y: top + above + work.stock.height / scale } };
  const drawn = simplified(work, scale);
  drawCut(book, view, drawn, SHADES.now, [sheetBox(work)], false);
  drawBox(book, view, sheetBox(work), { width: 0.35 });
  drawSeams(book, view, work, 1.5).forEach((end, i) => {
    const { x, y } = onPage(view, end);
    if (work.tiling.seams[i]!.axis === 'x') write(book, `seam ${i + 1}`, { x, y: y - 1 }, { size: 8, align: 'center' });
    else write(book, `seam ${i + 1}`, { x: x + 0.8, y: y + 1 }, { size: 8 });
  });
  nameSetUps(book, work, view);
  const [low, high] = [onPage(view, { x: 0, y: 0 }), onPage(view, { x: work.stock.width, y: work.stock.height })];
  drawLead(book, low, { x: low.x, y: low.y + FOOT });
  drawLead(book, { x: high.x, y: low.y }, { x: high.x, y: low.y + FOOT });
  drawDimension(book, { x: low.x, y: low.y + FOOT - 1 }, { x: high.x, y: low.y + FOOT - 1 }, tenths(work.stock.width));
  drawLead(book, { x: high.x, y: low.y }, { x: high.x + right - 3, y: low.y });
  drawLead(book, high, { x: high.x + right - 3, y: high.y });
  drawDimension(book, { x: high.x + right - 3, y: low.y }, { x: high.x + right - 3, y: high.y }, tenths(work.stock.height));
  write(book, `1:${scale}, lengths in mm, seen from above`, { x: low.x, y: low.y + FOOT + 4 }, { size: 8 });
  return low.y + FOOT + ROW;
}

/** Each set-up is named where it cuts, below the sheet where that is clear: in full, by its number, or upright by its number, as there is room. */
function nameSetUps(book: Book, { turns, tiling }: Work, view: View): void {
  const aside = tiling.tiles.every(({ row }) => row === 0);
  for (const { number, tile: { core } } of turns) {
    const width = (core.maxX - core.minX) / view.scale;
    const place = onPage(view, { x: (core.minX + core.maxX) / 2, y: aside ? core.minY : core.maxY });
    const x = place.x, y = place.y + 4.2;
    const full = `set-up ${number}`;
    if (textWidth(book, full, { size: 9, bold: true }) + 2 <= width) writeOver(book, full, { x, y }, { size: 9, bold: true, align: 'center' });
    else if (textWidth(book, String(number), { size: 8, bold: true }) + 1 <= width) writeOver(book, String(number), { x, y }, { size: 8, bold: true, align: 'center' });
    else if (width >= ascent(8)) write(book, String(number), { x: x + ascent(8) / 2, y: y + 1 }, { size: 8, bold: true, angle: 90 });
  }
}

function checkBlocks({ checks, failed, cautions }: Work): Block[] {
  const bold = { size: 9, bold: true };
  const passed = checks.length - failed.length - cautions.length;
  return [
    heading('Checks'),
    ...(checks.length === 0 ? [paragraph('No checks came with these sheets: nobody has looked whether the work can be cut as it is.', bold)] : []),
    ...(failed.length > 0 ? [paragraph(`${counted(failed.length, 'check')} failed. Do not cut before that is mended:`, bold), ...failed.map(({ says }) => entry('×', says, bold))] : []),
    ...(cautions.length > 0 ? [paragraph(`${counted(cautions.length, 'check')} worth a look:`, bold), ...cautions.map(({ says }) => entry('!', says))] : []),
    ...(passed > 0 ? [paragraph(failed.length + cautions.length === 0 ? `${passed === 1 ? 'The one check' : `All ${passed} checks`} passed.` : `${counted(passed, 'other check')} passed.`)] : []),
  ];
}

function orderBlocks(work: Work): Block[] {
  const steps = [
    ...(work.registration && work.registration.pins.length > 0
      ? [`Without a sheet: programs/spoilboard-pins.ngc makes ${counted(work.registration.pins.length, 'hole')} for the pins in the spoilboard. X0 Y0 stays from now on; Z0 is the spoilboard here. Not in the total time.`] : []),
    ...work.turns.flatMap((turn) => [
      `${capital(turn.setup.name)}, ${duration(setupMinutes(turn.setup))}. ${placingWords(work, turn)} Run ${turn.setup.programs.map(({ file, minutes }) => `${file} (${minutes.toFixed(1)} min)`).join(', then ')}.`,
    ]),
  ];
  return [heading('Order of work'), ...steps.map((text, i) => entry(`${i + 1}.`, text)), paragraph(`Machine time ${duration(totalMinutes(work.turns))} in all, without set-ups and changes of cutter.`)];
}

function cutterBlocks({ turns }: Work): Block[] {
  const cutters = new Map<string, { cutter: Cutter; setUps: Set<number> }>();
  for (const { number, setup } of turns) {
    for (const { cutter } of setup.programs) {
      const key = `${cutter.name} ${cutter.diameter}`;
      const known = cutters.get(key) ?? { cutter, setUps: new Set<number>() };
      known.setUps.add(number);
      cutters.set(key, known);
    }
  }
  return [
    heading('Cutters to have ready'),
    table(
      [{ title: 'cutter', share: 34 }, { title: 'ø mm', share: 14, align: 'right' }, { title: 'flutes', share: 13, align: 'right' }, { title: 'edge mm', share: 17, align: 'right' }, { title: 'set-ups', share: 22 }],
      [...cutters.values()].map(({ cutter, setUps }) => [cutter.name, hundredths(cutter.diameter), String(cutter.flutes), tenths(cutter.cuttingLength), setUps.size === turns.length ? 'all' : [...setUps].join(', ')]),
    ),
  ];
}

function sheetBlocks({ stock }: Work): Block[] {
  const weight = sheetWeight(stock);
  const longest = Math.max(stock.width, stock.height);
  const people = Math.max(peopleToLift(weight), longest > LONG ? 2 : 1);
  return [
    heading('The sheet'),
    paragraph(`It weighs ${tenths(weight)} kg: ${people === 1 ? 'one person lifts it' : `${people} people lift it`}${longest > LONG ? '; it is long, it bends, and its edges are sharp' : '; its edges are sharp'}. Measure its thickness: ${tenths(stock.thickness)} mm, within ${tenths(stock.thicknessTolerance)} mm.`),
  ];
}

function seamBlocks({ tiling, registration }: Work): Block[] {
  if (tiling.seams.length === 0) return [];
  return [
    heading('Seams'),
    table(
      [{ title: 'seam', share: 14 }, { title: 'from the sheet\'s edge', share: 44 }, { title: 'grooves crossed', share: 22, align: 'right' }, { title: 'largest step', share: 20, align: 'right' }],
      tiling.seams.map(({ axis, at, crossings }, i) => {
        const step = registration?.steps.find(({ seam }) => seam === i);
        return [String(i + 1), `${tenths(at)} mm from ${axis === 'x' ? 'the left' : 'below'}`, String(crossings.length), step ? `${hundredths(step.worst)} mm` : ''];
      }),
    ),
  ];
}

function noteBlocks({ notes }: Work): Block[] {
  const lines = notes.split(/\r?\n/).filter((line) => line.trim() !== '');
  return lines.length > 0 ? [heading('Notes'), ...lines.map((line) => paragraph(line))] : [];
}

/** Neutral, and in short: the machine's and the material's own instructions go first. */
const CAUTIONS = [
  'The machine\'s and the material\'s own instructions go first; figures on these sheets are estimates.',
  'Eye and hearing protection. No gloves, loose sleeves or hair near a turning spindle; hands off until it has stopped.',
  'Extract chips at the cutter and ventilate. Stop if it smells strongly or melts. Acrylic burns: never leave a running cut, have an extinguisher at hand.',
  'Clamp outside the cutter\'s way; carry what hangs over the bed; make sure that what is cut off cannot come loose.',
  'Dry run above the work with the spindle off in every set-up. Know where the emergency stop is.',
  'After every move of the sheet see that it sits on its pins before cutting.',
  'Isolate the machine before changing cutters. Do not clean acrylic with solvents or alcohol: it crazes.',
  'Local rules and licensed people decide, above all about mains and lifting.',
];

const safetyBlocks = (): Block[] => [heading('Cautions'), ...CAUTIONS.map((text) => entry('!', text))];
