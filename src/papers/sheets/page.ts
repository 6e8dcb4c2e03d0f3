import { type Book, innerWidth } from '../book.ts';
import { EDGE } from '../paper.ts';
import { ascent, leading, setFill, wrapped, write } from '../pen.ts';
import { counted } from '../words.ts';
import type { Work } from './work.ts';

const TITLE = 15;

/** What stands at the head of every page: that it must not be cut from, if a check failed, and what the page is about. Returns the y below. */
export function drawHead(book: Book, work: Pick<Work, 'failed' | 'name'>, title: string): number {
  const y = work.failed.length > 0 ? drawDraftMark(book, work.failed.length) : EDGE;
  const lines = wrapped(book, title, innerWidth(book), { size: TITLE, bold: true });
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: y + ascent(TITLE) + i * leading(TITLE) }, { size: TITLE, bold: true }); });
  return y + lines.length * leading(TITLE) + 1;
}

const BAR = 7.5;

function drawDraftMark(book: Book, failed: number): number {
  setFill(book, 0).rect(EDGE, EDGE, innerWidth(book), BAR, 'F');
  write(book, `DRAFT: ${counted(failed, 'check')} failed. Do not cut from these sheets.`, { x: book.width / 2, y: EDGE + 5.3 }, { size: 13, bold: true, align: 'center', grey: 255 });
  return EDGE + BAR + 2.5;
}
