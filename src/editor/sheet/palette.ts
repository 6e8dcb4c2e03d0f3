const TOKENS = ['paper', 'desk', 'ink', 'grey', 'line', 'edge', 'petrol', 'on-petrol', 'petrol-wash', 'amber', 'caution', 'failed', 'groove'] as const;
type Token = (typeof TOKENS)[number];

/** The look's colours as the canvas takes them, and its typeface. */
export interface Palette {
  readonly colours: Readonly<Record<Token, string>>;
  readonly type: string;
}

/** Reads the look's tokens as they are in the theme of the moment. A token may itself be a choice between two: only a property that uses it is resolved. */
export function readPalette(host: HTMLElement): Palette {
  const probe = host.ownerDocument.createElement('span');
  probe.hidden = true;
  host.append(probe);
  const computed = getComputedStyle(probe);
  const colour = (token: Token) => {
    probe.style.color = `var(--${token})`;
    return computed.color;
  };
  const colours = Object.fromEntries(TOKENS.map((token) => [token, colour(token)])) as Record<Token, string>;
  const type = computed.fontFamily || 'sans-serif';
  probe.remove();
  return { colours, type };
}

/** Calls back when the theme changes, by the system or by the page; returns how to stop that. */
export function onTheme(changed: () => void): () => void {
  const system = matchMedia('(prefers-color-scheme: dark)');
  system.addEventListener('change', changed);
  const page = new MutationObserver(changed);
  page.observe(document.documentElement, { attributes: true });
  return () => {
    system.removeEventListener('change', changed);
    page.disconnect();
  };
}
