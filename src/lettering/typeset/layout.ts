import { type Affine, multiply, rotation, translation } from '../../geometry/index.ts';
import type { Baseline } from './baseline.ts';
import { type Cluster, isSpace, type SetLine } from './cluster.ts';

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
