import { type Affine, applyToPath, multiply, type Path, rotation, translation } from '../../geometry/index.ts';
import { type Baseline, makeBaseline } from './baseline.ts';
import { type Cluster, isSpace, type SetLine } from './cluster.ts';
import type { LayoutOptions, Laid } from './options.ts';
import { standsOut } from './phrase.ts';
import type { TypeProblems } from './problem.ts';

/** Room added to what the typeface gives, mm. */
export interface Spacing {
  /** Between one letter and the next. */
  readonly letters: number;
  /** At every space between words. */
  readonly words: number;
}

/** A cluster where it stands: `transform` takes it from its own origin to its place. */
export interface PlacedCluster {
  readonly cluster: Cluster;
  readonly line: number;
  readonly transform: Affine;
}

/** How far a line reaches along its baseline, mm: from where its first cluster begins to where the last one's advance ends. */
export const lineWidth = ({ clusters }: SetLine, spacing: Spacing): number =>
  clusters.reduce((sum, cluster) => sum + roomOf(cluster, spacing), 0) - (clusters.length > 0 ? spacing.letters : 0);

const roomOf = (cluster: Cluster, { letters, words }: Spacing): number => cluster.advance + letters + (isSpace(cluster) ? words : 0);

/** The drawn parts of a cluster where it stands. */
export function standing({ cluster, transform }: PlacedCluster): Path[][] {
  return cluster.drawn.map(({ paths, at }) => {
    const place = multiply(transform, translation(at.x, at.y));
    return paths.map((path) => applyToPath(place, path));
  });
}

/** Which characters it stands for, in words. */
export const sourceOf = ({ cluster, line }: PlacedCluster): string => `“${cluster.text}”, letter ${cluster.letter} of line ${line + 1}`;

/** Stands every cluster on the baseline, turned with it about the middle of its advance. */
export function layOut(lines: readonly SetLine[], spacing: Spacing, baseline: Baseline): PlacedCluster[] {
  return lines.flatMap((set, line) => {
    let along = baseline.begin(lineWidth(set, spacing));
    return set.clusters.map((cluster): PlacedCluster => {
      const half = cluster.advance / 2;
      const { at, degrees } = baseline.footing(along + half, line);
      along += roomOf(cluster, spacing);
      return { cluster, line, transform: multiply(translation(at.x, at.y), multiply(rotation(degrees), translation(-half, 0))) };
    });
  });
}

/** Lines laid out as asked. */
export interface LaidLines extends Laid {
  readonly placed: readonly PlacedCluster[];
  /** The same lines with nothing between letters, on a straight baseline: how the letters join by themselves. */
  readonly plain: () => readonly PlacedCluster[];
}

/** Lays out lines of one phrase; a problem where they do not fit on their baseline. */
export function layOutLines(lines: readonly SetLine[], { size, shape, alignment, letterSpacing, wordSpacing, lineSpacing }: LayoutOptions): { readonly ok: true; readonly laid: LaidLines } | { readonly ok: false; readonly problems: TypeProblems } {
  const spacing: Spacing = { letters: letterSpacing * size, words: wordSpacing * size };
  const setting = { alignment, leading: lineSpacing * size, capHeight: size };
  const baseline = makeBaseline(shape, setting);
  const widths = lines.map((line) => lineWidth(line, spacing));
  const problems = baseline.refuse(widths);
  if (problems) return { ok: false, problems };
  const placed = layOut(lines, spacing, baseline);
  const plain = () => layOut(lines, { letters: 0, words: 0 }, makeBaseline({ kind: 'straight' }, setting));
  const letters = placed.filter(({ cluster }) => !isSpace(cluster)).length;
  return { ok: true, laid: { placed, plain, letters, lines: lines.length, cautions: standsOut(widths.map(baseline.beyond)) } };
}
