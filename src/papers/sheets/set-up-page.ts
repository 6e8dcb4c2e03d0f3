import { carriedSag, type Dowel, millimetres, type Program, type SideOverhang } from '../../machining/index.ts';
import { entry, heading, paragraph, table } from '../blocks.ts';
import { type Book, innerWidth } from '../book.ts';
import { type Block, flow, turnPage } from '../flow.ts';
import { EDGE } from '../paper.ts';
import { ascent, leading, wrapped, write } from '../pen.ts';
import { capital, counted, duration, hundredths, listed, tenths } from '../words.ts';
import { beforeStart } from './checklist.ts';
import { drawLegend } from './legend.ts';
import { drawHead } from './page.ts';
import { drawSetUp, holdDownsIn, placingWords, supportsIn } from './set-up-drawing.ts';
import { setupMinutes, type Turn, type Work } from './work.ts';

/** The page of one set-up, and what does not fit on it on the next. */
export function writeSetUp(book: Book, work: Work, turn: Turn, scale: number): void {
  const title = `Set-up ${turn.number} of ${work.tiling.tiles.length}: ${work.name}`;
  let y = drawHead(book, work, title);
  y = drawInstruction(book, placingWords(work, turn), y);
  y = drawSetUp(book, work, turn, { scale, top: y });
  y = drawLegend(book, work, turn, { top: y, scale });
  const nextPage = () => {
    turnPage(book);
    return drawHead(book, work, `${title}, continued`);
  };
  y = flow(book, [heading(`Run in this order: ${duration(setupMinutes(turn.setup))} in all`), programTable(turn.setup.programs)], { columns: 1, top: y + 1.5, nextPage });
  flow(book, [...beforeStart(work, turn), ...correctionBlocks(turn), ...pinBlocks(work, turn), ...holdDownBlocks(work, turn), ...overhangBlocks(work, turn)], { columns: 2, top: y + 2, nextPage });
}

function drawInstruction(book: Book, text: string, y: number): number {
  const size = 11.5;
  const lines = wrapped(book, text, innerWidth(book), { size, bold: true });
  lines.forEach((line, i) => { write(book, line, { x: EDGE, y: y + ascent(size) + i * leading(size) }, { size, bold: true }); });
  return y + lines.length * leading(size) + 1;
}

const programTable = (programs: readonly Program[]): Block => table(
  [
    { title: 'program', share: 56 }, { title: 'cutter', share: 30 }, { title: 'ø mm', share: 13, align: 'right' }, { title: 'spindle 1/min', share: 23, align: 'right' }, { title: 'feed up to mm/min', share: 21, align: 'right' },
    { title: 'plunge mm/min', share: 24, align: 'right' }, { title: 'deepest Z', share: 18, align: 'right' }, { title: 'minutes', share: 15, align: 'right' },
  ],
  programs.map(({ file, cutter, reach, minutes, moves }) => {
    const feeds = moves.flatMap((move) => (move.kind === 'rapid' ? [] : [move.feed]));
    return [
      file, cutter.name, hundredths(cutter.diameter), String(cutter.spindleSpeed), String(Math.round(Math.max(0, ...feeds))), String(Math.round(cutter.plungeFeed)), hundredths(reach.min.z), minutes.toFixed(1),
    ];
  }),
  true,
);

function correctionBlocks({ setup: { correction } }: Turn): Block[] {
  if (!correction) return [];
  const { degrees, shift } = correction;
  return [
    heading('Correction'),
    paragraph(`The programs of this set-up are turned by ${millimetres(degrees, 4)}° counter-clockwise about X0 Y0 and shifted by X ${millimetres(shift[0], 3)}, Y ${millimetres(shift[1], 3)} mm, as the pins were measured. The drawing shows the places as planned.`),
  ];
}

