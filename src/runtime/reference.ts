import { type Handle, type InputPort, type NodeDeclaration, paramsOfHandle } from './node.ts';
import { limitsOf, unitSuffix } from './param-values.ts';
import type { Param } from './params.ts';
import { editsText } from './parse-param.ts';

/** One row of the reference: a port or parameter. */
interface Row {
  readonly name: string;
  /** Its type, or what it takes. */
  readonly takes: string;
  /** Its default, for parameters. */
  readonly standard?: string;
  readonly doc: string;
}

interface Part {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** The reference section of a node, in Markdown: a heading of level 2, its doc, and tables of ports and parameters. */
export function renderNode(declaration: NodeDeclaration): string {
  const { name, title, doc, examples } = declaration;
  const parts = partsOf(declaration).flatMap(({ title: heading, rows }) => ['', `### ${heading}`, '', ...table(rows)]);
  return [`## ${markdown(title)} (\`${name}\`)`, '', markdown(doc), ...parts, '', `Examples: ${examples.map((example) => markdown(example.title)).join('; ')}.`, ''].join('\n');
}

/** The same for a terminal: plain text whose lines, but for single long words, are at most `width` characters. */
export function renderNodeText(declaration: NodeDeclaration, width = 80): string {
  const { name, title, doc, examples } = declaration;
  const parts = partsOf(declaration).flatMap(({ title: heading, rows }) => ['', `${heading}:`, ...rows.flatMap((row) => paragraph(row, width))]);
  return [`${name}: ${title}`, '', ...wrap(doc, width, ''), ...parts, '', ...wrap(`Examples: ${examples.map((example) => example.title).join('; ')}.`, width, ''), ''].join('\n');
}

/** The first sentence of a node's doc, which stands alone as a summary. */
export function summaryOf({ doc }: Pick<NodeDeclaration, 'doc'>): string {
  return /^.*?[.!?](?=\s|$)/s.exec(doc)?.[0] ?? doc;
}

function partsOf({ inputs, outputs, params, handles = [] }: NodeDeclaration): Part[] {
  const parts: Part[] = [
    { title: 'Inputs', rows: Object.entries(inputs).map(([name, port]) => ({ name, takes: portTakes(port), doc: port.doc })) },
    { title: 'Outputs', rows: Object.entries(outputs).map(([name, { type, doc }]) => ({ name, takes: type, doc })) },
    { title: 'Parameters', rows: Object.entries(params).map(([name, param]) => ({ name, takes: paramTakes(param), standard: defaultText(param), doc: param.doc })) },
    { title: 'On the picture', rows: handles.map(handleRow) },
  ];
  return parts.filter(({ rows }) => rows.length > 0);
}

const HANDLED: Readonly<Record<Handle['kind'], string>> = { places: 'drag, add, take away', move: 'drag', edits: 'drag, choose, draw' };

/** What a person takes hold of: named by the parameters that it sets. */
function handleRow(handle: Handle): Row {
  return { name: paramsOfHandle(handle).join(', '), takes: HANDLED[handle.kind], doc: handle.doc };
}

function portTakes({ type, many, optional }: InputPort): string {
  return [type, ...(many ? ['several wires'] : []), ...(optional ? ['optional'] : [])].join(', ');
}

function paramTakes(param: Param): string {
  switch (param.kind) {
    case 'number': return limitsOf(param);
    case 'choice': return param.options.join(' | ');
    case 'text': return `text, at most ${param.maxLength} characters`;
    case 'file': return `file: ${param.accept.join(', ')}`;
    case 'switch': return 'on | off';
    case 'points': return 'points in mm';
    case 'edits': return `edits: ${Object.keys(param.acts).join(', ')}`;
  }
}

function defaultText(param: Param): string {
  switch (param.kind) {
    case 'number': return `${param.default}${unitSuffix(param.unit)}`;
    case 'file': return 'none';
    case 'switch': return param.default ? 'on' : 'off';
    case 'edits': return editsText(param.default) || 'none';
    case 'points': return param.default.map(({ x, y }) => `${x},${y}`).join(' ') || 'none';
    case 'choice': return param.default;
    case 'text': return param.default === '' ? 'empty' : JSON.stringify(param.default);
  }
}

function table(rows: readonly Row[]): string[] {
  const withDefault = rows.some(({ standard }) => standard !== undefined);
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const head = ['name', 'takes', ...(withDefault ? ['default'] : []), 'meaning'];
  const body = rows.map(({ name, takes, standard, doc }) =>
    line([`\`${name}\``, markdown(takes), ...(standard === undefined ? [] : [markdown(standard)]), markdown(doc)]));
  return [line(head), line(head.map(() => '---')), ...body];
}

/** Keeps text from being read as Markdown or as another table cell, and on one line. */
function markdown(text: string): string {
  return text.replace(/[\\|`*_<>[\]]/g, '\\$&').replace(/\s*\n\s*/g, ' ');
}

function paragraph({ name, takes, standard, doc }: Row, width: number): string[] {
  const value = standard === undefined ? takes : `${takes}; default ${standard}`;
  return [...wrap(`${name} (${value})`, width, '  '), ...wrap(doc, width, '      ')];
}

function wrap(text: string, width: number, indent: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (line !== '' && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, indent + line];
}
