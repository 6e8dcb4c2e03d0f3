import { LIMITS } from './document.ts';
import { suggest } from './nearest.ts';
import type { AnyParamValues, ChoiceParam, EditsParam, FileParam, NumberParam, Param, ParamValue, Params, TextParam, Unit } from './params.ts';
import type { Problem, ValueCode } from './problem.ts';
import { show, showList } from './show.ts';

/** What is wrong with a value, wherever it came from. */
export interface ValueFault extends Problem {
  readonly code: ValueCode;
}

/** The value a parameter has when none is given; no file for a file. */
export function defaultOf(param: Param): ParamValue {
  return param.kind === 'file' ? null : param.default;
}

/** The values `compute` receives: those given, and the default of every other parameter. */
export function withDefaults(params: Params, given: Readonly<Record<string, unknown>>): AnyParamValues {
  return Object.fromEntries(Object.entries(params).map(([name, param]) =>
    [name, Object.hasOwn(given, name) ? (given[name] as ParamValue) : defaultOf(param)]));
}

/** Whether a value of unknown origin may be the parameter's value; the fault if not. */
export function checkValue(param: Param, value: unknown): ValueFault | undefined {
  switch (param.kind) {
    case 'number': return checkNumber(param, value);
    case 'choice': return checkChoice(param, value);
    case 'text': return checkText(param, value);
    case 'file': return checkFile(param, value);
    case 'switch': return typeof value === 'boolean' ? undefined : wrongKind('true or false', value);
    case 'points': return checkPoints(value);
    case 'edits': return checkEdits(param, value);
  }
}

/** The unit as written after a number; counts and ratios carry none. */
export function unitSuffix(unit: Unit): string {
  return unit === 'count' || unit === 'ratio' ? '' : ` ${unit}`;
}

/** What a number parameter takes, such as `0.5 to 200 mm`. */
export function limitsOf({ min, max, unit }: NumberParam): string {
  return `${unit === 'count' ? 'a whole number, ' : ''}${min} to ${max}${unitSuffix(unit)}`;
}

function checkNumber(param: NumberParam, value: unknown): ValueFault | undefined {
  if (typeof value !== 'number') return wrongKind(`a number, ${limitsOf(param)}`, value);
  if (!Number.isFinite(value))
    return { code: 'not-finite', expected: limitsOf(param), found: 'a number beyond all bounds or not a number', advice: 'Give a number within the limits.' };
  const whole = param.unit !== 'count' || Number.isInteger(value);
  if (whole && value >= param.min && value <= param.max) return undefined;
  return {
    code: 'out-of-limits', expected: limitsOf(param), found: `${value}${unitSuffix(param.unit)}`,
    advice: whole ? 'Give a number within the limits.' : 'Give a whole number.',
  };
}

function checkChoice({ options }: ChoiceParam, value: unknown): ValueFault | undefined {
  const expected = `one of ${showList(options)}`;
  if (typeof value !== 'string') return wrongKind(expected, value);
  if (options.includes(value)) return undefined;
  return { code: 'not-offered', expected, found: show(value), advice: suggest(value, options, 'Choose one of those offered.') };
}

function checkText({ maxLength }: TextParam, value: unknown): ValueFault | undefined {
  if (typeof value !== 'string') return wrongKind('text', value);
  if (value.length <= maxLength) return undefined;
  return { code: 'out-of-limits', expected: `at most ${maxLength} characters`, found: `${value.length} characters`, advice: 'Shorten the text.' };
}

function checkFile({ accept }: FileParam, value: unknown): ValueFault | undefined {
  if (value === null) return undefined;
  if (!isFile(value)) return wrongKind('a file as its name with its text or base64 content, or null', value);
  if (accept.some((ending) => value.name.toLowerCase().endsWith(ending.toLowerCase()))) return undefined;
  return { code: 'not-offered', expected: `a file ending in ${accept.join(' or ')}`, found: show(value.name), advice: 'Choose a file of that kind.' };
}

/** A name, and either text or base64, and nothing else. */
function isFile(value: unknown): value is { readonly name: string } {
  if (typeof value !== 'object' || value === null || Object.keys(value).length !== 2) return false;
  const content = new Map<string, unknown>(Object.entries(value));
  const base64 = content.get('base64');
  return isNamed(content.get('name')) && (typeof content.get('text') === 'string' || (typeof base64 === 'string' && isBase64(base64)));
}

function isNamed(name: unknown): boolean {
  return typeof name === 'string' && name !== '';
}

/** Base64 of RFC 4648 section 4, padded, without line breaks. */
function isBase64(text: string): boolean {
  return text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);
}

function checkPoints(value: unknown): ValueFault | undefined {
  if (!Array.isArray(value)) return wrongKind('a list of points', value);
  if (value.length > LIMITS.points)
    return { code: 'out-of-limits', expected: `at most ${LIMITS.points} points`, found: `${value.length} points`, advice: 'Remove some points.' };
  const wrong = value.findIndex((point) => !isPoint(point));
  if (wrong === -1) return undefined;
  return wrongKind('points as {"x": mm, "y": mm}, both finite', value[wrong], ` as point ${wrong + 1}`);
}

function checkEdits({ acts }: EditsParam, value: unknown): ValueFault | undefined {
  if (!Array.isArray(value)) return wrongKind('a list of edits', value);
  if (value.length > LIMITS.edits)
    return { code: 'out-of-limits', expected: `at most ${LIMITS.edits} edits`, found: `${value.length} edits`, advice: 'Remove some edits.' };
  const faults = value.map((edit, index) => checkEdit(acts, edit, ` as edit ${index + 1}`));
  return faults.find((fault) => fault !== undefined);
}

function checkEdit(acts: EditsParam['acts'], edit: unknown, where: string): ValueFault | undefined {
  const members = new Map<string, unknown>(typeof edit === 'object' && edit !== null ? Object.entries(edit) : []);
  const [act, places] = [members.get('act'), members.get('places')];
  if (members.size !== 2 || typeof act !== 'string' || !Array.isArray(places) || !places.every(isPoint))
    return wrongKind('edits as {"act": name, "places": [{"x", "y"}]}, all finite', edit, where);
  if (!Object.hasOwn(acts, act))
    return { code: 'not-offered', expected: `one of ${showList(Object.keys(acts))}`, found: `${show(act)}${where}`, advice: suggest(act, Object.keys(acts), 'Choose one of those offered.') };
  const [least, most] = acts[act]!.places;
  if (places.length >= least && places.length <= most) return undefined;
  return {
    code: 'out-of-limits', expected: `${least === most ? least : `${least} to ${most}`} places to ${act}`, found: `${places.length}${where}`, advice: 'Give as many places as it takes.',
  };
}

function isPoint(value: unknown): boolean {
  if (typeof value !== 'object' || value === null || Object.keys(value).length !== 2) return false;
  const members = new Map<string, unknown>(Object.entries(value));
  return Number.isFinite(members.get('x')) && Number.isFinite(members.get('y'));
}

function wrongKind(expected: string, value: unknown, where = ''): ValueFault {
  return { code: 'wrong-kind', expected, found: `${show(value)}${where}`, advice: 'Give a value of the expected kind.' };
}
