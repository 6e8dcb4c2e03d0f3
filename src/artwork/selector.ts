import { type AttributeSelector, type CssNode } from 'css-tree';
import { type XmlElement } from './xml.ts';

type Test = (element: XmlElement) => boolean;

/** Tests on one element, and how the element to its left in the selector relates to it. */
interface Compound {
  readonly tests: readonly Test[];
  readonly relation?: ' ' | '>' | '+';
}

export interface Selector {
  /** From right to left: the first one is the subject. */
  readonly compounds: readonly Compound[];
  /** Ids, then classes, then types, a thousand of each to the next. */
  readonly specificity: number;
  /** What the subject must carry, to look rules up quickly: `#id`, `.class`, a type name, or `*`. */
  readonly key: string;
}

/** States a still drawing never is in. */
const NEVER = new Set(['hover', 'active', 'focus', 'focus-within', 'focus-visible', 'visited', 'target']);

export const classesOf = (element: XmlElement): readonly string[] =>
  (element.attributes.get('class') ?? '').split(/\s+/).filter((name) => name !== '');

const MATCHERS: Readonly<Record<string, (actual: string, asked: string) => boolean>> = {
  '=': (actual, asked) => actual === asked,
  '~=': (actual, asked) => actual.split(/\s+/).includes(asked),
  '|=': (actual, asked) => actual === asked || actual.startsWith(`${asked}-`),
  '^=': (actual, asked) => asked !== '' && actual.startsWith(asked),
  '$=': (actual, asked) => asked !== '' && actual.endsWith(asked),
  '*=': (actual, asked) => asked !== '' && actual.includes(asked),
};

function attributeTest({ name, matcher, value, flags }: AttributeSelector): Test | undefined {
  const compare = matcher === null ? () => true : MATCHERS[matcher];
  if (!compare || flags !== null) return undefined;
  const asked = value === null ? '' : value.type === 'String' ? value.value : value.name;
  return (element) => {
    const actual = element.attributes.get(name.name);
    return actual !== undefined && compare(actual, asked);
  };
}

interface Simple { readonly test: Test; readonly weight: number; readonly key: string }

function simpleSelector(node: CssNode): Simple | undefined {
  switch (node.type) {
    case 'TypeSelector': {
      const name = node.name.slice(node.name.lastIndexOf('|') + 1);
      return name === '*' ? { test: () => true, weight: 0, key: '*' } : { test: (e) => e.name === name, weight: 1, key: name };
    }
    case 'ClassSelector':
      return { test: (e) => classesOf(e).includes(node.name), weight: 1e3, key: `.${node.name}` };
    case 'IdSelector':
      return { test: (e) => e.attributes.get('id') === node.name, weight: 1e6, key: `#${node.name}` };
    case 'AttributeSelector': {
      const test = attributeTest(node);
      return test && { test, weight: 1e3, key: '*' };
    }
    case 'PseudoClassSelector':
      if (node.name === 'root') return { test: (e) => e.parent === undefined, weight: 1e3, key: '*' };
      return NEVER.has(node.name) ? { test: () => false, weight: 1e3, key: '*' } : undefined;
    default:
      return undefined;
  }
}

/** Longer chains of combinators are written by nobody, and each link costs a walk through the ancestors. */
const MOST_COMPOUNDS = 16;

/** Ids are the rarest to match, types the commonest. */
const keyRank = (key: string): number => (key.startsWith('#') ? 3 : key.startsWith('.') ? 2 : key === '*' ? 0 : 1);

/**
 * Makes a matcher of a parsed selector: type, universal, class, id and attribute selectors and `:root`, joined by
 * descendant, child and next-sibling combinators. Nothing for any other.
 */
export function compileSelector(nodes: readonly CssNode[]): Selector | undefined {
  const compounds: Compound[] = [];
  let [tests, key, specificity]: [Test[], string, number] = [[], '*', 0];
  for (const node of nodes) {
    if (node.type === 'Combinator') {
      if (node.name !== ' ' && node.name !== '>' && node.name !== '+') return undefined;
      if (tests.length === 0) return undefined;
      compounds.unshift({ tests, relation: node.name });
      [tests, key] = [[], '*'];
      continue;
    }
    const simple = simpleSelector(node);
    if (!simple) return undefined;
    tests.push(simple.test);
    specificity += simple.weight;
    if (keyRank(simple.key) > keyRank(key)) key = simple.key;
  }
  if (tests.length === 0 || compounds.length >= MOST_COMPOUNDS) return undefined;
  compounds.unshift({ tests });
  return { compounds, specificity, key };
}

const passes = (element: XmlElement, { tests }: Compound): boolean => tests.every((test) => test(element));

function related(element: XmlElement, relation: ' ' | '>' | '+'): readonly XmlElement[] {
  const { parent } = element;
  if (!parent) return [];
  if (relation === '>') return [parent];
  if (relation === '+') return parent.children.slice(Math.max(0, element.index - 1), element.index);
  const ancestors: XmlElement[] = [];
  for (let up: XmlElement | undefined = parent; up; up = up.parent) ancestors.push(up);
  return ancestors;
}

/** Whether the element is the subject. Works on sets of candidates, so no chain of combinators makes it slow. */
export function matches(element: XmlElement, { compounds }: Selector): boolean {
  let candidates = new Set([element]);
  for (const compound of compounds) {
    const { relation } = compound;
    const near = relation ? [...candidates].flatMap((candidate) => related(candidate, relation)) : [...candidates];
    candidates = new Set(near.filter((candidate) => passes(candidate, compound)));
    if (candidates.size === 0) return false;
  }
  return true;
}
