import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { MainModule, Paths64 } from 'clipper2-wasm/dist/clipper2z';
import { type Loop, type Region } from '../../src/geometry/index.ts';

/** Clipper2 itself, compiled to WebAssembly: the reference for booleans and offsets. Lengths in mm, 0.1 um units. */
export interface NativeClipper {
  readonly union: (loops: readonly Loop[], rule: 'nonzero' | 'evenodd' | 'positive') => Region;
  readonly combine: (operation: 'intersect' | 'subtract' | 'xor', a: Region, b: Region) => Region;
  /** A stroke of half-width `distance` with round ends and joins; a closed one is a ring. */
  readonly stroke: (points: Loop, closed: boolean, distance: number, tolerance: number) => Region;
  /** A region moved by a signed distance, with round joins. */
  readonly offset: (region: Region, distance: number, tolerance: number) => Region;
  /** The area, in mm2, of what belongs to one of two regions only. */
  readonly mismatch: (a: Region, b: Region) => number;
}

const UNITS = 10_000;

const fileOf = (name: string): string => {
  const require = createRequire(import.meta.url);
  return join(dirname(require.resolve('clipper2-wasm/package.json')), 'dist/es', name);
};

function conversions(lib: MainModule) {
  const paths = (loops: readonly Loop[]): Paths64 => {
    const out = new lib.Paths64();
    for (const loop of loops) {
      const path = lib.MakePath64(loop.flatMap(({ x, y }) => [BigInt(Math.round(x * UNITS)), BigInt(Math.round(y * UNITS))]));
      out.push_back(path);
      path.delete();
    }
    return out;
  };
  const region = (found: Paths64): Region => {
    const loops = Array.from({ length: found.size() }, (_, i): Loop => {
      const view = found.get(i).view();
      const stride = view.length / found.get(i).size();
      return Array.from({ length: view.length / stride }, (_unused, k) =>
        ({ x: Number(view[k * stride]) / UNITS, y: Number(view[k * stride + 1]) / UNITS }));
    });
    found.delete();
    return { loops };
  };
  return { paths, region };
}

/** Runs with paths that are freed afterwards. */
function using<T>(paths: readonly Paths64[], run: () => T): T {
  try {
    return run();
  } finally {
    for (const path of paths) path.delete();
  }
}

export async function nativeClipper(): Promise<NativeClipper> {
  const make = (await import(pathToFileURL(fileOf('clipper2z.js')).href)) as { default: (options: object) => Promise<MainModule> };
  const lib = await make.default({ locateFile: fileOf });
  const { paths, region } = conversions(lib);
  const rules = { nonzero: lib.FillRule.NonZero, evenodd: lib.FillRule.EvenOdd, positive: lib.FillRule.Positive };
  const operations = { intersect: lib.ClipType.Intersection, subtract: lib.ClipType.Difference, xor: lib.ClipType.Xor };
  const combine: NativeClipper['combine'] = (operation, a, b) => {
    const [pa, pb] = [paths(a.loops), paths(b.loops)];
    return using([pa, pb], () => region(lib.BooleanOp64(operations[operation], lib.FillRule.NonZero, pa, pb)));
  };
  const inflate = (loops: readonly Loop[], distance: number, tolerance: number, end: number): Region => {
    const from = paths(loops);
    const ends = [lib.EndType.Polygon, lib.EndType.Joined, lib.EndType.Round][end]!;
    return using([from], () => region(lib.InflatePaths64(from, distance * UNITS, lib.JoinType.Round, ends, 2, tolerance * UNITS)));
  };
  const area = ({ loops }: Region): number => loops.reduce((sum, loop) => sum + loop.reduce((s, p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return s + p.x * q.y - p.y * q.x;
  }, 0) / 2, 0);
  return {
    union: (loops, rule) => {
      const from = paths(loops);
      return using([from], () => region(lib.UnionSelf64(from, rules[rule])));
    },
    combine,
    stroke: (points, closed, distance, tolerance) => inflate([points], distance, tolerance, closed ? 1 : 2),
    offset: ({ loops }, distance, tolerance) => inflate(loops, distance, tolerance, 0),
    mismatch: (a, b) => area(combine('xor', a, b)),
  };
}
