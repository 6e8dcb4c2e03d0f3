import type { Plugin } from 'vite';

const PACKAGE = '/node_modules/jspdf/dist/';

/** What the PDF package would load to put web pages into a PDF. */
const WEB_PAGES = /import\((["'])(?:html2canvas|dompurify|canvg)\1\)/g;

/** Keeps the PDF package's companions for web pages out of what is built. */
export function leanPdf(): Plugin {
  return {
    name: 'lean-pdf',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!id.includes(PACKAGE)) return null;
      const lean = code.replace(WEB_PAGES, 'Promise.reject(new Error("left out"))');
      if (lean === code) this.error('expected imports to leave out, found none: the PDF package has changed');
      return { code: lean, map: null };
    },
  };
}
