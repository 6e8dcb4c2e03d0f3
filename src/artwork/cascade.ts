import { type Limits } from './limits.ts';
import { classesOf, matches } from './selector.ts';
import { type Declaration, type StyleRule, parseStyleAttribute } from './style-sheet.ts';
import { type XmlElement } from './xml.ts';

/** Properties that children take over from their parent. `marker` is read as the three it stands for. */
const INHERITED = ['fill', 'fill-rule', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-opacity', 'stroke-dasharray',
  'marker', 'marker-start', 'marker-mid', 'marker-end', 'visibility', 'color'] as const;
export type InheritedProperty = (typeof INHERITED)[number];

/** Stated values in effect; a property that nobody stated is absent. */
export type Inherited = Readonly<Partial<Record<InheritedProperty, string>>>;

/** Properties a style may set here, besides the inherited ones (SVG 2: presentation attributes and geometry properties). */
const OWN = ['display', 'opacity', 'transform', 'transform-origin', 'transform-box', 'translate', 'rotate', 'scale', 'clip-path', 'mask', 'filter', 'vector-effect',
  'd', 'x', 'y', 'cx', 'cy', 'r', 'rx', 'ry', 'width', 'height'];
const STYLED: ReadonlySet<string> = new Set([...INHERITED, ...OWN]);

interface Weighted extends Declaration {
  /** A later one of equal weight wins. */
  readonly weight: number;
}

/** A style attribute outweighs every selector. */
const ATTRIBUTE_WEIGHT = 1e12;
const IMPORTANT = 1e15;

/** Finds what is declared for each element: presentation attributes, then rules by specificity, then the style attribute. */
export class Cascade {
  private readonly buckets = new Map<string, (readonly [StyleRule, number])[]>();
  private readonly known = new Map<XmlElement, ReadonlyMap<string, string>>();
  private steps = 0;

  constructor(rules: readonly StyleRule[], private readonly limits: Limits) {
    rules.forEach((rule, order) => {
      const bucket = this.buckets.get(rule.selector.key);
      if (bucket) bucket.push([rule, order]);
      else this.buckets.set(rule.selector.key, [[rule, order]]);
    });
  }

  /** Whether comparing rules with elements became too much work; what is declared is incomplete then. */
  get exhausted(): boolean {
    return this.steps > this.limits.styleSteps;
  }

  /** All attributes, with the properties that styles declare in their place. */
  declared(element: XmlElement): ReadonlyMap<string, string> {
    const known = this.known.get(element);
    if (known) return known;
    const values = new Map(element.attributes);
    for (const { property, value } of this.styles(element)) values.set(property, value);
    this.known.set(element, values);
    return values;
  }

  private styles(element: XmlElement): readonly Declaration[] {
    const attribute = element.attributes.get('style');
    if (this.buckets.size === 0 && attribute === undefined) return [];
    const own = attribute === undefined ? [] : parseStyleAttribute(attribute) ?? [];
    const weighted: Weighted[] = this.matching(element).flatMap(([{ selector, declarations }]) =>
      declarations.map((declaration) => ({ ...declaration, weight: selector.specificity })));
    weighted.push(...own.map((declaration) => ({ ...declaration, weight: ATTRIBUTE_WEIGHT })));
    const rank = ({ weight, important }: Weighted) => weight + (important ? IMPORTANT : 0);
    return weighted.filter(({ property }) => STYLED.has(property)).sort((a, b) => rank(a) - rank(b));
  }

  /** Rules that apply, in the order of the sheets. */
  private matching(element: XmlElement): readonly (readonly [StyleRule, number])[] {
    const id = element.attributes.get('id');
    const keys = new Set(['*', element.name, ...classesOf(element).map((name) => `.${name}`), ...(id === undefined ? [] : [`#${id}`])]);
    const candidates = [...keys].flatMap((key) => this.buckets.get(key) ?? []);
    this.steps += candidates.length;
    if (this.exhausted) return [];
    return candidates.filter(([{ selector }]) => matches(element, selector)).sort((a, b) => a[1] - b[1]);
  }
}

const AS_UNSTATED = new Set(['initial', 'revert', 'revert-layer']);
const AS_PARENT = new Set(['', 'inherit', 'unset']);

/** What an element passes on: its own statements over those of its parent, with the keywords of CSS resolved. */
export function inherit(parent: Inherited, declared: ReadonlyMap<string, string>): Inherited {
  const result: Partial<Record<InheritedProperty, string>> = {};
  for (const property of INHERITED) {
    const value = declared.get(property)?.trim() ?? 'inherit';
    const effective = AS_PARENT.has(value) ? parent[property] : AS_UNSTATED.has(value) ? undefined : value;
    if (effective !== undefined) result[property] = effective;
  }
  return result;
}
