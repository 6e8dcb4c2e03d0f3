import { type Block, type CssNode } from 'css-tree';
import parse from 'css-tree/parser';
import { type Selector, compileSelector } from './selector.ts';

export interface Declaration {
  /** In lower case. */
  readonly property: string;
  readonly value: string;
  readonly important: boolean;
}

export interface StyleRule {
  readonly selector: Selector;
  readonly declarations: readonly Declaration[];
}

export interface StyleSheet {
  readonly rules: readonly StyleRule[];
  /** What was left out, in words of the sheet itself: selectors and at-rules that are not read. */
  readonly leftOut: readonly string[];
}

/** Brackets deeper than this are no style of a drawing, and the parser descends once for each. */
const DEEPEST = 64;

function tooDeep(css: string): boolean {
  let depth = 0;
  for (const [bracket] of css.matchAll(/[{}()[\]]/g)) {
    depth = '{(['.includes(bracket) ? depth + 1 : Math.max(0, depth - 1);
    if (depth > DEEPEST) return true;
  }
  return false;
}

/** They state how letters look, or how the text is coded; nothing that is drawn depends on them. */
const HARMLESS = new Set(['charset', 'namespace', 'font-face']);

/** Conditions that hold for a drawing looked at on a screen. */
const HOLDS = /^\s*(?:all|screen)?\s*$/i;

const listOf = (nodes: Iterable<CssNode>): readonly CssNode[] => [...nodes];

function readDeclarations(nodes: Iterable<CssNode>): readonly Declaration[] {
  return listOf(nodes).flatMap((node) => node.type !== 'Declaration' ? [] : [{
    property: node.property.toLowerCase(),
    value: node.value.type === 'Raw' ? node.value.value.trim() : '',
    important: node.important !== false,
  }]);
}

/** Reads one block of rules into `rules`; what is not read is named in `leftOut`. */
function readRules(nodes: Iterable<CssNode>, css: string, rules: StyleRule[], leftOut: string[]): void {
  for (const node of nodes) {
    if (node.type === 'Atrule') readAtRule(node.name, sourceOf(node.prelude, css), node.block, css, { rules, leftOut });
    if (node.type !== 'Rule') continue;
    const declarations = readDeclarations(node.block.children);
    const selectors = node.prelude.type === 'SelectorList' ? listOf(node.prelude.children) : [];
    const compiled = selectors.map((selector) => selector.type === 'Selector' ? compileSelector(listOf(selector.children)) : undefined);
    if (compiled.length === 0 || compiled.includes(undefined)) leftOut.push(sourceOf(node.prelude, css));
    for (const selector of compiled) if (selector) rules.push({ selector, declarations });
  }
}

function readAtRule(
  name: string, condition: string, block: Block | null, css: string, into: { rules: StyleRule[]; leftOut: string[] },
): void {
  if (name.toLowerCase() === 'media' && block && HOLDS.test(condition)) readRules(block.children, css, into.rules, into.leftOut);
  else if (!HARMLESS.has(name.toLowerCase())) into.leftOut.push(`@${name} ${condition}`.trim());
}

const sourceOf = (node: CssNode | null, css: string): string =>
  node?.loc ? css.slice(node.loc.start.offset, node.loc.end.offset) : '';

/** Reads the text of a `style` element. Faulty parts are skipped as CSS Syntax 3 has it. */
export function parseStyleSheet(css: string): StyleSheet {
  if (tooDeep(css)) return { rules: [], leftOut: ['a sheet of deeply nested brackets'] };
  const rules: StyleRule[] = [];
  const leftOut: string[] = [];
  const sheet = parse(css, { parseValue: false, parseCustomProperty: false, positions: true });
  if (sheet.type === 'StyleSheet') readRules(sheet.children, css, rules, leftOut);
  return { rules, leftOut };
}

/** Reads a `style` attribute; nothing when its brackets go too deep. */
export function parseStyleAttribute(css: string): readonly Declaration[] | undefined {
  if (tooDeep(css)) return undefined;
  const list = parse(css, { context: 'declarationList', parseValue: false, parseCustomProperty: false });
  return list.type === 'DeclarationList' ? readDeclarations(list.children) : [];
}
