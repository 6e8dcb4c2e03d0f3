import { getDocument, OPS, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PlacedText {
  readonly text: string;
  /** Millimetres from the page's lower left corner, and the letters' size in points. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

export interface PdfLine {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PdfPage {
  /** Points. */
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PlacedText[];
  /** All words, joined. */
  readonly words: string;
  /** Straight parts of stroked and filled paths, millimetres from the lower left corner. */
  readonly lines: readonly PdfLine[];
  /** Points that cubics end at, in the order drawn, path by path; millimetres. */
  readonly curves: readonly (readonly (readonly [number, number])[])[];
}

/** 72 points to the inch: ISO 32000-1, 8.3.2.3. */
export const POINT = 25.4 / 72;

/** Reads a PDF with a general-purpose reader that has nothing of the writer. */
export async function readPdf(base64: string): Promise<PdfPage[]> {
  const pdf = await getDocument({ data: Uint8Array.from(Buffer.from(base64, 'base64')), verbosity: VerbosityLevel.ERRORS, useSystemFonts: false }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item): PlacedText[] => ('str' in item && item.str.trim() !== ''
      ? [{ text: item.str, x: Number(item.transform[4]) * POINT, y: Number(item.transform[5]) * POINT, size: Math.hypot(Number(item.transform[0]), Number(item.transform[1])) }] : []));
    const { fnArray, argsArray } = await page.getOperatorList();
    const paths = fnArray.flatMap((fn, i) => (fn === OPS.constructPath ? [readPath((argsArray[i] as [number, [Float32Array | null]])[1][0])] : []));
    pages.push({ width, height, texts, words: texts.map(({ text }) => text).join(' '), lines: paths.flatMap(({ lines }) => lines), curves: paths.map(({ curves }) => curves).filter((one) => one.length > 0) });
  }
  await pdf.loadingTask.destroy();
  return pages;
}

/** The reader's path: an operator (move, line, cubic, quadratic, close), then its coordinates. */
function readPath(data: Float32Array | null): { readonly lines: PdfLine[]; readonly curves: (readonly [number, number])[] } {
  const lines: PdfLine[] = [], curves: (readonly [number, number])[] = [];
  const point = (i: number) => [data![i]! * POINT, data![i + 1]! * POINT] as const;
  let at: readonly [number, number] = [0, 0], start = at;
  for (let i = 0; i < (data?.length ?? 0);) {
    const operator = data![i];
    if (operator === 0) {
      at = start = point(i + 1);
      i += 3;
    } else if (operator === 1 || operator === 4) {
      const to = operator === 1 ? point(i + 1) : start;
      lines.push({ from: at, to });
      at = to;
      i += operator === 1 ? 3 : 1;
    } else {
      at = point(i + 5);
      curves.push(at);
      i += 7;
    }
  }
  return { lines, curves };
}

export const lengthOf = ({ from, to }: PdfLine): number => Math.hypot(to[0] - from[0], to[1] - from[1]);
