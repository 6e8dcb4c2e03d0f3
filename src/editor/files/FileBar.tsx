/** The document's name and whether it is saved; open, save, take the results. */
export function FileBar() {
  return <div />;
}