function pinBlocks(work: Work, { place, tile: { shift } }: Turn): Block[] {
  const { pins = [], dowels = [] } = work.registration ?? {};
  const on = dowels.filter(({ usedIn }) => usedIn === place).map((dowel): readonly string[] => {
    const { at, diameter } = pins[dowel.pin]!;
    return [`lies on pin ${dowel.pin + 1}, ø ${hundredths(diameter)}`, hundredths(at.x), hundredths(at.y), shapeOf(dowel)];
  });
  const drilled = dowels.filter(({ drilledIn }) => drilledIn === place).map((dowel): readonly string[] => [
    `drilled for pin ${dowel.pin + 1}, set-up ${dowel.usedIn + 1}`, hundredths(dowel.hole.centre.x - shift[0]), hundredths(dowel.hole.centre.y - shift[1]), shapeOf(dowel),
  ]);
  if (on.length + drilled.length === 0) return [];
  return [
    heading('Pins and dowel holes'),
    table([{ title: 'hole', share: 38 }, { title: 'X', share: 14, align: 'right' }, { title: 'Y', share: 14, align: 'right' }, { title: 'shape', share: 34 }], [...on, ...drilled]),
  ];
}

const shapeOf = ({ hole: { diameter, slot } }: Dowel): string =>
  (slot ? `slot ${hundredths(diameter)} x ${hundredths(diameter + slot.length)}, ${tenths(slot.angle)}°` : `round ø ${hundredths(diameter)}`);

function holdDownBlocks(work: Work, { place, tile: { shift } }: Turn): Block[] {
  const downs = holdDownsIn(work, place);
  const alike = new Map<string, typeof downs>();
  for (const one of downs) {
    const kind = `${capital(one.kind)}s: keep-out disc ø ${tenths(one.keepOut)}, ${tenths(one.height)} high`;
    alike.set(kind, [...(alike.get(kind) ?? []), one]);
  }
  const column = [{ title: 'no.', share: 9 }, { title: 'X', share: 15, align: 'right' as const }, { title: 'Y', share: 15, align: 'right' as const }, { title: '', share: 6 }];
  return [...alike].flatMap(([kind, ones]) => {
    const cells = ones.map(({ number, at }) => [String(number), tenths(at.x - shift[0]), tenths(at.y - shift[1]), '']);
    const half = Math.ceil(cells.length / 2);
    return [heading(kind), table([...column, ...column], cells.slice(0, half).map((one, i) => [...one, ...(cells[half + i] ?? [])]))];
  });
}

function overhangBlocks(work: Work, { place }: Turn): Block[] {
  const hangs = work.hangs.filter(({ setUp }) => setUp === place);
  const supports = supportsIn(work, place);
  if (hangs.length === 0) return [];
  return [
    heading('Overhang'),
    ...hangs.flatMap((hang) => hangBlocks(hang, supports.filter(({ side }) => side === hang.side), work)),
    paragraph('Figures of the first minutes: acrylic creeps and sags further within hours.', { size: 8 }),
  ];
}

function hangBlocks(hang: SideOverhang, supports: ReturnType<typeof supportsIn>, { holding }: Work): Block[] {
  const { side, beyond, free, tips } = hang;
  const alone = `Free: sags ${tenths(free.tip)} mm, slopes ${tenths(free.slope)}°, lifts ${tenths(free.lift)} mm behind the edge.`;
  const bars = supports.length > 0
    ? `On ${counted(supports.length, 'support')} as high as the spoilboard, ${listed(supports.map(({ distance }) => tenths(distance)))} mm from the bed's edge: sags ${tenths(carriedSag(hang, holding.supports))} mm.`
    : 'No support is planned on this side.';
  return [
    entry('–', `${capital(SIDE_WORDS[side])}: ${tenths(beyond)} mm beyond the bed. ${alone} ${bars}`),
    ...(tips ? [entry('!', `The sheet tips over the ${SIDE_WORDS[side]} edge of the bed. Stand supports there first, and lay it on with a helper at its far end.`, { size: 9, bold: true })] : []),
  ];
}

const SIDE_WORDS = { left: 'left', right: 'right', front: 'front', back: 'back' } as const;
