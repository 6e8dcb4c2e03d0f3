import { beforeAll, describe, expect, it, vi } from 'vitest';
import { type Hole, type SetUp, type Tiling } from '../../src/machining/index.ts';
import { setUpSheets, type SheetsJob } from '../../src/papers/index.ts';
import { tilingAt } from '../machining/set-ups-fixture.ts';
import { cutter, machine, rectangle } from '../support/shapes.ts';
import { benchJob, stock } from './bench-job.ts';
import { lengthOf, type PdfLine, type PdfPage, POINT, readPdf } from './read-pdf.ts';

const MOUNTING: Hole = { centre: { x: 110, y: 100 }, diameter: 6, purpose: 'mounting' };

const setUpOf = (tiling: Tiling, i: number, programs = 1): SetUp => ({
  name: tiling.tiles[i]!.name, shift: tiling.tiles[i]!.shift,
  programs: Array.from({ length: programs }, (_, k) => ({
    file: `programs/set-up-${i + 1}-cutter-${k + 1}.ngc`, cutter, kinds: ['groove'], moves: [], text: '', reach: { min: { x: 0, y: 0, z: -6.25 }, max: { x: 9, y: 9, z: 10 } },
    minutes: 12.34 + k, cuttingMinutes: 10, seconds: [], spindleStart: 5, blocks: 3,
  })),
});

/** Whether a place where words begin lies within a few millimetres of a line and its ends. */
const nearLine = ({ from, to }: PdfLine, x: number, y: number): boolean =>
  x > Math.min(from[0], to[0]) - 30 && x < Math.max(from[0], to[0]) + 3 && y > Math.min(from[1], to[1]) - 2 && y < Math.max(from[1], to[1]) + 3;

const plain: SheetsJob = {
  paper: 'A4', name: 'Night café', notes: '', stock: { ...stock, width: 800, height: 400 }, machine, holes: [MOUNTING], checks: [],
  setups: [setUpOf(tilingAt({ width: 800, height: 400 }, [], []), 0)],
};

const sheetsIn = (setups: number, programs = 1): SheetsJob => {
  const tiling = tilingAt(stock, Array.from({ length: setups - 1 }, (_, i) => (stock.width * (i + 1)) / setups), []);
  return { ...plain, stock, tiling, setups: tiling.tiles.map((_, i) => setUpOf(tiling, i, programs)) };
};

