import type {} from './types.ts';
import type { PortType } from '../runtime/node.ts';
import type { LayerKind } from './picture.ts';

/** Kinds of layer in the order they are drawn: what would hide others comes first. */
export const LAYER_ORDER: readonly LayerKind[] = ['travel', 'sheet', 'image', 'supports', 'tiles', 'outlines', 'region', 'groove', 'holes', 'dowels', 'hold-downs', 'pins', 'seams', 'tabs', 'rapids', 'passes', 'strokes', 'unlit', 'lit', 'wires', 'junctions', 'doubts'];

/** The kinds of layer each kind of value is drawn as; none for what is told in words alone. */
export const LAYER_KINDS: { readonly [T in PortType]: readonly LayerKind[] } = {
  number: [], text: [], cutter: [], strip: [], tube: [], materials: [], rates: [], price: [], checks: [], quantities: [], files: [],
  strokes: ['strokes', 'doubts'],
  outlines: ['outlines'],
  junctions: ['junctions'],
  region: ['region'],
  channel: ['groove', 'strokes'],
  holes: ['holes'],
  stock: ['sheet'],
  machine: ['travel'],
  tabs: ['tabs'],
  tiling: ['tiles', 'seams'],
  registration: ['dowels', 'pins'],
  holding: ['supports', 'region', 'hold-downs'],
  passes: ['rapids', 'passes'],
  lighting: ['unlit', 'lit', 'wires'],
  image: ['image'],
  'set-ups': ['rapids', 'passes'],
};
