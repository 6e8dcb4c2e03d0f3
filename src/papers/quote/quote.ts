import { money, type Price, type PriceLine } from '../../costing/index.ts';
import { type Block, flow, turnPage } from '../flow.ts';
import { entry, heading, paragraph, table } from '../blocks.ts';
import { type Book, bottomOf, closeBook, innerWidth, numberPages, openBook } from '../book.ts';
import { EDGE, type Paper } from '../paper.ts';
import { ascent, leading, wrapped, write } from '../pen.ts';

/** A picture of the sign as it is lit. */
export interface QuotePicture {
  /** PNG as base64. */
  readonly png: string;
  readonly columns: number;
  readonly rows: number;
}

/** What a quote tells a customer. */
export interface QuoteJob {
  readonly paper: Paper;
  /** What the sign is called, and for whom. */
  readonly name: string;
  readonly customer: string;
  readonly notes: string;
  /** How many days it holds; 0 says nothing about that. */
  readonly validDays: number;
  readonly price: Price;
  /** What the sign is: size, weight, power, each a name and its figure. */
  readonly facts: readonly (readonly [name: string, figure: string])[];
  readonly picture: QuotePicture | undefined;
}

const TITLE = { size: 16, bold: true } as const;

/** Of the page's height, for the picture. */
const PICTURE = 0.26;

/** The quote as a PDF, base64: one page, unless its words need more. */
export function quote(job: QuoteJob): string {
  const book = openBook({ paper: job.paper, lying: false, title: `Quote: ${job.name}` });
  let y = drawHead(book, job);
  y = drawPicture(book, job.picture, y);
  flow(book, blocksOf(job), { columns: 1, top: y + 2, nextPage: () => turnPage(book) });
  numberPages(book, `Quote: ${job.name}`);
  return closeBook(book);
}

function drawHead(book: Book, { name, customer }: QuoteJob): number {
  const lines = wrapped(book, `Quote: ${name}`, innerWidth(book), TITLE);
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: EDGE + ascent(TITLE.size) + i * leading(TITLE.size) }, TITLE); });
  const y = EDGE + lines.length * leading(TITLE.size);
  if (customer === '') return y + 2;
  const [first = ''] = wrapped(book, `For ${customer}`, innerWidth(book), { size: 10 });
  write(book, first, { x: EDGE, y: y + ascent(10) + 1 }, { size: 10 });
  return y + leading(10) + 3;
}

/** The picture across the page, no higher than it should be; returns the y below it. */
function drawPicture(book: Book, picture: QuotePicture | undefined, top: number): number {
  if (picture === undefined) return top;
  const scale = Math.min(innerWidth(book) / picture.columns, (PICTURE * book.height) / picture.rows);
  const [width, height] = [picture.columns * scale, picture.rows * scale];
  book.pdf.addImage(picture.png, 'PNG', EDGE + (innerWidth(book) - width) / 2, top, width, height, 'lit', 'FAST');
  if (top + height > bottomOf(book)) throw new Error('the picture is higher than its page');
  return top + height;
}

function blocksOf({ facts, price, validDays, notes }: QuoteJob): Block[] {
  const right = { align: 'right' as const };
  return [
    ...(facts.length > 0 ? [heading('The sign'), ...facts.map(([name, figure]) => paragraph(`${name}: ${figure}`))] : []),
    heading('Price'),
    ...(price.rates.own ? [] : [paragraph('DRAFT: rates are placeholders, not prices. Nobody has put the shop’s own rates in yet.', { size: 9, bold: true })]),
    table(
      [{ title: 'item', share: 60 }, { title: 'quantity', share: 28, ...right }, { title: 'rate', share: 30, ...right }, { title: 'amount', share: 36, ...right }],
      [...price.lines.map((line) => lineCells(line, price.rates.currency)), ...sums(price)],
    ),
    ...(notes === '' ? [] : [heading('Notes'), ...notes.split('\n').filter((line) => line.trim() !== '').map((line) => paragraph(line))]),
    heading('Please note'),
    ...(validDays > 0 ? [entry('-', `This quote holds for ${validDays} days.`)] : []),
    entry('-', 'The picture shows how the sign may look lit; colours and brightness differ on paper and screen.'),
    entry('-', 'Mains connection and fixing to the wall are for licensed people; local code decides, and is not part of this price unless it says so.'),
  ];
}

const lineCells = ({ item, quantity, unit, rate, hundredths }: PriceLine, currency: string): string[] =>
  [item, `${quantity}${unit === 'count' ? '' : ` ${unit === 'm2' ? 'm²' : unit}`}`, String(rate), money(hundredths, currency)];

function sums({ cost, margin, net, tax, total, rates }: Price): string[][] {
  const row = (name: string, hundredths: number, rate = '') => [name, '', rate, money(hundredths, rates.currency)];
  const percent = (share: number) => `${Number((share * 100).toFixed(2))} %`;
  return [row('Sum', cost), row('Margin', margin, percent(rates.margin)), row('Net', net), row(rates.taxName, tax, percent(rates.tax)), row('Total', total)];
}
