import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/index.ts';
import type { Hole } from '../../src/machining/index.ts';
import { MOST_PAGES, type Paper, wallTemplate } from '../../src/papers/index.ts';
import { rectangle } from '../support/shapes.ts';
import { lengthOf, type PdfPage, POINT, readPdf } from './read-pdf.ts';

const mounting = (x: number, y: number, slot?: Hole['slot']): Hole => ({ centre: { x, y }, diameter: 7.5, purpose: 'mounting', ...(slot && { slot }) });

/** A long board; holes that lie far apart, in an overlap of pages, and as a slot. */
const LONG = { board: rectangle(80, 70, 2240, 480), holes: [mounting(110, 100), mounting(279.5, 120, { length: 6, angle: 30 }), mounting(1200.25, 535), mounting(2290, 100), mounting(2290, 520)] };
/** One hole far inside a board: its page hangs together with those of the outline through pages that show nothing. */
const INSIDE = { board: rectangle(0, 0, 1900, 1600), holes: [mounting(40, 40), mounting(950, 800), mounting(1860, 1560)] };
const SMALL = { board: rectangle(0, 0, 150, 100), holes: [mounting(20, 50), mounting(130, 50)] };

const pdfOf = (job: { readonly board: Region; readonly holes: readonly Hole[] }, paper: Paper = 'A4', name = 'Lantern aisle'): string => {
  const template = wallTemplate({ ...job, paper, name });
  if (!template.ok) throw new Error(template.why);
  return template.base64;
};

type Place = readonly [number, number];

/** Middles of the circles of a radius that a page shows, mm. */
const dots = ({ curves }: PdfPage, radius: number): Place[] => curves.flatMap((points): Place[] => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [low, high, left, right] = [Math.min(...ys), Math.max(...ys), Math.min(...xs), Math.max(...xs)];
  return points.length === 4 && Math.abs(right - left - 2 * radius) < 1e-3 && Math.abs(high - low - 2 * radius) < 1e-3 ? [[(left + right) / 2, (low + high) / 2]] : [];
});

const nearest = (places: readonly Place[], x: number, y: number): Place => places.reduce((a, b) => (Math.hypot(a[0] - x, a[1] - y) <= Math.hypot(b[0] - x, b[1] - y) ? a : b));

/** Register marks by number. */
function marksOf(page: PdfPage): Map<string, Place> {
  const circles = dots(page, 2);
  return new Map(page.texts.filter(({ text, size }) => /^\d+$/.test(text) && size > 8.5 && size < 9.5).map(({ text, x, y }) => [text, nearest(circles, x - 2.6, y - 1.4)]));
}

/** Puts pages together by their marks alone; returns where each page's corner comes to lie. Fails where two marks of an edge disagree. */
function assembled(pages: readonly PdfPage[]): (Place | undefined)[] {
  const marks = pages.map(marksOf);
  const corners: (Place | undefined)[] = pages.map((_, i) => (i === 0 ? [0, 0] : undefined));
  for (let changed = true; changed;) {
    changed = false;
    pages.forEach((_, i) => {
      const corner = corners[i];
      if (!corner) return;
      pages.forEach((__, j) => {
        const shared = [...marks[i]!].filter(([number]) => marks[j]!.has(number));
        if (i === j || shared.length === 0) return;
        const shifts = shared.map(([number, [x, y]]): Place => [corner[0] + x - marks[j]!.get(number)![0], corner[1] + y - marks[j]!.get(number)![1]]);
        const apart = [...shifts, ...(corners[j] ? [corners[j]] : [])].map(([x, y]) => Math.hypot(x - shifts[0]![0], y - shifts[0]![1]));
        if (Math.max(...apart) > 0.005) expect.fail(`marks ${shared.map(([number]) => number).join(', ')} do not meet: ${Math.max(...apart)} mm`);
        if (corners[j]) return;
        corners[j] = shifts[0];
        changed = true;
      });
    });
  }
  return corners;
}

/** Every cross by the number of its hole, on each page that names it, in one system of coordinates. */
function holesOf(pages: readonly PdfPage[]): Map<number, Place[]> {
  const corners = assembled(pages);
  const found = new Map<number, Place[]>();
  pages.forEach((page, i) => {
    const crosses = dots(page, 0.4);
    for (const { text, x, y } of page.texts) {
      const number = Number(/^hole (\d+)$/.exec(text)?.[1]);
      if (!number) continue;
      const [cx, cy] = nearest(crosses, x, y);
      found.set(number, [...(found.get(number) ?? []), [cx + corners[i]![0], cy + corners[i]![1]]]);
    }
  });
  return found;
}

const sheetsOf = (pages: readonly PdfPage[]): PdfPage[] => pages.filter(({ words }) => /^row \d+, column \d+/.test(words));

const readLong = readPdf(pdfOf(LONG));

