import { describe, expect, it } from 'vitest';
import { distance, type Loop, makeRegionIndex, type Point, type Region } from '../../src/geometry/index.ts';
import { sampleBoundary } from '../../src/lettering/boundary.ts';
import { type MedialGraph, medialGraph } from '../../src/lettering/medial.ts';
import { peel } from '../../src/lettering/peel.ts';
import { branchesOf, dropBulges, openSlots } from '../../src/lettering/skeleton.ts';
import { trackLength, trackOf } from '../../src/lettering/track.ts';

// Exact axes: H. Blum 1967 (maximal discs) and elementary geometry; the worked numbers are our own, from closed forms.

const at = (x: number, y: number): Point => ({ x, y });
const region = (...loops: Loop[]): Region => ({ loops });
const box = (a: number, b: number): Region => region([at(-a / 2, -b / 2), at(a / 2, -b / 2), at(a / 2, b / 2), at(-a / 2, b / 2)]);
const round = (rx: number, ry: number, count = 720): Loop => Array.from({ length: count }, (_, i) => at(rx * Math.cos((2 * Math.PI * i) / count), ry * Math.sin((2 * Math.PI * i) / count)));
const turned = ({ loops }: Region, angle: number): Region => ({
  loops: loops.map((loop) => loop.map(({ x, y }) => at(x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)))),
});

const graphOf = (shape: Region, step: number): MedialGraph => medialGraph(sampleBoundary(shape, step));
const nodesOf = ({ x, y, radius }: MedialGraph, alive: Uint8Array) => [...alive.keys()].filter((i) => alive[i]).map((i) => ({ x: x[i]!, y: y[i]!, radius: radius[i]! }));
const peeled = (shape: Region, step: number) => {
  const graph = graphOf(shape, step);
  const alive = dropBulges(graph, peel(graph));
  return { graph, alive, nodes: nodesOf(graph, alive), branches: branchesOf(graph, alive) };
};
const lengthOf = ({ graph, branches }: ReturnType<typeof peeled>) => branches.reduce((sum, branch) => sum + trackLength(trackOf(graph, branch)), 0);
const wholly = (graph: MedialGraph) => new Uint8Array(graph.x.length).fill(1);

describe('the axes of shapes whose axis is known', () => {
  it('a rectangle of 100 by 40: 60 mm of radius 20, whichever way it lies', () => {
    for (const angle of [0, 0.3, 1.1, Math.PI / 2]) {
      const found = peeled(turned(box(100, 40), angle), 2);
      expect(found.branches.length).toBe(1);
      expect(lengthOf(found)).toBeCloseTo(60, 0);
      for (const { radius } of found.nodes) expect(Math.abs(radius - 20)).toBeLessThan(0.03);
    }
  });

  it('an ellipse of half-axes 50 and 20: 42 mm either way, radius 20 in the middle, 17.995 at 20 mm, 8 at the end', () => {
    const graph = graphOf(region(round(50, 20)), 1);
    const inner = nodesOf(graph, wholly(graph)).filter(({ x }) => Math.abs(x) < 41.5);
    for (const { x, y, radius } of inner.filter((node) => Math.abs(node.y) < 0.2)) {
      expect(Math.abs(y)).toBeLessThan(0.06);
      expect(Math.abs(radius - 20 * Math.sqrt(1 - (x * x) / 2100))).toBeLessThan(0.03);
    }
    const near = (place: number) => inner.reduce((best, node) => (Math.abs(node.x - place) < Math.abs(best.x - place) ? node : best));
    expect(near(0).radius).toBeCloseTo(20, 1);
    expect(near(20).radius).toBeCloseTo(17.995, 1);
    expect(Math.max(...nodesOf(graph, wholly(graph)).filter(({ radius }) => radius > 7.9).map(({ x }) => x))).toBeCloseTo(42, 0);
  });

  it('a stadium of length 100 and radius 20: its straight middle, and no more', () => {
    const arc = (x: number, from: number): Point[] => Array.from({ length: 91 }, (_, i) => at(x + 20 * Math.cos(from + (Math.PI * i) / 90), 20 * Math.sin(from + (Math.PI * i) / 90)));
    const found = peeled(region([...arc(50, -Math.PI / 2), ...arc(-50, Math.PI / 2)]), 2);
    expect(found.branches.length).toBe(1);
    expect(lengthOf(found)).toBeGreaterThan(98);
    for (const { x, y, radius } of found.nodes) expect([Math.abs(x) < 50.2, Math.abs(y) < 0.05, Math.abs(radius - 20) < 0.05]).toEqual([true, true, true]);
  });

  it('an annulus of radii 50 and 40: one ring of radius 45, discs of 5', () => {
    const found = peeled(region(round(50, 50), [...round(40, 40)].reverse()), 1);
    expect(found.branches.length).toBe(1);
    expect(found.branches[0]!.nodes[0]).toBe(found.branches[0]!.nodes.at(-1));
    expect(lengthOf(found)).toBeCloseTo(2 * Math.PI * 45, 0);
    for (const { x, y, radius } of found.nodes) expect([Math.abs(Math.hypot(x, y) - 45) < 0.03, Math.abs(radius - 5) < 0.03]).toEqual([true, true]);
  });

  it('an equilateral triangle of side 60: three arms of 34.641 from the centre of the inscribed circle of 17.321', () => {
    const triangle = region([at(0, 0), at(60, 0), at(30, 30 * Math.sqrt(3))]);
    const graph = graphOf(triangle, 0.5);
    const all = wholly(graph);
    const nodes = nodesOf(graph, all);
    expect(Math.max(...nodes.map(({ radius }) => radius))).toBeCloseTo(60 / (2 * Math.sqrt(3)), 2);
    const length = branchesOf(graph, all).reduce((sum, branch) => sum + trackLength(trackOf(graph, branch)), 0);
    expect(length).toBeGreaterThan(103.92 - 3);
    expect(length).toBeLessThan(103.93);
  });

  it('a wedge of half-angle 30 degrees: radius 20 at 40 mm from the tip', () => {
    const graph = graphOf(region([at(0, 0), at(200 * Math.cos(Math.PI / 6), -100), at(200 * Math.cos(Math.PI / 6), 100)]), 1);
    const node = nodesOf(graph, wholly(graph)).filter(({ y }) => Math.abs(y) < 0.05).reduce((best, other) => (Math.abs(other.x - 40) < Math.abs(best.x - 40) ? other : best));
    expect(node.radius / node.x).toBeCloseTo(0.5, 3);
  });

  it('inside y = 0.02 x^2 the axis begins at the centre of curvature, 25 mm up', () => {
    const curve = Array.from({ length: 241 }, (_, i) => at((i - 120) / 2, 0.02 * ((i - 120) / 2) ** 2));
    const graph = graphOf(region([...curve, at(60, 200), at(-60, 200)]), 0.5);
    const onAxis = nodesOf(graph, peel(graph)).filter(({ x, y }) => Math.abs(x) < 0.1 && y < 60);
    expect(Math.min(...onAxis.map(({ y }) => y))).toBeGreaterThan(24.9);
    for (const { y, radius } of onAxis) expect(radius).toBeCloseTo(Math.sqrt(y / 0.02 - 25 ** 2), 1);
  });

  it('a line and a corner that juts in: the parabola between them, y = 10 at x = 10 for p = 10', () => {
    // The line y = 0 below, the jutting corner at (0, 10).
    const graph = graphOf(region([at(-80, 0), at(80, 0), at(80, 90), at(2, 90), at(0, 10), at(-2, 90), at(-80, 90)]), 0.4);
    const near = nodesOf(graph, wholly(graph)).filter(({ x, y }) => Math.abs(x) < 9 && y < 10);
    expect(near.length).toBeGreaterThan(10);
    for (const { x, y } of near.filter((node) => node.y > 4)) expect(Math.abs(y - (x * x) / 20 - 5)).toBeLessThan(0.05);
  });
});

