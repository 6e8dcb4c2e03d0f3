import type {} from '../types.ts';
import { type Path, pathLength } from '../../geometry/index.ts';
import { holePath } from '../../machining/index.ts';
import type { PortType, PortTypes } from '../../runtime/node.ts';
import { amount } from '../check.ts';
import type { Carried } from '../picture.ts';
import { shapePasses, shapeSetUps } from './shape-moves.ts';
import { shapeHolding } from './shape-holding.ts';
import { shapeLighting } from './shape-lighting.ts';
import { shapeRegistration } from './shape-registration.ts';
import { shapeTiling } from './shape-tiling.ts';
import { type ShapedItem, type ShapedLayer, boxLoop, circlePath, rectangleLoop } from './shapes.ts';

/** How each kind of value is drawn; `port` is the name it travels under. */
type Shape<T extends PortType> = (value: PortTypes[T], port: string) => readonly ShapedLayer[];

const NOTHING = () => [];

const SHAPES: { readonly [T in PortType]: Shape<T> } = {
  number: NOTHING, text: NOTHING, cutter: NOTHING, strip: NOTHING, tube: NOTHING, materials: NOTHING, rates: NOTHING, price: NOTHING, checks: NOTHING, quantities: NOTHING, files: NOTHING,
  strokes: (strokes) => [
    { kind: 'strokes', name: 'strokes', items: strokes.map(({ path, confidence }, i) => lineItem(path, `stroke ${i + 1}${sureness(confidence)}`)) },
    { kind: 'doubts', name: 'doubts', items: strokes.flatMap((stroke, i) => (stroke.doubts ?? []).map(({ at, says }): ShapedItem => ({ shape: { paths: [circlePath(at, (stroke.width ?? DOUBT) / 2)] }, title: () => `stroke ${i + 1}: ${says}` }))) },
  ],
  junctions: ({ junctions }) => [{
    kind: 'junctions', name: 'junctions',
    items: junctions.map(({ at, radius, arms }, i) => ({ shape: { paths: [circlePath(at, radius)] }, title: () => `junction ${i + 1}, ${arms.length} arms` })),
  }],
  outlines: (outlines) => [{
    kind: 'outlines', name: 'outlines',
    items: outlines.map(({ paths, fillRule }, i): ShapedItem => ({
      shape: { paths }, title: () => `outline ${i + 1}`, ...(fillRule === 'nonzero' && { fillRule }),
    })),
  }],
  region: ({ loops }, port) => [{ kind: 'region', name: port, items: loops.length > 0 ? [{ shape: { loops }, title: () => port }] : [] }],
  channel: ({ region: { loops }, centreLines, width, depth }) => [
    { kind: 'groove', name: 'groove', items: loops.length > 0 ? [{ shape: { loops }, title: () => `groove, ${amount(width, 'mm')} wide, ${amount(depth, 'mm')} deep` }] : [] },
    { kind: 'strokes', name: 'centre lines', items: centreLines.map((path, i) => lineItem(path, `centre line ${i + 1}`)) },
  ],
  holes: (holes) => [{
    kind: 'holes', name: 'holes',
    items: holes.map((hole, i): ShapedItem => ({
      shape: { paths: [holePath(hole)] }, ...(hole.setUp !== undefined && { setUps: [hole.setUp] }),
      title: () => `${hole.purpose} ${hole.slot ? 'slot' : 'hole'} ${i + 1}, ${amount(hole.diameter, 'mm')}`,
    })),
  }],
  stock: ({ width, height, thickness }) => [{
    kind: 'sheet', name: 'sheet', items: [{ shape: { loops: [rectangleLoop(width, height)] }, title: () => `sheet, ${width} x ${height} x ${amount(thickness, 'mm')}` }],
  }],
  machine: ({ travelX, travelY }) => [{
    kind: 'travel', name: 'travel', items: [{ shape: { loops: [rectangleLoop(travelX, travelY)] }, title: () => `travel, ${travelX} x ${amount(travelY, 'mm')}` }],
  }],
  tabs: (tabs) => [{
    kind: 'tabs', name: 'tabs',
    items: tabs.map(({ centre, width, height }, i) => ({ shape: { paths: [circlePath(centre, width / 2)] }, title: () => `tab ${i + 1}, ${amount(width, 'mm')} wide, ${amount(height, 'mm')} high` })),
  }],
  tiling: shapeTiling,
  registration: shapeRegistration,
  holding: shapeHolding,
  lighting: shapeLighting,
  image: (image) => [{ kind: 'image', name: 'lit view', items: [{ shape: { loops: [boxLoop(image.box)] }, image, title: () => image.says }] }],
  passes: shapePasses,
  'set-ups': shapeSetUps,
};

/** Diameter of the mark at a doubt where the stroke states no width, mm. */
const DOUBT = 6;

const sureness = (confidence: number | undefined): string => (confidence === undefined ? '' : ` (confidence ${amount(Math.round(confidence * 100) / 100, '')})`);

/** What a value looks like, as curves. */
export function shapeValue({ port, type, value }: Carried): readonly ShapedLayer[] {
  return (SHAPES[type] as Shape<PortType>)(value as never, port);
}

function lineItem(path: Path, name: string): ShapedItem {
  return { shape: { paths: [path] }, directed: true, title: () => `${name}, ${amount(Math.round(pathLength(path) * 10) / 10, 'mm')}` };
}