describe.each([['A4', LONG], ['US Letter', LONG], ['A4', INSIDE]] as const)('a template on %s', (paper, job) => {
  const read = paper === 'A4' && job === LONG ? readLong : readPdf(pdfOf(job, paper));

  it('has pages of its paper', async () => {
    const size = paper === 'A4' ? [210 / POINT, 297 / POINT] : [612, 792];
    for (const { width, height } of await read) expect([width, height].sort((a, b) => a - b)).toEqual(size.map((side) => expect.closeTo(side, 2) as number));
  });

  it('carries on every page a ruler of 100 mm, 283.46 points, and says to measure it', async () => {
    for (const page of sheetsOf(await read)) {
      const rulers = page.lines.filter((line) => Math.abs(lengthOf(line) - 100) < 0.001);
      expect(rulers.length).toBeGreaterThan(0);
      expect(lengthOf(rulers[0]!) / POINT).toBeCloseTo(283.46, 2);
      expect(page.words).toContain('Measure me: exactly 100 mm');
    }
  });

  it('hangs together by register marks that meet, page by page', async () => {
    const sheets = sheetsOf(await read);
    expect(assembled(sheets).every((corner) => corner !== undefined)).toBe(true);
  });

  it('shows every hole at its distance from every other, full size, across pages', async () => {
    const found = holesOf(sheetsOf(await read));
    expect([...found.keys()].sort()).toEqual(job.holes.map((_, i) => i + 1));
    job.holes.forEach((a, i) => {
      job.holes.forEach((b, j) => {
        for (const [ax, ay] of found.get(i + 1)!) for (const [bx, by] of found.get(j + 1)!) {
          expect(Math.abs(bx - ax - (b.centre.x - a.centre.x))).toBeLessThan(0.01);
          expect(Math.abs(by - ay - (b.centre.y - a.centre.y))).toBeLessThan(0.01);
        }
      });
    });
  });

  it('lists places from the board\'s lower left corner', async () => {
    const words = (await read).map((page) => page.words).join(' ');
    const [{ x: left, y: low }] = job.board.loops[0]! as unknown as [{ x: number; y: number }];
    for (const { centre } of job.holes) expect(words).toContain(`${Math.round((centre.x - left) * 100) / 100} ${Math.round((centre.y - low) * 100) / 100}`);
  });

  it('draws a level line at the same height on all pages of a row', async () => {
    const rows = new Map<string, Set<string>>();
    for (const { words } of sheetsOf(await read)) {
      const row = /^row (\d+)/.exec(words)![1]!;
      rows.set(row, (rows.get(row) ?? new Set()).add(/level line, [^']*edge|level line, -?\d+ mm \w+/.exec(words)![0]));
    }
    expect([...rows.values()].map(({ size }) => size)).toEqual([...rows].map(() => 1));
  });

  it('keeps words at 8 points and more, on the paper', async () => {
    for (const { texts, width } of await read) {
      expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThanOrEqual(7.99);
      expect(Math.min(...texts.map(({ x }) => x))).toBeGreaterThan(5);
      expect(Math.max(...texts.map(({ x }) => x))).toBeLessThan(width * POINT - 5);
    }
  });
});

it('names a hole that lies where pages overlap on both', async () => {
  expect(Math.max(...[...holesOf(sheetsOf(await readLong)).values()].map((places) => places.length))).toBeGreaterThan(1);
});

it('leaves out pages that would be empty', async () => {
  const pages = sheetsOf(await readPdf(pdfOf(INSIDE)));
  const numbers = pages.map(({ words }) => /^row (\d+), column (\d+)/.exec(words)!.slice(1).map(Number));
  const [rows, columns] = [Math.max(...numbers.map(([row]) => row!)), Math.max(...numbers.map(([, column]) => column!))];
  expect(pages.length).toBeLessThan(rows * columns);
});

it('puts a small board on one page, upright or lying', async () => {
  const pages = await readPdf(pdfOf(SMALL));
  expect(sheetsOf(pages).length).toBe(1);
  expect(sheetsOf(pages)[0]!.words).not.toContain('lies here');
});

it('is the same file each time', () => {
  expect(pdfOf(LONG)).toBe(pdfOf(structuredClone(LONG)));
});

it('takes long names and umlauts', async () => {
  const name = 'Überlanger Türname '.repeat(3).trim();
  const [title, sheet] = await readPdf(pdfOf(SMALL, 'US Letter', name));
  expect(title!.words.replace(/\s+/g, ' ')).toContain(`Wall template: ${name}`);
  expect(sheet!.words).toContain('Überlanger');
});

it('shows cable holes as not to be drilled, and leaves out those for pins', async () => {
  const pages = await readPdf(pdfOf({ ...SMALL, holes: [...SMALL.holes, { ...mounting(75, 50), purpose: 'cable' }, { ...mounting(75, 20), purpose: 'dowel' }] }));
  expect(sheetsOf(pages)[0]!.words).toContain('cable');
  expect(holesOf(sheetsOf(pages)).size).toBe(2);
  expect(pages[0]!.words).toContain('Drill the wall there only where a cable goes into it.');
});

it('tells what keeps it from being written', () => {
  const job = { paper: 'A4' as const, name: 'x', ...SMALL };
  expect(wallTemplate({ ...job, holes: [] })).toEqual({ ok: false, why: 'no holes' });
  expect(wallTemplate({ ...job, holes: [{ ...mounting(1, 1), purpose: 'cable' }] })).toEqual({ ok: false, why: 'no holes' });
  expect(wallTemplate({ ...job, board: { loops: [] } })).toEqual({ ok: false, why: 'no board' });
  const huge = wallTemplate({ ...job, board: rectangle(0, 0, 60_000, 20_000) });
  expect(huge).toMatchObject({ ok: false, why: 'too large' });
  expect(!huge.ok && huge.pages).toBeGreaterThan(MOST_PAGES);
});