describe('what holds for any shape', () => {
  const comb = region([at(0, 0), at(90, 0), at(90, 60), at(80, 60), at(80, 10), at(50, 10), at(50, 60), at(40, 60), at(40, 10), at(10, 10), at(10, 60), at(0, 60)]);
  const frame = region([at(0, 0), at(90, 0), at(90, 60), at(0, 60)], [at(10, 10), at(10, 50), at(40, 50), at(40, 10)], [at(50, 10), at(50, 50), at(80, 50), at(80, 10)]);

  it.each([['comb', comb, 0], ['frame of two windows', frame, 2]])('%s: connected, and one ring for each hole, before and after peeling', (_, shape, holes) => {
    const graph = graphOf(shape, 1);
    for (const alive of [wholly(graph), peel(graph), dropBulges(graph, peel(graph))]) {
      const nodes = [...alive.keys()].filter((node) => alive[node]);
      const edges = nodes.reduce((sum, node) => sum + openSlots(graph, alive, node).length, 0) / 2;
      expect(1 - nodes.length + edges).toBe(holes);
    }
  });

  it('every disc touches the outline and none reaches out of it', () => {
    const graph = graphOf(comb, 1);
    const index = makeRegionIndex(comb);
    for (const { x, y, radius } of nodesOf(graph, wholly(graph)).filter((node) => node.radius > 1)) expect(Math.abs(index.distanceToBoundary(at(x, y)) - radius)).toBeLessThan(0.13);
  });

  it('the discs together give the shape back', () => {
    const graph = graphOf(comb, 1);
    const discs = nodesOf(graph, wholly(graph));
    for (const place of [at(5, 58), at(45, 30), at(88, 3), at(25, 5), at(1, 1)]) expect(discs.some((disc) => distance(place, disc) <= disc.radius + 0.3)).toBe(true);
    for (const place of [at(25, 30), at(65, 50), at(-2, 5)]) expect(discs.some((disc) => distance(place, disc) <= disc.radius - 0.3)).toBe(false);
  });

  it('peeling keeps a stem\'s foot that sticks out by three quarters of its width', () => {
    const foot = region([at(0, 0), at(10, 0), at(10, 7.5), at(60, 7.5), at(60, 17.5), at(10, 17.5), at(10, 80), at(0, 80)]);
    const { nodes } = peeled(foot, 0.8);
    expect(Math.min(...nodes.filter(({ x }) => x < 6).map(({ y }) => y))).toBeLessThan(6.5);
  });

  it('gives one node at least, for a square and for a disc', () => {
    expect(peeled(box(10, 10), 0.5).nodes.length).toBeGreaterThan(0);
    expect(peeled(region(round(10, 10, 200)), 0.5).nodes.length).toBeGreaterThan(0);
  });
});
