import { nearest, type NodeDeclaration, renderNodeText, summaryOf } from '../runtime/index.ts';
import type { Given } from './arguments.ts';
import { catalogue } from './catalogue.ts';
import { faulty } from './fault.ts';
import { column, LINE } from './layout.ts';
import { print, printFaults, printJson } from './output.ts';
import type { ExitStatus } from './status.ts';

/** `groovewright nodes` */
export function nodes({ operands: [name], switches }: Given): ExitStatus {
  const declarations = [...catalogue.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
  if (name === undefined) {
    if (switches.has('json')) printJson(declarations.map(asJson));
    else print(list(declarations));
    return 0;
  }
  const declaration = catalogue.get(name);
  if (!declaration) return unknown(name);
  if (switches.has('json')) printJson(asJson(declaration));
  else print(renderNodeText(declaration, LINE).trimEnd());
  return 0;
}

function unknown(name: string): ExitStatus {
  const close = nearest(name, [...catalogue.keys()]);
  const advice = close ? `Did you mean ${close}?` : 'See "groovewright nodes".';
  return printFaults(faulty('nodes', 'the name of a node', `"${name}"`, advice).faults);
}

function asJson({ name, title, doc, inputs, outputs, params }: NodeDeclaration) {
  return { name, title, doc, inputs, outputs, params };
}

function list(declarations: readonly NodeDeclaration[]): string {
  return column(declarations.map((declaration) => [declaration.name, summaryOf(declaration)]), '').join('\n');
}
