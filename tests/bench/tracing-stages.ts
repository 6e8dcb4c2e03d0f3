import type { Outline } from '../../src/artwork/artwork.ts';
import { components, type Path } from '../../src/geometry/index.ts';
import { sampleBoundary, walkOf } from '../../src/lettering/boundary.ts';
import { cleanOutlines } from '../../src/lettering/clean.ts';
import { coursesOf } from '../../src/lettering/course.ts';
import { finishStrokes } from '../../src/lettering/finish.ts';
import { runIn } from '../../src/lettering/joins.ts';
import { knotsOf } from '../../src/lettering/junctions.ts';
import { medialGraph } from '../../src/lettering/medial.ts';
import { peel } from '../../src/lettering/peel.ts';
import { settle } from '../../src/lettering/settle.ts';
import { branchesOf, dropBulges } from '../../src/lettering/skeleton.ts';
import { kindOf } from '../../src/lettering/solid.ts';
import { trackOf } from '../../src/lettering/track.ts';

/** What src/lettering/trace.ts takes; the bench compares results, so a change there shows. */
const STEP = 1 / 12;

/** The tracing taken apart: milliseconds of each stage over all parts, and the paths found of what is strokes. `width` is the lettering's usual width. */
export function stages(outlines: readonly Outline[], tolerance: number, width: number): { readonly times: ReadonlyMap<string, number>; readonly paths: readonly Path[] } {
  const times = new Map<string, number>();
  const timed = <T>(stage: string, act: () => T): T => {
    const started = performance.now();
    const result = act();
    times.set(stage, (times.get(stage) ?? 0) + performance.now() - started);
    return result;
  };
  const cleaned = timed('clean', () => cleanOutlines(outlines))!;
  const paths = components(cleaned.region).flatMap((region) => {
    const boundary = timed('boundary', () => sampleBoundary(region, STEP * cleaned.width));
    const graph = timed('medial', () => medialGraph(boundary));
    const peeled = timed('peel', () => peel(graph));
    const branches = timed('skeleton', () => branchesOf(graph, dropBulges(graph, peeled)));
    const tracks = timed('skeleton', () => branches.map((branch) => trackOf(graph, branch)));
    if (timed('skeleton', () => kindOf(region, tracks, width)) !== 'strokes') return [];
    const shore = timed('junctions', () => ({ boundary: graph.boundary, walk: walkOf(graph.boundary) }));
    const knots = timed('junctions', () => knotsOf(graph, shore, branches, tracks));
    const courses = timed('courses', () => coursesOf(tracks, knots));
    const runs = timed('courses', () => courses.map((course) => runIn(course, knots)));
    const lines = timed('settle', () => runs.map((run, i) => settle(shore, run, courses[i]!.closed)));
    const draft = { region, shore, courses, lines, knots, tolerance };
    return timed('finish', () => finishStrokes(draft)).map(({ path }) => path);
  });
  return { times, paths };
}
