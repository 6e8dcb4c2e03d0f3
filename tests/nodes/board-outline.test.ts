import { expect, it } from 'vitest';
import boardOutline from '../../nodes/board-outline.ts';
import { type Path, applyToPath, makeRegionIndex, offsetRegion, regionArea, regionBounds, rotation, subtractRegion, unionRegions } from '../../src/geometry/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line, rectangle } from '../support/shapes.ts';

const ROUND = { join: 'round', miterLimit: 2, tolerance: 0.005 } as const;
const two = unionRegions([rectangle(100, 100, 80, 80), rectangle(260, 100, 80, 80)]);

it('keeps the margin everywhere', () => {
  const { board } = outputsOf(boardOutline, { region: two, drawn: undefined }, { margin: 40, bayRadius: 60 });
  const index = makeRegionIndex(board);
  expect(Math.min(...two.loops.flat().map((point) => index.distanceToBoundary(point)))).toBeCloseTo(40, 1);
  expect(regionArea(subtractRegion(two, board))).toBe(0);
});

// Closing by a disc changes nothing where every bay is wider than the disc, opening where every bulge is (Serra, Image Analysis
// and Mathematical Morphology, 1982).
it('smooths bays to their least radius and bulges to the margin', () => {
  const { board } = outputsOf(boardOutline, { region: two, drawn: undefined }, { margin: 45, bayRadius: 60 });
  const by = (distance: number) => offsetRegion(offsetRegion(board, distance, ROUND), -distance, ROUND);
  expect(board.loops).toHaveLength(1);
  expect(Math.abs(regionArea(by(59.5)) - regionArea(board))).toBeLessThan(5);
  expect(Math.abs(regionArea(by(-44.5)) - regionArea(board))).toBeLessThan(5);
  expect(regionArea(by(80)) - regionArea(board)).toBeGreaterThan(20);
});

// Rectangle with rounded corners: area w h - (4 - pi) r^2 (elementary geometry).
it('draws a rectangle with rounded corners', () => {
  const { board } = outputsOf(boardOutline, { region: two, drawn: undefined }, { shape: 'rectangle', margin: 30, cornerRadius: 20 });
  expect(regionBounds(board)).toEqual({ minX: 70, minY: 70, maxX: 370, maxY: 210 });
  expect(regionArea(board)).toBeCloseTo(300 * 140 - (4 - Math.PI) * 400, -1);
});

it('limits the corner radius to half the shorter side', () => {
  const { board } = outputsOf(boardOutline, { region: rectangle(0, 0, 100, 10), drawn: undefined }, { shape: 'rectangle', margin: 5, cornerRadius: 500 });
  expect(regionArea(board)).toBeCloseTo(90 * 20 + Math.PI * 100, -1);
});

it('refuses a contour that falls into several boards, and no groove at all', () => {
  expect(problemsOf(boardOutline, { region: two, drawn: undefined }, { margin: 10, bayRadius: 5 })[0]).toMatchObject({ place: 'margin', found: '2 separate boards' });
  expect(problemsOf(boardOutline, { region: { loops: [] }, drawn: undefined })[0]).toMatchObject({ found: 'no groove to draw a board around' });
});

it('fills the holes of what it carries', () => {
  const ring = subtractRegion(rectangle(0, 0, 300, 300), rectangle(100, 100, 100, 100));
  expect(outputsOf(boardOutline, { region: ring, drawn: undefined }, { margin: 10, bayRadius: 0 }).board.loops).toHaveLength(1);
});

const inside = rectangle(60, 60, 40, 20);
const drawn = (...paths: readonly Path[]) => [{ paths, fillRule: 'nonzero' as const }];

// Areas by elementary geometry.
it('takes a drawn outline, and what is drawn inside it as cut-outs', () => {
  const square = { ...line([0, 0], [300, 0], [300, 200], [0, 200], [0, 0]), closed: true };
  const { board } = outputsOf(boardOutline, { region: inside, drawn: [...drawn(square), ...drawn(circle(220, 100, 30))] }, { shape: 'drawn' });
  expect(board.loops).toHaveLength(2);
  expect(regionArea(board)).toBeCloseTo(300 * 200 - Math.PI * 900, 0);
  const turned = outputsOf(boardOutline, { region: inside, drawn: drawn(...[square, circle(220, 100, 30)].map((path) => applyToPath(rotation(40), path))) }, { shape: 'drawn' });
  expect(regionArea(turned.board)).toBeCloseTo(regionArea(board), 0);
});

it('refuses a drawing with no outline, or with two beside each other', () => {
  expect(problemsOf(boardOutline, { region: inside, drawn: undefined }, { shape: 'drawn' })[0]).toMatchObject({ place: 'drawn', found: 'none' });
  expect(problemsOf(boardOutline, { region: inside, drawn: drawn(circle(0, 0, 50), circle(200, 0, 50)) }, { shape: 'drawn' })[0]).toMatchObject({ place: 'drawn', found: '2 that lie beside each other' });
});
