export interface Served {
  /** The page's address, with its port and a slash at the end. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

export function serve(options: { readonly port: number; readonly folder?: string }): Promise<Served>;
