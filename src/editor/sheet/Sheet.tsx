/** The sheet: a large, true picture of one node's values. */
export function Sheet() {
  return <section aria-label="Sheet" />;
}
