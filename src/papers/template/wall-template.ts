import { addPage, closeBook, numberPages, openBook } from '../book.ts';
import { type TemplateJob, templateOf } from './job.ts';
import { drawTemplatePage } from './page.ts';
import { writeTitle } from './title.ts';

/** More pages than anybody glues together, and the most that are written. */
export const MOST_PAGES = 500;

export type WallTemplate =
  | { readonly ok: true; readonly base64: string; readonly pages: number }
  /** Why there is none: no mounting hole, no board, or more pages than `MOST_PAGES`. */
  | { readonly ok: false; readonly why: 'no holes' | 'no board' | 'too large'; readonly pages?: number };

/** The 1:1 template of a board's mounting holes: a title, then its pages from the top row to the bottom. */
export function wallTemplate(job: TemplateJob): WallTemplate {
  if (!job.holes.some(({ purpose }) => purpose === 'mounting')) return { ok: false, why: 'no holes' };
  const template = templateOf(job);
  if (!template) return { ok: false, why: 'no board' };
  const { pages } = template.plan;
  if (pages.length > MOST_PAGES) return { ok: false, why: 'too large', pages: pages.length };
  const book = openBook({ paper: job.paper, lying: template.lying, title: `Wall template: ${job.name}` });
  writeTitle(book, template);
  for (const page of pages) {
    addPage(book);
    drawTemplatePage(book, template, page);
  }
  numberPages(book, `${job.name}; wall template 1:1, lengths in mm`);
  return { ok: true, base64: closeBook(book), pages: pages.length };
}
