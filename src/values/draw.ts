import type { DrawingGroup, DrawingItem } from '../artwork/index.ts';
import type { Outline, Stroke } from '../artwork/artwork.ts';
import { cubicPath } from '../geometry/index.ts';
import type { Region } from '../geometry/region.ts';
import type { Channel } from '../machining/job/channel.ts';
import { type Hole, holePath } from '../machining/job/hole.ts';
import type { Tiling } from '../machining/job/tiling.ts';
import { seamPaths } from './pictures/shape-tiling.ts';

/** What a sign consists of, as far as it is known. */
export interface SignParts {
  readonly artwork: { readonly strokes: readonly Stroke[]; readonly outlines: readonly Outline[] };
  readonly channel: Channel | undefined;
  readonly board: Region | undefined;
  readonly holes: readonly Hole[];
  readonly tiling?: Tiling | undefined;
}

/** Arcs become cubics in drawings within this, mm: a tenth of what a drawing prints. */
const ARC_TOLERANCE = 1e-5;

/** The groups of `drawing.svg`, each present even if empty; strokes as cubic path data, as other programs expect them. */
export function signGroups({ artwork, channel, board, holes, tiling }: SignParts): DrawingGroup[] {
  return [
    { id: 'artwork', items: [...artwork.strokes.map(drawStroke), ...artwork.outlines.map(drawOutline)] },
    { id: 'strokes', items: channel?.centreLines.map((path) => drawStroke({ path: cubicPath(path, ARC_TOLERANCE) })) ?? [] },
    { id: 'channel', items: channel ? [drawRegion(channel.region)] : [] },
    { id: 'board', items: board ? [drawRegion(board)] : [] },
    { id: 'holes', items: holes.map(drawHole) },
    { id: 'seams', items: tiling ? seamPaths(tiling).map((path) => drawStroke({ path })) : [] },
  ];
}

function drawStroke(stroke: Stroke): DrawingItem {
  return { kind: 'stroke', stroke };
}

export function drawOutline(outline: Outline): DrawingItem {
  return { kind: 'outline', outline };
}

/** A region as its boundary: fills would hide what lies under them. */
export function drawRegion(region: Region): DrawingItem {
  return { kind: 'region', region, style: { fill: 'none', stroke: '#26343a', strokeWidth: 0.25 } };
}

export function drawHole(hole: Hole): DrawingItem {
  const { centre, diameter, purpose, slot } = hole;
  if (slot) return { kind: 'stroke', stroke: { path: holePath(hole) }, title: `${purpose} slot` };
  return { kind: 'circle', centre, radius: diameter / 2, title: `${purpose} hole` };
}
