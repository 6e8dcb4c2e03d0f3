import { jsPDF } from 'jspdf';
import { EDGE, PAPERS, type Paper } from './paper.ts';

/** A PDF being written: pages of one size. Lengths mm from the page's upper left corner, y down, as the package counts. */
export interface Book {
  readonly pdf: jsPDF;
  readonly width: number;
  readonly height: number;
}

export interface BookOptions {
  readonly paper: Paper;
  readonly lying: boolean;
  readonly title: string;
}

/** The same pages give the same bytes: the day and the number that a PDF carries say nothing. */
const NO_DAY = 'D:20000101000000+00\'00\'';
const NO_NUMBER = '0'.repeat(32);

/** Decimals of a coordinate, points: a ten-thousandth of a millimetre and finer. */
const DECIMALS = 4;

/** Room at the foot of every page for what `numberPages` writes. */
const FOOT = 6;

/** Begins a book with one empty page. */
export function openBook({ paper, lying, title }: BookOptions): Book {
  const [short, long] = PAPERS[paper];
  const [width, height] = lying ? [long, short] : [short, long];
  const pdf = new jsPDF({
    unit: 'mm', format: [short, long], orientation: lying ? 'landscape' : 'portrait', compress: true, putOnlyUsedFonts: true, precision: DECIMALS, floatPrecision: DECIMALS,
  });
  pdf.setCreationDate(NO_DAY).setFileId(NO_NUMBER).setProperties({ title: printable(title), creator: 'Groovewright' });
  // Drawings to scale: a printer must not fit them to its page.
  pdf.viewerPreferences({ PrintScaling: 'None' });
  return { pdf, width, height };
}

export function addPage({ pdf, width, height }: Book): void {
  pdf.addPage([width, height], width > height ? 'landscape' : 'portrait');
}

/** Between the edges that printers leave blank, above the foot. */
export const innerWidth = ({ width }: Book): number => width - 2 * EDGE;
export const bottomOf = ({ height }: Book): number => height - EDGE - FOOT;

/** Writes at the foot of every page what is said there, and which page it is. */
export function numberPages(book: Book, says: string): void {
  const { pdf, width, height } = book;
  const pages = pdf.getNumberOfPages();
  for (let page = 1; page <= pages; page++) {
    const number = `page ${page} of ${pages}`;
    pdf.setPage(page).setFont('helvetica', 'normal').setFontSize(8).setTextColor(70);
    const [first = ''] = pdf.splitTextToSize(printable(says), innerWidth(book) - pdf.getTextWidth(number) - 6) as string[];
    pdf.text(first, EDGE, height - EDGE).text(number, width - EDGE, height - EDGE, { align: 'right' });
  }
}

/** The whole book as base64. */
export function closeBook({ pdf }: Book): string {
  const uri = pdf.output('datauristring');
  return uri.slice(uri.indexOf('base64,') + 'base64,'.length);
}

/** Characters of the standard typefaces' encoding (Windows code page 1252) that stand above Latin-1. */
const BEYOND_LATIN = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** Text in the characters the standard typefaces have; a question mark for any other. */
export const printable = (text: string): string =>
  [...text.normalize('NFC').replace(/\s+/g, ' ')].map((one) => (/[ -~\u00a0-\u00ff]/.test(one) || BEYOND_LATIN.includes(one) ? one : '?')).join('');
