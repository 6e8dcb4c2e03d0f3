import { multiply, translation } from '../geometry/index.ts';
import { inherit } from './cascade.ts';
import { drawShape, isShape } from './draw-shape.ts';
import { elementTransform } from './element-transform.ts';
import { viewportOf } from './page.ts';
import { isZero } from './paint.ts';
import { type Chain, type Reading, type Surroundings, readLength, refuse, spend } from './reading.ts';
import { type XmlElement } from './xml.ts';

type Declared = ReadonlyMap<string, string>;

/** Elements that are never drawn where they stand. Scripts, styles and animations were dealt with by the survey. */
const NOT_DRAWN = new Set(['defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern', 'linearGradient', 'radialGradient', 'stop',
  'filter', 'title', 'desc', 'metadata', 'style', 'script', 'view', 'cursor', 'color-profile', 'font', 'font-face', 'hatch',
  'meshgradient', 'solidcolor', 'animate', 'animateTransform', 'animateMotion', 'animateColor', 'set', 'discard']);

const LEFT_OUT = {
  text: 'text', tspan: 'text', textPath: 'text', image: 'image', foreignObject: 'foreign', video: 'foreign', audio: 'foreign',
  canvas: 'foreign', iframe: 'foreign',
} as const;

const isLeftOut = (name: string): name is keyof typeof LEFT_OUT => Object.hasOwn(LEFT_OUT, name);

/** A size given from outside: by the page to the root, by a `use` to what it copies. */
interface Size {
  readonly width?: number | undefined;
  readonly height?: number | undefined;
}

/** Draws an element and all in it. Recursion is bounded by the limit on depth. A symbol is drawn only when it is `copied`. */
export function visit(reading: Reading, element: XmlElement, around: Surroundings, copied?: Size): void {
  if (reading.problem || (NOT_DRAWN.has(element.name) && !(copied && element.name === 'symbol'))) return;
  const chain: Chain = { element, up: around.chain, depth: (around.chain?.depth ?? 0) + 1 };
  if (!spend(reading, element, 'elements', 1) || isTooDeep(reading, chain)) return;
  const declared = reading.cascade.declared(element);
  if (declared.get('display')?.trim().toLowerCase() === 'none') return;
  const style = inherit(around.style, declared);
  if (isHidden(style.visibility) && !hasContent(element.name)) return;
  if (isZero(declared.get('opacity')?.trim())) {
    reading.cautions.add('transparent', element);
    return;
  }
  if (isLeftOut(element.name)) {
    reading.cautions.add(LEFT_OUT[element.name], element);
    return;
  }
  noteEffects(reading, element, declared);
  const affine = multiply(around.affine, elementTransform(reading, element, declared, around));
  draw(reading, element, declared, { ...around, affine, style, chain }, copied);
}

const isHidden = (visibility: string | undefined): boolean => /^(?:hidden|collapse)$/i.test(visibility ?? '');
const hasContent = (name: string): boolean => CONTAINERS.has(name) || name === 'use';
const CONTAINERS = new Set(['g', 'a', 'svg', 'symbol', 'switch']);

function isTooDeep(reading: Reading, { element, depth }: Chain): boolean {
  if (depth <= reading.limits.depth) return false;
  refuse(reading, element, `at most ${reading.limits.depth} elements inside one another, copies included`, `more than ${reading.limits.depth}`,
    'Expand the copies in the drawing program and ungroup them.');
  return true;
}

const EFFECTS = [['clip-path', 'clip'], ['mask', 'mask'], ['filter', 'filter']] as const;

function noteEffects(reading: Reading, element: XmlElement, declared: Declared): void {
  for (const [property, kind] of EFFECTS) {
    const value = declared.get(property)?.trim().toLowerCase() ?? 'none';
    if (value !== 'none' && value !== '') reading.cautions.add(kind, element);
  }
}

function draw(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings, copied?: Size): void {
  if (isShape(element.name)) drawShape({ reading, element, declared, around });
  else if (element.name === 'g' || element.name === 'a') visitChildren(reading, element, around);
  else if (element.name === 'svg' || element.name === 'symbol') drawViewport(reading, element, declared, around, copied ?? {});
  else if (element.name === 'switch') drawSwitch(reading, element, around);
  else if (element.name === 'use') drawUse(reading, element, declared, around);
  else reading.cautions.add('unknown', element, element.name);
}

function visitChildren(reading: Reading, element: XmlElement, around: Surroundings): void {
  for (const child of element.children) {
    if (reading.problem) return;
    visit(reading, child, around);
  }
}

/**
 * The first child that asks for nothing special; a language is asked for when no child goes without, and then the first
 * one is taken: a run may not depend on the reader's language.
 */
function drawSwitch(reading: Reading, element: XmlElement, around: Surroundings): void {
  const able = element.children.filter(({ name, attributes }) => !NOT_DRAWN.has(name) && !attributes.has('requiredExtensions'));
  const chosen = able.find(({ attributes }) => !attributes.has('systemLanguage')) ?? able[0];
  if (chosen) visit(reading, chosen, around);
}

/** An `svg`, or a `symbol` put in place. The outermost one, and a symbol, have no place of their own. */
function drawViewport(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings, size: Size): void {
  const at = (name: string) => readLength(reading, element, name, declared.get(name), around);
  const isPlaced = element.name === 'svg' && element.parent !== undefined;
  const frame = {
    x: (isPlaced ? at('x') : undefined) ?? 0, y: (isPlaced ? at('y') : undefined) ?? 0,
    width: size.width ?? at('width') ?? around.width, height: size.height ?? at('height') ?? around.height,
  };
  const viewport = viewportOf(element, declared, frame, reading.cautions);
  if (!viewport) {
    reading.cautions.add('empty', element);
    return;
  }
  const affine = multiply(around.affine, viewport.transform);
  visitChildren(reading, element, { ...around, affine, width: viewport.width, height: viewport.height });
}

function drawUse(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings): void {
  const href = (declared.get('href') ?? '').trim();
  const target = href.startsWith('#') ? reading.ids.get(href.slice(1)) : undefined;
  if (!target) reading.cautions.add('useMissing', element, href);
  else if (isOpen(target, around.chain)) reading.cautions.add('useCycle', element, href);
  else if (spend(reading, element, 'uses', 1)) drawCopy(reading, element, declared, around, target);
}

function isOpen(target: XmlElement, chain: Chain | undefined): boolean {
  for (let link = chain; link; link = link.up) if (link.element === target) return true;
  return false;
}

function drawCopy(reading: Reading, element: XmlElement, declared: Declared, around: Surroundings, target: XmlElement): void {
  const at = (name: string) => readLength(reading, element, name, declared.get(name), around);
  const affine = multiply(around.affine, translation(at('x') ?? 0, at('y') ?? 0));
  visit(reading, target, { ...around, affine }, { width: at('width'), height: at('height') });
}
