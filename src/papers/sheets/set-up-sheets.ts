import { emptyRegion } from '../../geometry/index.ts';
import { addPage, type Book, bottomOf, closeBook, innerWidth, numberPages, openBook } from '../book.ts';
import { PAPERS, SCALES, scaleFor, type Size } from '../paper.ts';
import { writeCover } from './cover.ts';
import { drawingSize, holdDownsIn } from './set-up-drawing.ts';
import { writeSetUp } from './set-up-page.ts';
import { type SheetsJob, simplified, type Turn, type Work, workOf } from './work.ts';

/** How the pages of set-ups lie, and the scale of their drawings. */
interface Layout {
  readonly lying: boolean;
  readonly scale: number;
}

/** The set-up sheets as a PDF in base64: a cover, then every set-up. */
export function setUpSheets(job: SheetsJob): string {
  const work = workOf(job);
  const layout = chooseLayout(work);
  const book = openBook({ paper: job.paper, lying: layout.lying, title: `Set-up sheets: ${job.name}` });
  writeCover(book, work);
  const drawn = simplified(work, layout.scale);
  for (const turn of work.turns) {
    addPage(book);
    writeSetUp(book, drawn, turn, layout.scale);
  }
  numberPages(book, `${job.name}; lengths in mm`);
  return closeBook(book);
}

/** So many of the fullest set-ups are tried for their layout. */
const TRIED = 4;
/** A drawing may be this many steps of scale smaller than it could be for the sake of one page. */
const STEPS_SMALLER = 1;

/** The largest scale at which every set-up fits on one page, upright or lying; where none does, the largest at which the drawings fit. */
function chooseLayout(work: Work): Layout {
  const blank = { ...work, groove: emptyRegion, board: emptyRegion };
  const fullest = [...work.turns].sort((a, b) => fullness(work, b) - fullness(work, a)).slice(0, TRIED);
  const largest = [false, true].map((lying): Layout => ({ lying, scale: largestScale(work, lying) }));
  const first = SCALES.indexOf(Math.min(...largest.map(({ scale }) => scale)));
  const layouts = SCALES.slice(first, first + 1 + STEPS_SMALLER).flatMap((scale) => largest.filter((one) => one.scale <= scale).map(({ lying }): Layout => ({ lying, scale })));
  return layouts.find((layout) => fullest.every((turn) => pagesOf(blank, turn, layout) === 1)) ?? layouts[0]!;
}

const fullness = (work: Work, { place, setup }: Turn): number => holdDownsIn(work, place).length + setup.programs.length + work.hangs.filter(({ setUp }) => setUp === place).length * 3;

/** The share of a page that a drawing may take where the rest of the set-up needs a page of its own. */
const MOST_OF_PAGE = 0.75;

function largestScale({ paper, turns, ...work }: Work, lying: boolean): number {
  const [short, long] = PAPERS[paper];
  const page = lying ? { width: long, height: short } : { width: short, height: long };
  const sizeAt = (scale: number): Size => {
    const sizes = turns.map((turn) => drawingSize({ paper, turns, ...work }, turn, scale, innerWidth(page as Book)));
    return { width: Math.max(...sizes.map(({ width }) => width)), height: Math.max(...sizes.map(({ height }) => height)) };
  };
  return scaleFor(sizeAt, { width: innerWidth(page as Book), height: bottomOf(page as Book) * MOST_OF_PAGE });
}

function pagesOf(work: Work, turn: Turn, { lying, scale }: Layout): number {
  const book = openBook({ paper: work.paper, lying, title: '' });
  writeSetUp(book, work, turn, scale);
  return book.pdf.getNumberOfPages();
}
