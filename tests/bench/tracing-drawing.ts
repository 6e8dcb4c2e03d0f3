import { pathEnd, type Path, type Point, samplePath } from '../../src/geometry/index.ts';
import type { Tracing } from '../../src/lettering/index.ts';

/** A part of a drawing, mm, y up. */
export interface Frame {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

/** A piece of SVG with the room it takes, in pixels. */
export interface Panel {
  readonly width: number;
  readonly height: number;
  readonly svg: string;
}

/** Strokes next to each other in number differ in colour and in dashes, so that either alone tells them apart. */
const INKS = ['#c2185b', '#00695c', '#1a4fb4', '#a04a00', '#6a1b9a', '#2e7d32', '#00838f', '#5d4037'] as const;
const DASHES = ['none', '9 3', '3 3', '12 3 3 3'] as const;

const number = (value: number) => value.toFixed(2);
const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** A tracing seen through a frame: outlines grey, strokes in inks and dashes of their own, starts as discs, ends as rings, doubts as squares. */
export function tracingPanel({ strokes, outlines, regions }: Tracing, frame: Frame, scale: number, says: string): Panel {
  const [width, height] = [frame.width * scale, frame.height * scale];
  const place = ({ x, y }: Point): Point => ({ x: (x - frame.left) * scale, y: height - (y - frame.bottom) * scale });
  const at = (point: Point) => { const { x, y } = place(point); return `${number(x)} ${number(y)}`; };
  const data = (path: Path) => `M${at(path.start)}${path.segments.map((segment) =>
    (segment.kind === 'cubic' ? `C${at(segment.control1)} ${at(segment.control2)} ${at(segment.end)}` : `L${at(segment.end)}`)).join('')}${path.closed ? 'Z' : ''}`;
  const disc = (point: Point, radius: number, style: string) => { const { x, y } = place(point); return `<circle cx="${number(x)}" cy="${number(y)}" r="${radius}" ${style}/>`; };
  const square = (point: Point, style: string) => { const { x, y } = place(point); return `<rect x="${number(x - 5)}" y="${number(y - 5)}" width="10" height="10" ${style}/>`; };
  const filled = outlines.map(({ paths, fillRule }) => `<path d="${paths.map(data).join('')}" fill="#ccc" fill-rule="${fillRule}"/>`);
  const solid = regions.map(({ at: middle }) => square(middle, 'fill="black"'));
  const lines = strokes.map(({ path }, i) => `<path d="${data(path)}" fill="none" stroke="${inkOf(i)}" stroke-width="2.4" stroke-dasharray="${dashOf(i)}"/>`);
  const tips = strokes.flatMap(({ path }, i) => [
    disc(path.start, 3.6, `fill="${inkOf(i)}"`), ...(path.closed ? [] : [disc(pathEnd(path), 3.6, `fill="white" stroke="${inkOf(i)}" stroke-width="1.5"`)]),
  ]);
  const numbers = strokes.length < 2 ? [] : strokes.map(({ path }, i) => {
    const samples = samplePath(path, 5);
    const { x, y } = place(samples[samples.length >> 1]!.point);
    return `<text x="${number(x + 4)}" y="${number(y - 4)}" font-size="11" fill="${inkOf(i)}">${i + 1}</text>`;
  });
  const doubts = strokes.flatMap((stroke) => stroke.doubts.map((doubt) => square(doubt.at, 'fill="none" stroke="black" stroke-width="1.2"')));
  const body = [...filled, ...solid, ...lines, ...tips, ...numbers, ...doubts].join('\n');
  return { width, height: height + 18, svg: `<svg width="${number(width)}" height="${number(height)}" y="18">${body}</svg><text x="4" y="13" font-size="12">${escaped(says)}</text>` };
}

const inkOf = (stroke: number) => INKS[stroke % INKS.length]!;
const dashOf = (stroke: number) => DASHES[stroke % DASHES.length]!;

/** Panels in rows as wide as a page, one after another. */
export function pageOf(panels: readonly Panel[], pageWidth: number): string {
  let [x, y, tallest, right] = [0, 0, 0, 0];
  const placed = panels.map(({ width, height, svg }) => {
    if (x > 0 && x + width > pageWidth) [x, y, tallest] = [0, y + tallest, 0];
    const here = `<svg x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}"><rect width="100%" height="100%" fill="none" stroke="#999"/>${svg}</svg>`;
    [x, tallest] = [x + width, Math.max(tallest, height)];
    right = Math.max(right, x);
    return here;
  });
  const [width, height] = [number(right), number(y + tallest)];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif"><rect width="100%" height="100%" fill="white"/>\n${placed.join('\n')}\n</svg>\n`;
}
