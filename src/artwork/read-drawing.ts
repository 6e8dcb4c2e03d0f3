import { Cascade } from './cascade.ts';
import { Cautions } from './cautions.ts';
import { type DrawingResult } from './drawing.ts';
import { MM_PER_PX } from './length.ts';
import { type Limits, DEFAULT_LIMITS } from './limits.ts';
import { type Page, pageToMm, readPage } from './page.ts';
import { type ArtworkProblem } from './problem.ts';
import { type Reading, refuse } from './reading.ts';
import { survey } from './survey.ts';
import { visit } from './walk.ts';
import { type XmlElement, parseXml } from './xml.ts';

export interface ReadOptions {
  readonly limits?: Partial<Limits>;
  /** Greatest deviation, in mm, of the cubics that replace arcs of ellipses. 0.001 unless stated. */
  readonly tolerance?: number;
}

/**
 * Reads an SVG drawing (1.1 and 2) into strokes and outlines: millimetres, y up, origin at the page's lower left corner.
 *
 * What becomes of each subpath, in this order:
 * - A single place that is moved to and not drawn from is left out. A line of no length is a dot: a stroke without segments,
 *   whatever its paint and cap, because a pen would leave a mark there.
 * - With a visible stroke it is a stroke, as wide as drawn (the mean scale times the stated width, one unit unless stated; a
 *   width of zero states none). A filled closed one is an outline as well.
 * - Filled and closed, it belongs to the outline of its element. Where a fill is stated, ends within 0.001 mm count as closed.
 * - Filled and open, it is a stroke without width: drawings made with a pen often state no style, and black is the default.
 *   A stated fill earns a caution.
 * - With neither fill nor stroke it is a stroke without width, open or closed, and earns a caution.
 * Paints of alpha or opacity zero are no paints. Elements of opacity zero, of `display: none` and of `visibility: hidden`
 * are left out.
 *
 * Lines, cubics and circular arcs are kept as they are (arcs become cubics when a transform squeezes them); quadratics become
 * the same cubics. Nothing is clipped, neither to the page nor to a viewport inside it. Of `switch`, the first child without
 * conditions counts. Names of elements and of styles are those of the two standards; other namespaces are not drawn.
 *
 * A page without size is read at 96 units per inch, with a caution; whether it was drawn at 90 or 72 cannot be told.
 * Never throws, and never gives a coordinate that is not finite: faults are problems, doubts are cautions.
 */
export function readDrawing(text: string, options: ReadOptions = {}): DrawingResult {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  const parsed = parseXml(text, limits);
  if (!parsed.ok) return failed(parsed.problem);
  const cautions = new Cautions();
  if (parsed.linksStyle) cautions.add('style', parsed.root, 'a style sheet of another file');
  const { ids, rules } = survey(parsed.root, cautions);
  const reading: Reading = {
    limits, tolerance: options.tolerance ?? 0.001, cautions, cascade: new Cascade(rules, limits), ids, strokes: [], outlines: [],
    used: { elements: 0, points: 0, uses: 0 },
  };
  const page = readPage(parsed.root, reading.cascade.declared(parsed.root), cautions, limits.reach);
  return page.ok ? drawAll(reading, parsed.root, page.page) : failed(page.problem);
}

/** Rounded to a billionth of a millimetre, so that a page of 120 mm is one of 120 mm again. */
const inMm = (px: number): number => Math.round(px * MM_PER_PX * 1e9) / 1e9;

const failed = (problem: ArtworkProblem): DrawingResult => ({ ok: false, problems: [problem] });

function drawAll(reading: Reading, root: XmlElement, page: Page): DrawingResult {
  visit(reading, root, { affine: pageToMm(page), style: {}, width: page.width, height: page.height, chain: undefined }, page);
  if (reading.cascade.exhausted) {
    refuse(reading, root, `at most ${reading.limits.styleSteps} comparisons of style rules with elements`, 'more than that',
      'Simplify the style sheets, or write the style into the shapes.');
  }
  if (reading.problem) return failed(reading.problem);
  const { strokes, outlines, cautions } = reading;
  const size = { width: inMm(page.width), height: inMm(page.height) };
  return { ok: true, drawing: { strokes, outlines, size, cautions: cautions.list() } };
}
