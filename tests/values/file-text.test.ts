import { expect, it } from 'vitest';
import { fileText } from '../../src/values/file-text.ts';

it('hands on text, and says why there is none', () => {
  expect(fileText({ name: 'a.svg', text: '<svg/>' }, 'artwork', 'a drawing')).toEqual({ ok: true, text: '<svg/>' });
  expect(fileText(null, 'artwork', 'a drawing')).toMatchObject({ ok: false, problems: [{ place: 'artwork', expected: 'a drawing', found: 'no file' }] });
  expect(fileText({ name: 'a.svgz', base64: 'H4sI' }, 'artwork', 'a drawing')).toMatchObject({ ok: false, problems: [{ expected: 'a drawing as UTF-8 text' }] });
});
