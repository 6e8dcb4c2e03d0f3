import type { Point } from '../../geometry/index.ts';
import { addPage, closeBook, numberPages, openBook } from '../book.ts';
import { type TemplateJob, templateOf } from './job.ts';
import { drawTemplatePage } from './page.ts';
import { writeTitle } from './title.ts';
import { backWording, WALL } from './wording.ts';

/** More pages than anybody glues together, and the most that are written. */
export const MOST_PAGES = 500;

export type WallTemplate =
  | { readonly ok: true; readonly base64: string; readonly pages: number }
  /** Why there is none: no mounting hole, no board, or more pages than `MOST_PAGES`. */
  | { readonly ok: false; readonly why: 'no holes' | 'no board' | 'too large'; readonly pages?: number };

/** The 1:1 template of a board's mounting holes: a title, then its pages from the top row to the bottom. */
export function wallTemplate(job: Omit<TemplateJob, 'wording'>): WallTemplate {
  return templateBook({ ...job, wording: WALL });
}

export interface BackJob extends Omit<TemplateJob, 'wording'> {
  /** Depth of the sockets, mm. */
  readonly depth: number;
  /** Least material that they must leave, mm. */
  readonly floor: number;
}

/** The 1:1 template of sockets in a board's back, given as seen from the front: mirrored left to right. */
export function backTemplate({ depth, floor, board, holes, ...job }: BackJob): WallTemplate {
  const turned = (point: Point): Point => ({ x: -point.x, y: point.y });
  return templateBook({
    ...job, wording: backWording(depth, floor),
    board: { loops: board.loops.map((loop) => loop.map(turned).reverse()) },
    holes: holes.map((hole) => ({ ...hole, centre: turned(hole.centre), ...(hole.slot && { slot: { ...hole.slot, angle: 180 - hole.slot.angle } }) })),
  });
}

function templateBook(job: TemplateJob): WallTemplate {
  if (!job.holes.some(({ purpose }) => purpose === 'mounting')) return { ok: false, why: 'no holes' };
  const template = templateOf(job);
  if (!template) return { ok: false, why: 'no board' };
  const { pages } = template.plan;
  if (pages.length > MOST_PAGES) return { ok: false, why: 'too large', pages: pages.length };
  const book = openBook({ paper: job.paper, lying: template.lying, title: `${job.wording.title}: ${job.name}` });
  writeTitle(book, template);
  for (const page of pages) {
    addPage(book);
    drawTemplatePage(book, template, page);
  }
  numberPages(book, `${job.name}; ${job.wording.title.toLowerCase()} 1:1, lengths in mm`);
  return { ok: true, base64: closeBook(book), pages: pages.length };
}
