import type { Plugin } from 'vite';

const EMPTY = '\0lean-pdf-empty';
const PACKAGE = '/node_modules/jspdf/';

/** What the PDF package would load to put pictures and web pages into a PDF: we draw lines and text only. */
const PICTURES = 'fast-png';
const WEB_PAGES = /import\((["'])(?:html2canvas|dompurify|canvg)\1\)/g;

/** Keeps the PDF package's companions for pictures and web pages out of what is built. */
export function leanPdf(): Plugin {
  return {
    name: 'lean-pdf',
    apply: 'build',
    enforce: 'pre',
    resolveId(source, importer) {
      return source === PICTURES && importer?.includes(PACKAGE) ? EMPTY : null;
    },
    load(id) {
      return id === EMPTY ? 'export const decode = undefined;' : null;
    },
    transform(code, id) {
      if (!id.includes(PACKAGE)) return null;
      const lean = code.replace(WEB_PAGES, 'Promise.reject(new Error("left out"))');
      if (lean === code) this.error('expected imports to leave out, found none: the PDF package has changed');
      return { code: lean, map: null };
    },
  };
}
