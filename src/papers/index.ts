export { type Paper, PAPERS } from './paper.ts';
export { type PaperCheck, type SheetsJob } from './sheets/work.ts';
export { quote, type QuoteJob, type QuotePicture } from './quote/quote.ts';
export { setUpSheets } from './sheets/set-up-sheets.ts';
export { type TemplateJob } from './template/job.ts';
export { backTemplate, MOST_PAGES, type WallTemplate, wallTemplate } from './template/wall-template.ts';
