import type { Path, Point } from '../../geometry/index.ts';

/** A drawn part of a cluster, mm, about where the cluster begins on its baseline. */
export interface Drawn {
  readonly paths: readonly Path[];
  readonly at: Point;
}

/** What stands together whatever is done to the line: a letter with its marks, or letters that became one glyph. */
export interface Cluster {
  /** The characters it stands for. */
  readonly text: string;
  /** Which letter of its line, from 1 in the order of reading, begins it. */
  readonly letter: number;
  /** How far the next one stands from it, mm. */
  readonly advance: number;
  readonly drawn: readonly Drawn[];
}

/** A line of clusters from left to right. */
export interface SetLine {
  readonly clusters: readonly Cluster[];
}

const SPACE = /^[\p{Zs}\t]+$/u;

/** Whether it is room between words. */
export const isSpace = ({ text }: Cluster): boolean => SPACE.test(text);
