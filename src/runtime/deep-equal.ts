/**
 * Whether two values of plain data are the same: primitives by `Object.is` (NaN equals NaN, -0 differs from 0), lists by
 * order, objects by their own keys, typed arrays and buffers by content. Anything else (functions, dates, maps, class
 * instances) equals only itself. Data without cycles is assumed; depth does not matter, because nothing recurses.
 */
export function deepEqual(a: unknown, b: unknown): boolean {
  const pending: [unknown, unknown][] = [[a, b]];
  for (let pair = pending.pop(); pair !== undefined; pair = pending.pop()) {
    const [left, right] = pair;
    if (Object.is(left, right)) continue;
    if (!isObject(left) || !isObject(right) || !sameShell(left, right, pending)) return false;
  }
  return true;
}

/** Compares two objects but for their members, which it adds to those still to be compared. */
function sameShell(a: object, b: object, pending: [unknown, unknown][]): boolean {
  if (Array.isArray(a)) return Array.isArray(b) && sameList(a, b, pending);
  if (ArrayBuffer.isView(a)) return ArrayBuffer.isView(b) && sameView(a, b);
  if (a instanceof ArrayBuffer) return b instanceof ArrayBuffer && sameView(new Uint8Array(a), new Uint8Array(b));
  return isPlain(a) && isPlain(b) && sameKeys(a, b, pending);
}

function sameList(a: readonly unknown[], b: readonly unknown[], pending: [unknown, unknown][]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    // Most members are numbers or shared: deciding those here keeps the pending list short.
    if (Object.is(a[i], b[i])) continue;
    if (!isObject(a[i]) || !isObject(b[i])) return false;
    pending.push([a[i], b[i]]);
  }
  return true;
}

function sameKeys(a: Members, b: Members, pending: [unknown, unknown][]): boolean {
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) {
    if (!Object.hasOwn(b, key)) return false;
    if (Object.is(a[key], b[key])) continue;
    if (!isObject(a[key]) || !isObject(b[key])) return false;
    pending.push([a[key], b[key]]);
  }
  return true;
}

function sameView(a: ArrayBufferView, b: ArrayBufferView): boolean {
  if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b) || a.byteLength !== b.byteLength) return false;
  const left = elementsOf(a);
  const right = elementsOf(b);
  return left.every((element, i) => Object.is(element, right[i]));
}

function elementsOf(view: ArrayBufferView): ArrayLike<unknown> & { every: (test: (element: unknown, i: number) => boolean) => boolean } {
  return view instanceof DataView ? new Uint8Array(view.buffer, view.byteOffset, view.byteLength) : (view as Uint8Array);
}

type Members = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function isPlain(value: object): value is Members {
  const prototype: unknown = Object.getPrototypeOf(value);
  // A value from another realm (a worker's frame) has that realm's Object.prototype, whose own prototype is null.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}
