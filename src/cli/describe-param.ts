import { type EditsParam, editsText, type Param, type ParamValue, type PointsParam } from '../runtime/index.ts';

export interface ParamWords {
  readonly type: string;
  readonly unit: string;
  readonly limits: string;
}

/** A parameter's type, unit and limits in words; a part that does not apply is empty. */
export function paramWords(param: Param): ParamWords {
  switch (param.kind) {
    case 'number': return { type: 'number', unit: unitWord(param.unit), limits: `${param.min} to ${param.max}` };
    case 'choice': return { type: 'choice', unit: '', limits: param.options.join(', ') };
    case 'text': return { type: 'text', unit: '', limits: `at most ${param.maxLength} characters` };
    case 'file': return { type: 'file', unit: '', limits: param.accept.join(', ') };
    case 'switch': return { type: 'switch', unit: '', limits: 'on, off' };
    case 'points': return { type: 'points', unit: 'mm', limits: '' };
    case 'edits': return { type: 'edits', unit: '', limits: Object.keys(param.acts).join(', ') };
  }
}

/** A parameter's value as it would be typed after `--set NAME=`; a file by its name, a text in quotation marks. */
export function valueWords({ kind }: Param, value: ParamValue): string {
  if (value === null) return 'none';
  if (kind === 'edits') return editsText(value as EditsParam['default']) || 'none';
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  if (typeof value === 'string') return kind === 'text' ? `"${value}"` : value;
  if (typeof value === 'number') return String(value);
  if ('name' in value) return value.name;
  return value.length === 0 ? 'none' : (value as PointsParam['default']).map(({ x, y }) => `${x},${y}`).join(' ');
}

function unitWord(unit: string): string {
  return unit === 'count' || unit === 'ratio' ? '' : unit.replace(/(?<=mm|s)2\b/, '²');
}
