import { type ListedInput, listInputs, type Param, unitSuffix } from '../runtime/index.ts';
import type { Given } from './arguments.ts';
import { catalogue } from './catalogue.ts';
import { paramWords, valueWords } from './describe-param.ts';
import { oneLine } from './fault.ts';
import { type GraphFile, readGraphFile } from './graph-file.ts';
import { table, wrapped } from './layout.ts';
import { print, printFaults, printJson } from './output.ts';
import type { ExitStatus } from './status.ts';

/** `groovewright inputs` */
export function inputs({ operands: [path], switches }: Given): ExitStatus {
  const graph = readGraphFile(path!, catalogue);
  if (!graph.ok) return printFaults(graph.faults);
  const listed = listInputs(graph.value.document, catalogue);
  if (switches.has('json')) printJson(listed.map(asJson));
  else print(asText(graph.value, listed));
  return 0;
}

/** The default is what the graph itself says, for that is what a run uses. A file is told by its name alone. */
function asJson({ name, label, help, group, param, value, proved }: ListedInput) {
  const standard = param.kind === 'file' && value !== null ? { name: valueWords(param, value) } : value;
  return { name, label, help, ...(group !== undefined && { group }), type: param.kind, ...limitsOf(param), ...(proved !== undefined && { proved }), default: standard };
}

function limitsOf(param: Param) {
  switch (param.kind) {
    case 'number': return { unit: param.unit, min: param.min, max: param.max, step: param.step };
    case 'choice': return { options: param.options };
    case 'text': return { maxLength: param.maxLength };
    case 'file': return { accept: param.accept };
    case 'edits': return { acts: Object.keys(param.acts) };
    case 'switch':
    case 'points': return {};
  }
}

function asText({ name, document }: GraphFile, listed: readonly ListedInput[]): string {
  const title = `${oneLine(document.title || name)}: ${listed.length === 1 ? '1 exposed input' : `${listed.length} exposed inputs`}`;
  const rows = table([['name', 'type', 'unit', 'default', 'limits'], ...listed.map(cells)]);
  const helps = listed.flatMap((input) => [`  ${oneLine(input.name)}`, ...wrapped(oneLine(`${input.label}. ${input.help}${provedWords(input)}`), '    ')]);
  return listed.length === 0 ? title : [title, '', ...rows, '', ...helps].join('\n');
}

const provedWords = ({ proved, param }: ListedInput): string =>
  proved === undefined || param.kind !== 'number' ? '' : ` Proved from ${proved[0]} to ${proved[1]}${unitSuffix(param.unit)}.`;

function cells({ name, param, value }: ListedInput): string[] {
  const { type, unit, limits } = paramWords(param);
  return [name, type, unit, shortened(valueWords(param, value)), limits].map(oneLine);
}

function shortened(text: string): string {
  return text.length <= 32 ? text : `${text.slice(0, 31)}…`;
}
