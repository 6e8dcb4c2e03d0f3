/** Files whose bytes the build puts into the code, as data addresses: so they reach command line, worker and tests alike. */
declare module '*.wasm?url&inline' {
  const address: string;
  export default address;
}
declare module '*.woff2?inline' {
  const address: string;
  export default address;
}
