import { type Path, type Point, same, type Segment } from '../../../geometry/index.ts';
import { callback, type Engine } from './engine.ts';

/** The engine's functions that draw a glyph, and the paths drawn since they were last taken, in font units. */
export interface GlyphPen {
  readonly functions: number;
  readonly taken: () => Path[];
}

export function makePen(engine: Engine): GlyphPen {
  const paths: { readonly start: Point; readonly segments: Segment[] }[] = [];
  let last: Point = { x: 0, y: 0 };
  const on = (name: string, numbers: string, draw: (at: Point[]) => void) => {
    const place = callback(engine, `iii${numbers}i`, (...given) => {
      const xy = given.slice(3, -1);
      draw(Array.from({ length: xy.length / 2 }, (_, i) => ({ x: xy[2 * i]!, y: xy[2 * i + 1]! })));
    });
    engine.call[`hb_draw_funcs_set_${name}_func`]!(functions, place, 0, 0);
  };
  const add = (segment: Segment) => {
    paths.at(-1)?.segments.push(segment);
    last = segment.end;
  };
  const functions = engine.call['hb_draw_funcs_create']!();
  on('move_to', 'ff', ([start]) => {
    paths.push({ start: start!, segments: [] });
    last = start!;
  });
  on('line_to', 'ff', ([end]) => add({ kind: 'line', end: end! }));
  on('quadratic_to', 'ffff', ([control, end]) => add(raised(last, control!, end!)));
  on('cubic_to', 'ffffff', ([control1, control2, end]) => add({ kind: 'cubic', control1: control1!, control2: control2!, end: end! }));
  return { functions, taken: () => paths.splice(0).filter(({ segments }) => segments.length > 1).map(closed) };
}

/** A quadratic curve as the cubic that it is. */
const raised = (start: Point, control: Point, end: Point): Segment => ({
  kind: 'cubic', end,
  control1: { x: start.x + ((control.x - start.x) * 2) / 3, y: start.y + ((control.y - start.y) * 2) / 3 },
  control2: { x: end.x + ((control.x - end.x) * 2) / 3, y: end.y + ((control.y - end.y) * 2) / 3 },
});

function closed({ start, segments }: { readonly start: Point; readonly segments: readonly Segment[] }): Path {
  return { start, segments: same(segments.at(-1)!.end, start, 0) ? segments : [...segments, { kind: 'line', end: start }], closed: true };
}
