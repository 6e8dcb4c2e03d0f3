/** The first fault of a text that is not JSON, by its offset in UTF-16 units. */
export interface JsonFault {
  readonly kind: 'syntax' | 'too-deep';
  readonly offset: number;
  readonly expected: string;
}

export interface RepeatedKey {
  readonly offset: number;
  readonly key: string;
}

export interface JsonScan {
  readonly fault?: JsonFault;
  /** Keys that an object has more than once; a parser would silently keep the last. */
  readonly repeated: readonly RepeatedKey[];
}

/** Where the scan stands: what must come next, and the open objects (their keys so far) and lists (undefined). */
interface Scan {
  readonly text: string;
  readonly depth: number;
  readonly levels: (Set<string> | undefined)[];
  readonly repeated: RepeatedKey[];
  at: number;
  next: 'value' | 'value or ]' | 'key' | 'key or }' | 'separator' | 'nothing';
}

const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\n\r]*/y;
const ESCAPE = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y;

/**
 * Reads a text by the grammar of RFC 8259 without building a value: says where the first fault is (the words of engines'
 * own parsers differ), finds repeated keys, and refuses nesting deeper than `depth` so that nothing after it can run out
 * of stack.
 */
export function scanJson(text: string, depth: number): JsonScan {
  const scan: Scan = { text, depth, levels: [], repeated: [], at: skipSpace(text, 0), next: 'value' };
  const { repeated } = scan;
  while (scan.next !== 'nothing' || scan.at < text.length) {
    const fault = step(scan);
    if (fault !== undefined) return { fault, repeated };
  }
  return { repeated };
}

/**
 * The longest beginning of a text that is JSON once what is open in it is closed: a value that breaks off, and a key without
 * a value, are left out. Undefined where not even a list or an object begins.
 */
export function mendJson(text: string, depth: number): string | undefined {
  const scan: Scan = { text, depth, levels: [], repeated: [], at: skipSpace(text, 0), next: 'value' };
  let sound: string | undefined;
  let end = 0;
  while (scan.next !== 'nothing') {
    // After a bracket or a value the text may end, had it all its closing brackets.
    if (scan.next === 'separator' || scan.next === 'value or ]' || scan.next === 'key or }') {
      sound = scan.levels.map((keys) => (keys === undefined ? ']' : '}')).reverse().join('');
      end = scan.at;
    }
    if (step(scan) !== undefined) return sound === undefined ? undefined : text.slice(0, end) + sound;
  }
  return text.slice(0, scan.at);
}

/** Reads one token and the space after it. */
function step(scan: Scan): JsonFault | undefined {
  switch (scan.next) {
    case 'value': return readValue(scan);
    case 'key': return readKey(scan);
    case 'value or ]': return scan.text[scan.at] === ']' ? close(scan) : readValue(scan);
    case 'key or }': return scan.text[scan.at] === '}' ? close(scan) : readKey(scan);
    case 'separator': return readSeparator(scan);
    case 'nothing': return syntax(scan, 'the end of the text');
  }
}

function readValue(scan: Scan): JsonFault | undefined {
  const character = scan.text[scan.at];
  if (character === '{' || character === '[') return open(scan, character);
  const end = endOfScalar(scan.text, scan.at);
  if (end < 0) return syntax(scan, character === '"' ? 'text that ends in double quotes, without raw line breaks' : 'a value');
  return advance(scan, end, afterValue(scan));
}

function readKey(scan: Scan): JsonFault | undefined {
  const { text, at } = scan;
  const keys = scan.levels.at(-1);
  const end = endOfString(text, at);
  if (end < 0 || keys === undefined) return syntax(scan, 'a key in double quotes');
  const key = JSON.parse(text.slice(at, end)) as string;
  if (keys.has(key)) scan.repeated.push({ offset: at, key });
  keys.add(key);
  scan.at = skipSpace(text, end);
  return text[scan.at] === ':' ? advance(scan, scan.at + 1, 'value') : syntax(scan, '":"');
}

function readSeparator(scan: Scan): JsonFault | undefined {
  const inObject = scan.levels.at(-1) !== undefined;
  const character = scan.text[scan.at];
  if (character === ',') return advance(scan, scan.at + 1, inObject ? 'key' : 'value');
  return character === (inObject ? '}' : ']') ? close(scan) : syntax(scan, inObject ? '"," or "}"' : '"," or "]"');
}

function open(scan: Scan, bracket: '{' | '['): JsonFault | undefined {
  if (scan.levels.length === scan.depth) return { kind: 'too-deep', offset: scan.at, expected: `at most ${scan.depth} levels` };
  scan.levels.push(bracket === '{' ? new Set() : undefined);
  return advance(scan, scan.at + 1, bracket === '{' ? 'key or }' : 'value or ]');
}

function close(scan: Scan): undefined {
  scan.levels.pop();
  return advance(scan, scan.at + 1, afterValue(scan));
}

function advance(scan: Scan, to: number, next: Scan['next']): undefined {
  scan.at = skipSpace(scan.text, to);
  scan.next = next;
}

function afterValue({ levels }: Scan): Scan['next'] {
  return levels.length === 0 ? 'nothing' : 'separator';
}

function syntax(scan: Scan, expected: string): JsonFault {
  return { kind: 'syntax', offset: scan.at, expected };
}

/** Line and column, both counted from 1, of an offset. */
export function linePlace(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return `line ${line}, column ${offset - before.lastIndexOf('\n')}`;
}

function skipSpace(text: string, from: number): number {
  return endOf(SPACE, text, from);
}

function endOfScalar(text: string, at: number): number {
  if (text[at] === '"') return endOfString(text, at);
  const word = endOf(WORD, text, at);
  return word < 0 ? endOf(NUMBER, text, at) : word;
}

/** Where the string that begins at `at` ends; -1 if none does. By hand, because a pattern would recurse on long ones. */
function endOfString(text: string, at: number): number {
  if (text[at] !== '"') return -1;
  let i = at + 1;
  for (let code = text.charCodeAt(i); code !== 0x22; code = text.charCodeAt(i)) {
    if (!(code >= 0x20)) return -1;
    i = code === 0x5c ? endOf(ESCAPE, text, i + 1) : i + 1;
    if (i < 0) return -1;
  }
  return i + 1;
}

function endOf(pattern: RegExp, text: string, from: number): number {
  pattern.lastIndex = from;
  return pattern.test(text) ? pattern.lastIndex : -1;
}
