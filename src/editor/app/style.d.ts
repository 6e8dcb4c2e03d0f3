import 'react';

declare module 'react' {
  /** Custom properties carry computed sizes into the style sheets. */
  interface CSSProperties {
    readonly [property: `--${string}`]: string | number | undefined;
  }
}
