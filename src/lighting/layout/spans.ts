import type { Courses } from './course.ts';
import { wrapped } from './course.ts';
import type { Gap } from './contacts.ts';

/** A part of a centre line in which a tube may lie. A closed one that goes through its start ends beyond its length. */
export interface Span {
  readonly stroke: number;
  readonly from: number;
  readonly to: number;
  /** Whether it starts, ends where the groove does, and not beside another tube. */
  readonly freeStart: boolean;
  readonly freeEnd: boolean;
}

/** What gaps leave of each centre line, in the order along it. */
export function spansOf(courses: Courses, gaps: readonly Gap[]): Span[] {
  return courses.list.flatMap(({ path, length }, stroke) => {
    const own = gaps.filter((gap) => gap.stroke === stroke).sort((a, b) => a.from - b.from);
    return length === 0 ? [] : path.closed ? roundSpans(stroke, length, own) : openSpans(stroke, length, own);
  });
}

function openSpans(stroke: number, length: number, gaps: readonly Gap[]): Span[] {
  const spans: Span[] = [];
  let from = 0;
  for (const gap of gaps) {
    if (gap.from > from) spans.push({ stroke, from, to: gap.from, freeStart: from === 0, freeEnd: false });
    from = Math.max(from, gap.to);
  }
  if (from < length) spans.push({ stroke, from, to: length, freeStart: from === 0, freeEnd: true });
  return spans;
}

function roundSpans(stroke: number, length: number, gaps: readonly Gap[]): Span[] {
  const [first] = gaps;
  if (!first) return [{ stroke, from: 0, to: length, freeStart: true, freeEnd: true }];
  const turned = gaps.map((gap) => ({ ...gap, from: gap.from - first.from, to: gap.to - first.from }));
  return openSpans(stroke, length, turned).map((span) => {
    const from = wrapped(span.from + first.from, length);
    return { ...span, from, to: from + span.to - span.from, freeStart: false, freeEnd: false };
  });
}
