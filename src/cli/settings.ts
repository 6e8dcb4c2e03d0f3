import { extname, resolve } from 'node:path';
import {
  type Catalogue, type FileParam, type GraphDocument, listInputs, type Param, parseParam, type ParamValue, type Problem, setInputs,
} from '../runtime/index.ts';
import { type Fault, faulty, found, foundUnless, type Found } from './fault.ts';
import { readFileValue } from './read-file.ts';

/** A value for an exposed input, as it was typed. */
export interface Setting {
  readonly name: string;
  readonly text: string;
  /** Where it was given, such as `--set width`. */
  readonly place: string;
}

/** Splits each `NAME=VALUE` of the call; a name given twice is a fault, since one of the two would be lost. */
export function settingsOf(texts: readonly string[]): Found<readonly Setting[]> {
  const faults: Fault[] = [];
  const settings = new Map<string, Setting>();
  for (const text of texts) {
    const at = text.indexOf('=');
    const name = text.slice(0, at).trim();
    const place = `--set ${name}`;
    if (at < 0 || name === '')
      faults.push({ place: '--set', expected: 'NAME=VALUE', found: `"${text}"`, advice: 'Put = between the input and its value.' });
    else if (settings.has(name))
      faults.push({ place, expected: 'one value', found: 'a second one', advice: 'Give each input once.' });
    else settings.set(name, { name, text: text.slice(at + 1), place });
  }
  return foundUnless(faults, () => [...settings.values()]);
}

/** A graph with its exposed inputs set. Files are looked for from `folder`. */
export function applySettings(
  document: GraphDocument, catalogue: Catalogue, settings: readonly Setting[], folder: string,
): Found<GraphDocument> {
  const inputs = new Map(listInputs(document, catalogue).map((input) => [input.name, input]));
  const faults: Fault[] = [];
  let changed = document;
  for (const setting of settings) {
    const value = valueOf(inputs.get(setting.name)?.param, setting, folder);
    const next = value.ok ? setInputs(changed, catalogue, new Map([[setting.name, value.value]])) : value;
    if (next.ok) changed = next.document;
    else faults.push(...('faults' in next ? next.faults : next.problems.map((problem) => settingFault(problem, setting))));
  }
  return foundUnless(faults, () => changed);
}

/** Only an input that takes a file reads one: a phrase may well begin with @. The text of an unknown input is passed on, to be refused. */
function valueOf(param: Param | undefined, setting: Setting, folder: string): Found<ParamValue<Param>> {
  if (param === undefined) return found(setting.text);
  if (param.kind === 'file') return fileOf(param, setting, folder);
  const parsed = parseParam(param, setting.text);
  return parsed.ok ? found(parsed.value) : foundUnless([settingFault(parsed.problem, setting)], () => '');
}

function fileOf({ accept }: FileParam, { text, place }: Setting, folder: string): Found<ParamValue<Param>> {
  const endings = accept.join(' or ');
  if (!text.startsWith('@') || text.length === 1)
    return faulty(place, `@ and the name of a file (${endings})`, text === '' ? 'nothing' : `"${text}"`, 'Put @ before the file\'s path.');
  const path = text.slice(1);
  if (!accept.includes(extname(path).toLowerCase()))
    return faulty(place, `a file ending in ${endings}`, path, 'Choose a file of that kind.');
  return readFileValue(resolve(folder, path), place);
}

/** The setting's own place says where; the runtime's names the same input again. */
function settingFault({ expected, found: foundInstead, advice }: Problem, { place }: Setting): Fault {
  return { place, expected, found: foundInstead, advice };
}
