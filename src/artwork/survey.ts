import { type Cautions } from './cautions.ts';
import { type StyleRule, parseStyleSheet } from './style-sheet.ts';
import { type XmlElement } from './xml.ts';

/** What a drawing holds anywhere in it, drawn or not. */
export interface Survey {
  /** The first element of each id. */
  readonly ids: ReadonlyMap<string, XmlElement>;
  /** Rules of all style sheets, in order. */
  readonly rules: readonly StyleRule[];
}

const MOVING = new Set(['animate', 'animateTransform', 'animateMotion', 'animateColor', 'set']);

/** Style sheets made for a drawing looked at on a screen. */
const FOR_SCREEN = /^\s*(?:all|screen)?\s*$/i;

function readStyle(element: XmlElement, rules: StyleRule[], cautions: Cautions): void {
  const type = (element.attributes.get('type') ?? '').trim();
  const media = element.attributes.get('media') ?? '';
  if ((type !== '' && type.toLowerCase() !== 'text/css') || !FOR_SCREEN.test(media)) {
    cautions.add('style', element, `a style sheet for ${type} ${media}`.trim());
    return;
  }
  const sheet = parseStyleSheet(element.text);
  for (const rule of sheet.rules) rules.push(rule);
  for (const leftOut of sheet.leftOut) cautions.add('style', element, leftOut);
}

export function survey(root: XmlElement, cautions: Cautions): Survey {
  const ids = new Map<string, XmlElement>();
  const rules: StyleRule[] = [];
  const look = (element: XmlElement): void => {
    const id = element.attributes.get('id');
    if (id !== undefined && !ids.has(id)) ids.set(id, element);
    if (element.name === 'style') readStyle(element, rules, cautions);
    else if (element.name === 'script') cautions.add('script', element);
    else if (MOVING.has(element.name)) cautions.add('animation', element);
    element.children.forEach(look);
  };
  look(root);
  return { ids, rules };
}
