import { mkdirSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { it } from 'vitest';
import { boxOfPoints, flattenPath } from '../../src/geometry/index.ts';
import { type Tracing, traceOutlines } from '../../src/lettering/index.ts';
import { CHARACTERS, CORPUS, type CorpusFace, PHRASES } from '../lettering/faces/corpus.ts';
import { EM, type Face, openFace } from '../lettering/faces/face.ts';
import { penStrokes } from '../lettering/faces/pen-strokes.ts';
import { type Frame, pageOf, type Panel, tracingPanel } from './tracing-drawing.ts';

/** Draws what the tracing makes of every typeface's letters, digits and phrases, to be looked at. FACE=name draws one alone, OUT=folder says where to. */
const only = process.env['FACE'];
const folder = resolve(process.env['OUT'] ?? '.build/tracing');
const trace = (face: Face, text: string): Tracing => traceOutlines(face.set(text).map(({ outline }) => outline), {}, () => undefined);

/** Pixels. */
const CELL = 200, PAGE = 1400, MARGIN_MM = 12, ACROSS_MM = 760;

const HALF = CHARACTERS.length / 2;

function boxOf({ outlines }: Tracing): Frame {
  const { minX, minY, maxX, maxY } = boxOfPoints(outlines.flatMap(({ paths }) => paths.flatMap((path) => flattenPath(path, 0.5))))!;
  return { left: minX - MARGIN_MM, bottom: minY - MARGIN_MM, width: maxX - minX + 2 * MARGIN_MM, height: maxY - minY + 2 * MARGIN_MM };
}

/** One character as large as its cell allows. */
function characterPanel(face: Face, { hand }: CorpusFace, character: string): Panel {
  const tracing = trace(face, character);
  const box = boxOf(tracing);
  const side = Math.max(box.width, box.height);
  const square = { left: box.left - (side - box.width) / 2, bottom: box.bottom - (side - box.height) / 2, width: side, height: side };
  const right = penStrokes(hand, character);
  const says = `${character}: ${tracing.strokes.length}${right.includes(tracing.strokes.length) ? '' : ` NOT ${right.join('/')}`}`;
  return tracingPanel(tracing, square, CELL / side, says);
}

/** A phrase cut across into pieces that overlap by a sixth. */
function phrasePanels(face: Face, phrase: string): Panel[] {
  const tracing = trace(face, phrase);
  const box = boxOf(tracing);
  const pieces = Math.max(1, Math.ceil((box.width - ACROSS_MM / 6) / ((ACROSS_MM * 5) / 6)));
  const step = pieces === 1 ? 0 : (box.width - ACROSS_MM) / (pieces - 1);
  const says = `${phrase}: ${tracing.strokes.length} strokes`;
  return Array.from({ length: pieces }, (_, i) =>
    tracingPanel(tracing, { ...box, left: box.left + i * step, width: ACROSS_MM }, PAGE / ACROSS_MM, pieces === 1 ? says : `${says}, piece ${i + 1} of ${pieces}`));
}

it.each(CORPUS.filter(({ name }) => only === undefined || name === only))('pictures of $name', (entry) => {
  const face = openFace(entry.name, entry.weight);
  mkdirSync(folder, { recursive: true });
  const write = (name: string, panels: readonly Panel[]) => { writeFileSync(resolve(folder, `${entry.name}-${name}.svg`), pageOf(panels, PAGE)); };
  const panels = CHARACTERS.map((character) => characterPanel(face, entry, character));
  write('characters-1', panels.slice(0, HALF));
  write('characters-2', panels.slice(HALF));
  PHRASES.forEach((phrase, i) => { write(`phrase-${i + 1}`, phrasePanels(face, phrase)); });
  console.log(`${entry.name}: ${CHARACTERS.length} characters and ${PHRASES.length} phrases (em of ${EM} mm) drawn into ${folder}`);
}, 600_000);
