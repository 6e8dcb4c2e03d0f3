import type { Carried } from '../picture.ts';

/** The same function, which makes its result once for each value and port as long as the value lives. Numbers and texts are not remembered. */
export function rememberedByValue<T>(make: (carried: Carried) => T): (carried: Carried) => T {
  const known = new WeakMap<object, Map<string, T>>();
  return (carried) => {
    const { port, type, value } = carried;
    if (typeof value !== 'object' || value === null) return make(carried);
    const ofValue = known.get(value) ?? new Map<string, T>();
    known.set(value, ofValue);
    const key = `${type} ${port}`;
    if (!ofValue.has(key)) ofValue.set(key, make(carried));
    return ofValue.get(key)!;
  };
}
