/** Longest piece of a user's text repeated in a problem. */
const LONGEST = 60;
/** Most names listed in a problem. */
const MOST = 12;

/** Names what came, for a problem: short values as JSON writes them (so always on one line), large ones by their kind. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return JSON.stringify(value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return `an object with ${showList(Object.keys(value), 'no keys')}`;
  return String(value);
}

/** A name as it stands if it is a plain one, else in quotation marks, short and on one line. */
export function showName(name: string): string {
  return /^[\w.-]{1,64}$/.test(name) ? name : show(name);
}

/** Names in quotation marks, the first of them when there are many. */
export function showList(names: readonly string[], none = 'none'): string {
  if (names.length === 0) return none;
  const rest = names.length - MOST;
  return names.slice(0, MOST).map(show).join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}
