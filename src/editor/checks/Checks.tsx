/** Every check of the graph: state, value, limit, place, what to do. */
export function Checks() {
  return <section aria-label="Checks" />;
}