describe('a sheet of 2400 mm in three set-ups with pins, screws and supports', () => {
  const job = benchJob();
  const paper: SheetsJob = { ...job, paper: 'A4', name: 'Market hall', notes: 'Goes to the north wall.', holes: job.holes.flat(), checks: job.checks.flat() };
  let pages: PdfPage[], letter: PdfPage[];
  beforeAll(async () => {
    pages = await readPdf(setUpSheets(paper));
    letter = await readPdf(setUpSheets({ ...paper, paper: 'US Letter' }));
  });

  it('is a cover and one page for each set-up, in both papers', () => {
    expect([pages.length, letter.length]).toEqual([4, 4]);
  });

  it('has pages of ISO 216 A4 and of 8 1/2 by 11 inches', () => {
    // ISO 216: A4 is 210 x 297 mm. US Letter: 612 x 792 points.
    for (const { width, height } of pages) expect([width, height].sort((a, b) => a - b)).toEqual([expect.closeTo(210 / POINT, 2), expect.closeTo(297 / POINT, 2)]);
    for (const { width, height } of letter) expect([width, height].sort((a, b) => a - b)).toEqual([expect.closeTo(612, 2), expect.closeTo(792, 2)]);
  });

  it('names every program in its order, with its minutes, on the cover and on its set-up\'s page', () => {
    job.setups.forEach(({ programs }, i) => {
      for (const page of [pages[0]!, pages[i + 1]!]) {
        const places = programs.map(({ file }) => page.words.indexOf(file));
        expect(places.every((place, k) => place > (places[k - 1] ?? -1)), String(places)).toBe(true);
        for (const { minutes } of programs) expect(page.words).toContain(minutes.toFixed(1));
      }
    });
    expect(pages[0]!.words.indexOf('programs/spoilboard-pins.ngc')).toBeLessThan(pages[0]!.words.indexOf('programs/set-up-1'));
    const total = job.setups.flatMap(({ programs }) => programs).reduce((sum, { minutes }) => sum + minutes, 0);
    expect(pages[0]!.words).toContain(`Machine time ${total.toFixed(1)} min`);
  });

  it('says how the sheet moves, and on which pins it comes to lie', () => {
    job.setups.slice(1).forEach(({ shift }, i) => {
      const words = pages[i + 2]!.words;
      expect(words).toContain(`Move the sheet ${shift[0] - job.setups[i]!.shift[0]} mm to the left onto pins 1 and 2. X0 Y0 stays where it is.`);
      expect(words).toContain(`sheet's edge to X0: ${shift[0]}`);
      job.registration.pins.forEach(({ at }, pin) => { expect(words).toContain(`pin ${pin + 1}: X ${at.x}, Y ${at.y}`); });
    });
    expect(pages[1]!.words).toContain('Pins 1 and 2 are out of the spoilboard.');
  });

  it('gives the places of dowel holes, screws and supports as the programs count', () => {
    job.tiling.tiles.forEach(({ shift }, place) => {
      const cells = pages[place + 1]!.texts.map(({ text }) => text);
      const places = [
        ...job.registration.dowels.filter(({ drilledIn }) => drilledIn === place).map(({ hole }) => hole.centre),
        ...job.holding.holdDowns.filter(({ setUps }) => setUps!.includes(place)).map(({ at }) => at),
      ];
      expect(places.length).toBeGreaterThan(3);
      for (const { x, y } of places) expect(cells).toEqual(expect.arrayContaining([String(Math.round((x - shift[0]) * 100) / 100), String(Math.round((y - shift[1]) * 100) / 100)]));
    });
    expect(pages[1]!.words).toMatch(/On 2 supports as high as the spoilboard/);
    expect(pages[1]!.words).toContain('The sheet tips over the right edge of the bed.');
  });

  it('draws to the scale that it says', () => {
    for (const page of [...pages, ...letter]) {
      const scale = Number(/(?:Drawing )?1:(\d+)/.exec(page.words)![1]);
      const across = page.lines.filter((line) => Math.abs(lengthOf(line) - stock.width / scale) < 0.001 && line.from[1] === line.to[1]);
      const up = page.lines.filter((line) => Math.abs(lengthOf(line) - stock.height / scale) < 0.001 && line.from[0] === line.to[0]);
      expect(across.length).toBeGreaterThanOrEqual(2);
      expect(up.length).toBeGreaterThanOrEqual(2);
    }
  });

  it('draws dimensions as long as they say', () => {
    for (const page of pages.slice(1)) {
      const scale = Number(/Drawing 1:(\d+)/.exec(page.words)![1]);
      const figures = page.texts.flatMap(({ text, x, y }) => (/^(?:sheet|sheet's edge to X0:|support \d+:) [\d.]+$/.test(text) ? [{ mm: Number(/[\d.]+$/.exec(text)![0]), x, y }] : []));
      expect(figures.length).toBeGreaterThanOrEqual(3);
      // The line that a figure belongs to is the one level or upright line near it that is as long.
      for (const { mm, x, y } of figures)
        expect(page.lines.some((line) => Math.abs(lengthOf(line) - mm / scale) < 0.03 / scale + 0.001 && nearLine(line, x, y)), String(mm)).toBe(true);
    }
  });

  it('writes nothing smaller than 8 points and nothing beyond the paper\'s edge', () => {
    for (const { texts, width } of [...pages, ...letter]) {
      expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThanOrEqual(7.99);
      expect(Math.min(...texts.map(({ x }) => x))).toBeGreaterThan(5);
      expect(Math.max(...texts.map(({ x }) => x))).toBeLessThan(width * POINT - 5);
      expect(Math.min(...texts.map(({ y }) => y))).toBeGreaterThan(5);
    }
  });

  it('is the same file each time, whatever the day', () => {
    vi.useFakeTimers({ now: new Date('2031-05-06') });
    const first = setUpSheets(paper);
    vi.setSystemTime(new Date('2042-11-12'));
    expect(setUpSheets(structuredClone(paper))).toBe(first);
    vi.useRealTimers();
  });

  it('tells a correction', async () => {
    const setups = job.setups.map((setup, i) => (i === 1 ? { ...setup, correction: { degrees: 0.0123, shift: [0.5, -0.3] as const } } : setup));
    const words = (await readPdf(setUpSheets({ ...paper, setups }))).map((page) => page.words);
    expect(words.map((one) => one.includes('turned by 0.0123°'))).toEqual([false, false, true, false]);
  });
});

describe('checks', () => {
  it('mark every page as a draft when one failed, and say which', async () => {
    const pages = await readPdf(setUpSheets({ ...plain, checks: [{ status: 'fail', says: 'The cutter hits a screw.' }, { status: 'caution', says: 'Thin wall.' }, { status: 'pass', says: 'Fine.' }] }));
    for (const { words } of pages) expect(words).toContain('DRAFT: 1 check failed. Do not cut from these sheets.');
    for (const says of ['The cutter hits a screw.', 'Thin wall.', '1 other check passed.']) expect(pages[0]!.words).toContain(says);
  });

  it('leave no draft mark when all passed, and are missed when there are none', async () => {
    const [passed] = await readPdf(setUpSheets({ ...plain, checks: [{ status: 'pass', says: 'Fine.' }, { status: 'pass', says: 'Good.' }] }));
    expect(passed!.words).toContain('All 2 checks passed.');
    expect(passed!.words).not.toContain('DRAFT');
    expect((await readPdf(setUpSheets(plain)))[0]!.words).toContain('No checks came with these sheets');
  });
});

describe('unusual work', () => {
  it('needs no pins and no tiling for one set-up', async () => {
    const pages = await readPdf(setUpSheets(plain));
    expect(pages.length).toBe(2);
    expect(pages[1]!.words).toContain('Lay the sheet with its lower left corner at X0 Y0');
    expect(pages.map(({ words }) => words).join()).not.toMatch(/pin \d|spoilboard-pins|seam/);
  });

  it('warns where a sheet moves without pins', async () => {
    const [, , second] = await readPdf(setUpSheets(sheetsIn(3)));
    expect(second!.words).toContain('against your stops');
    expect(second!.words).toContain('No pins are planned');
  });

  it('makes a page for each of a hundred set-ups', async () => {
    const pages = await readPdf(setUpSheets(sheetsIn(100)));
    for (let i = 1; i <= 100; i++) expect(pages.some(({ words }) => words.includes(`Set-up ${i} of 100:`) && words.includes(`programs/set-up-${i}-cutter-1.ngc`)), `set-up ${i}`).toBe(true);
    expect(pages.at(-1)!.words).toContain(`page ${pages.length} of ${pages.length}`);
  });

  it('goes on over pages where programs are too many for one, with nothing lost', async () => {
    const pages = await readPdf(setUpSheets(sheetsIn(1, 120)));
    const words = pages.slice(1).map((page) => page.words).join(' ');
    for (let k = 1; k <= 120; k++) expect(words).toContain(`cutter-${k}.ngc`);
    expect(words).toContain('continued');
    expect(words).toContain('Before you start');
  });

  it('keeps umlauts, marks what its typeface lacks, and breaks names that are too long', async () => {
    const long = 'Überlanger Name '.repeat(4).trim();
    const [cover, page] = await readPdf(setUpSheets({ ...plain, name: long, notes: 'Größe – „geprüft“ … 字\n\nzweitens', setups: [{ ...plain.setups[0]!, programs: [{ ...plain.setups[0]!.programs[0]!, cutter: { ...cutter, name: 'W'.repeat(80) } }] }] }));
    expect(cover!.words).toContain('Größe – „geprüft“ … ?');
    expect(cover!.words).toContain('zweitens');
    expect(page!.words.replace(/\s+/g, ' ')).toContain(long);
    const cutters = page!.texts.filter(({ text }) => /^W+$/.test(text));
    expect(cutters.filter(({ x }) => x === cutters[0]!.x).map(({ text }) => text).join('')).toBe('W'.repeat(80));
  });

  it('takes a sheet that is higher than wide and set-ups both ways', async () => {
    const tall = { ...stock, width: 1400, height: 2600 };
    const tiling = tilingAt(tall, [700], [600, 1200, 1900]);
    const pages = await readPdf(setUpSheets({ ...plain, stock: tall, tiling, board: rectangle(50, 50, 1300, 2500), setups: tiling.tiles.map((_, i) => setUpOf(tiling, i)) }));
    expect(pages.length).toBeGreaterThanOrEqual(9);
    expect(pages.map(({ words }) => words).join(' ')).toMatch(/away from you|towards you/);
  });
});
