/** The bench line: cards that pass a piece of work from one to the next. */
export function Bench() {
  return <section aria-label="Bench" />;
}
