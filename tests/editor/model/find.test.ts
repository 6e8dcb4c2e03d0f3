import { describe, expect, it } from 'vitest';
import { findSteps } from '../../../src/editor/model/find.ts';
import { REAL, TINY } from './graphs.ts';

const titles = (query: string, shapes = REAL) => findSteps({ shapes }, query).map(({ title }) => title);

describe('findSteps', () => {
  it('gives everything by title without words', () => {
    expect(titles('')).toEqual([...REAL.values()].map(({ title }) => title).sort());
    expect(titles(' - ')).toHaveLength(REAL.size);
  });

  it.each([...REAL.values()].map(({ title, name }) => [title, name]))('finds "%s" first by its whole title, and by its name', (title, name) => {
    expect(titles(title)[0]).toBe(title);
    expect(titles(name)[0]).toBe(title);
    expect(titles(title.toUpperCase())[0]).toBe(title);
  });

  it('puts titles before ports and ports before docs', () => {
    const found = titles('holes');
    const named = found.filter((title) => /hole/i.test(title));
    expect(named.length).toBeGreaterThan(0);
    expect(found.slice(0, named.length)).toEqual(named);
    expect(found.length).toBeGreaterThan(named.length);
  });

  it('wants every word', () => {
    expect(titles('thin ream', TINY)).toEqual([]);
    expect(titles('does print', TINY)).toEqual(['Print']);
  });

  it('finds by types of ports and by words of the doc', () => {
    expect(titles('text', TINY)).toEqual(['Hang', 'Print', 'Ream']);
    expect(titles('nothing', TINY)).toHaveLength(TINY.size);
  });

  it('takes a mistyped word for the nearest known one, and finds nothing for nonsense', () => {
    expect(titles('outlnie')).toEqual(titles('outline'));
    expect(titles('xqzvw')).toEqual([]);
  });

  it('gives with an end only types that fit it, and says by which port', () => {
    const takes = findSteps({ shapes: TINY }, '', { side: 'output', type: 'text' });
    expect(takes.map((found) => [found.title, found.kind === 'type' && found.port?.name])).toEqual([['Hang', 'paper'], ['Print', 'paper']]);
    const gives = findSteps({ shapes: TINY }, '', { side: 'input', type: 'text' });
    expect(gives.map(({ title }) => title)).toEqual(['Print', 'Ream']);
    const hang = findSteps({ shapes: TINY }, 'hang', { side: 'output', type: 'number' });
    expect(hang).toMatchObject([{ type: 'hang', says: 'Does hang.', port: { name: 'label', label: 'label' } }]);
  });

  it('finds kept pieces too, but not for an end', () => {
    const pieces = [{ title: 'Lantern frame', text: '' }];
    expect(findSteps({ shapes: TINY, pieces }, 'lantern')).toMatchObject([{ kind: 'piece', piece: pieces[0] }]);
    expect(findSteps({ shapes: TINY, pieces }, '')).toHaveLength(TINY.size + 1);
    expect(findSteps({ shapes: TINY, pieces }, '', { side: 'output', type: 'text' }).every(({ kind }) => kind === 'type')).toBe(true);
  });

  it('gives nothing where there are no types', () => {
    expect(findSteps({ shapes: new Map() }, 'ink')).toEqual([]);
  });
});
