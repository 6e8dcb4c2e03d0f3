import { SaxesParser, type SaxesTagNS } from 'saxes';
import { type Limits } from './limits.ts';
import { type ArtworkProblem } from './problem.ts';

/** An element of the SVG namespace (or of none). Attributes are keyed by local name, `href` also when it is an XLink one. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  readonly parent: XmlElement | undefined;
  /** Place among its siblings, from 0. */
  readonly index: number;
  /** How many elements of this name began before it, plus one. */
  readonly ordinal: number;
  readonly line: number;
  /** Character data directly inside; kept for `style` only. */
  readonly text: string;
}

export type XmlResult =
  | { readonly ok: true; readonly root: XmlElement; readonly linksStyle: boolean }
  | { readonly ok: false; readonly problem: ArtworkProblem };

interface OpenElement extends XmlElement {
  readonly children: OpenElement[];
  text: string;
}

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';
const XLINK_NAMESPACE = 'http://www.w3.org/1999/xlink';
/** Stands for prefixes nobody declared: programs often leave out the declaration of `xlink`, the drawing is still good. */
const UNDECLARED = 'urn:undeclared';
/** Characters handed over at once; little, because the parser cannot be stopped within a piece. */
const PIECE = 16_384;
const SAVE_AGAIN = 'Save the drawing again as plain SVG from the program it was drawn with.';

/** Collects the elements while the parser runs; the first fault stops everything. */
class TreeBuilder {
  root: XmlElement | undefined;
  problem: ArtworkProblem | undefined;
  /** A style sheet of another file is asked for. */
  linksStyle = false;
  private current: OpenElement | undefined;
  private readonly counts = new Map<string, number>();
  private depth = 0;
  private total = 0;
  /** Elements of other namespaces we are inside of; nothing in there is drawn. */
  private foreign = 0;

  constructor(private readonly parser: SaxesParser<{ xmlns: true }>, private readonly limits: Limits) {}

  get stopped(): boolean {
    return this.problem !== undefined;
  }

  refuse(expected: string, found: string, advice: string): void {
    const { line, column } = this.parser;
    this.problem ??= { place: `line ${line}, column ${column}`, expected, found, advice };
  }

  open(tag: SaxesTagNS): void {
    if (this.stopped) return;
    this.depth += 1;
    this.total += 1;
    const { depth, elements } = this.limits;
    if (this.depth > depth) {
      this.refuse(`at most ${depth} elements inside one another`, `more than ${depth}`, 'Ungroup the drawing and save it again.');
    } else if (this.total > elements) {
      this.refuse(`at most ${elements} elements`, `more than ${elements}`, 'Simplify the drawing, or split it and read the parts.');
    } else if (this.depth === 1 && !(isSvg(tag) && tag.local === 'svg')) {
      this.refuse('an SVG drawing, whose outermost element is svg', `the outermost element ${shorten(tag.name)}`,
        'Choose an SVG file; save the drawing as plain SVG if it is in another format.');
    } else if (this.foreign > 0 || !isSvg(tag)) this.foreign += 1;
    else this.push(tag);
  }

  private push(tag: SaxesTagNS): void {
    const ordinal = (this.counts.get(tag.local) ?? 0) + 1;
    this.counts.set(tag.local, ordinal);
    const element: OpenElement = {
      name: tag.local, attributes: attributesOf(tag), children: [], parent: this.current,
      index: this.current?.children.length ?? 0, ordinal, line: this.parser.line, text: '',
    };
    this.current?.children.push(element);
    this.root ??= element;
    this.current = element;
  }

  close(): void {
    if (this.stopped) return;
    this.depth -= 1;
    if (this.foreign > 0) this.foreign -= 1;
    else this.current = this.current?.parent as OpenElement | undefined;
  }

  characters(text: string): void {
    if (this.foreign === 0 && this.current?.name === 'style') this.current.text += text;
  }

  doctype(declaration: string): void {
    const entity = /<!ENTITY\s+(?:%\s+)?([^\s"'>]+)/i.exec(declaration)?.[1];
    if (entity !== undefined) {
      this.refuse('a document type that defines no entities', `the entity ${shorten(entity)}`, SAVE_AGAIN);
    }
  }
}

function isSvg(tag: SaxesTagNS): boolean {
  return tag.uri === SVG_NAMESPACE || tag.uri === '' || (tag.uri === UNDECLARED && tag.prefix === 'svg');
}

function attributesOf(tag: SaxesTagNS): ReadonlyMap<string, string> {
  const attributes = new Map<string, string>();
  for (const { uri, prefix, local, value } of Object.values(tag.attributes)) {
    if (uri === '') attributes.set(local, value);
    else if (local === 'href' && (uri === XLINK_NAMESPACE || prefix === 'xlink') && !attributes.has('href')) {
      attributes.set('href', value);
    }
  }
  return attributes;
}

/** Keeps hostile names from flooding a message. */
export function shorten(text: string): string {
  return text.length <= 40 ? text : `${text.slice(0, 39)}…`;
}

/** Reads well-formed XML into its SVG elements. No entity is ever expanded but the five of XML and character numbers. */
export function parseXml(text: string, limits: Limits): XmlResult {
  const tooLong = checkLength(text, limits);
  if (tooLong) return { ok: false, problem: tooLong };
  const parser = new SaxesParser({ xmlns: true, resolvePrefix: (prefix: string) => (prefix === '' ? undefined : UNDECLARED) });
  const builder = new TreeBuilder(parser, limits);
  parser.on('error', ({ message }) => {
    const complaint = message.replace(/^.*?\d+:\d+: /s, '').replace(/\.$/, '');
    builder.refuse('a complete SVG drawing in well-formed XML', shorten(complaint), SAVE_AGAIN);
  });
  parser.on('doctype', (declaration) => { builder.doctype(declaration); });
  parser.on('opentag', (tag) => { builder.open(tag); });
  parser.on('closetag', () => { builder.close(); });
  parser.on('processinginstruction', ({ target }) => { builder.linksStyle ||= target === 'xml-stylesheet'; });
  parser.on('text', (data) => { builder.characters(data); });
  parser.on('cdata', (data) => { builder.characters(data); });
  for (let at = 0; at < text.length && !builder.stopped; at += PIECE) parser.write(text.slice(at, at + PIECE));
  if (!builder.stopped) parser.close();
  if (builder.problem) return { ok: false, problem: builder.problem };
  return builder.root ? { ok: true, root: builder.root, linksStyle: builder.linksStyle } : { ok: false, problem: emptyProblem() };
}

function checkLength(text: string, limits: Limits): ArtworkProblem | undefined {
  if (text.trim() === '') return emptyProblem();
  if (text.length * 3 <= limits.bytes || utf8Length(text) <= limits.bytes) return undefined;
  const mebibytes = (bytes: number) => `${Number((bytes / 1048576).toFixed(3))} MiB`;
  return {
    expected: `at most ${mebibytes(limits.bytes)} of text`, found: mebibytes(utf8Length(text)),
    advice: 'Remove embedded pictures and what is not to be cut, or split the drawing.',
  };
}

const emptyProblem = (): ArtworkProblem => ({
  place: 'line 1, column 1', expected: 'an SVG drawing', found: 'an empty file', advice: 'Choose the file that holds the drawing.',
});

function utf8Length(text: string): number {
  let bytes = 0;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    // Each half of a surrogate pair stands for two of its four bytes.
    bytes += code < 0x80 ? 1 : code < 0x800 || (code >= 0xd800 && code <= 0xdfff) ? 2 : 3;
  }
  return bytes;
}
