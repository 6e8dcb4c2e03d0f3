/** What this browser kept under a name; null when nothing, or when it keeps nothing. */
export function remembered(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Keeps a small thing for the next visit. A browser that refuses only means that the page begins afresh. */
export function remember(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // Nothing that a person made is lost.
  }
}
