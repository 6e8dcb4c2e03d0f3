/** The parser alone, without the tables of the whole library, which take a tenth of a second to load. */
declare module 'css-tree/parser' {
  import { type CssNode, type ParseOptions } from 'css-tree';
  export default function parse(text: string, options?: ParseOptions): CssNode;
}
