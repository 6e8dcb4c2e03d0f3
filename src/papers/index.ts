export { type Paper, PAPERS } from './paper.ts';
export { type PaperCheck, type SheetsJob } from './sheets/work.ts';
export { setUpSheets } from './sheets/set-up-sheets.ts';
