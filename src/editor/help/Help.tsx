/** The tour, the list of keys and commands. */
export function Help() {
  return null;
}
