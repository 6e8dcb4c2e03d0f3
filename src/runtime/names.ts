import { LIMITS } from './document.ts';

const KEBAB = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
const CAMEL = /^[a-z][a-zA-Z0-9]*$/;
const ID = /^[a-zA-Z][a-zA-Z0-9]*(?:-[a-zA-Z0-9]+)*$/;

export const ID_FORM = `a letter, then letters, digits and single hyphens, ${LIMITS.nameLength} at most`;
export const NAME_FORM = `a small letter, then letters and digits, ${LIMITS.nameLength} at most`;

const short = (text: string) => text.length <= LIMITS.nameLength;

/** Whether the text may name a node type: kebab-case. */
export function isTypeName(text: string): boolean {
  return short(text) && KEBAB.test(text);
}

/** Whether the text may name a port, a parameter or an exposed input: camelCase, and nothing every object inherits. */
export function isMemberName(text: string): boolean {
  return short(text) && CAMEL.test(text) && !(text in Object.prototype);
}

/** Whether the text may be the id of a node or group. */
export function isId(text: string): boolean {
  return short(text) && ID.test(text);
}

export interface Reference {
  readonly node: string;
  readonly name: string;
}

/** Splits `id.name` at its last dot; undefined unless there is something on both sides. */
export function splitReference(text: string): Reference | undefined {
  const dot = text.lastIndexOf('.');
  return dot > 0 && dot < text.length - 1 ? { node: text.slice(0, dot), name: text.slice(dot + 1) } : undefined;
}
