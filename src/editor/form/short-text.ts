const LONGEST = 120;

/** Any value as one short line, for reading only. */
export function shortText(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
