import { type Box, unionBoxes } from '../../geometry/box.ts';
import { type DepthGrid, removeSwath } from '../../machining/proof/removal.ts';
import { swathOf } from '../../machining/proof/swath.ts';
import type { Move } from '../../machining/job/pass.ts';
import { makeKeyframes } from './keyframes.ts';
import { type Step, type SteppedProgram, partOfStep } from './steps.ts';

/** Programs run one after the other on one sheet, as far as they were followed. */
export interface RemovalCourse {
  /**
   * Brings the grid to where `program` is after `seconds`, everything before it done, and tells the box within which
   * cells may have changed; `undefined` when none has.
   */
  readonly go: (program: number, seconds: number) => Box | undefined;
}

/** A place on the course: so many steps are done, and the next one up to a number of seconds of its program; 0 when it is not begun. */
interface Position {
  readonly done: number;
  readonly partly: number;
}

/**
 * Follows programs on a grid that is still untouched. Going on sweeps only what is new, going back begins at a state kept
 * on the way. A part of a move is always within the whole of it, so going on may start from a move half done.
 */
export function makeCourse(programs: readonly SteppedProgram[], grid: DepthGrid): RemovalCourse {
  const course = programs.flatMap(({ steps, cutterDiameter }) => steps.map((step) => ({ step, radius: cutterDiameter / 2 })));
  const keyframes = makeKeyframes(course.length, grid.depth.length);
  const everything = gridBox(grid);
  let at: Position = { done: 0, partly: 0 };

  const remove = (index: number, move: Move): Box | undefined => {
    const { step, radius } = course[index]!;
    const swath = swathOf(step.from, move, radius);
    if (swath) removeSwath(grid, swath);
    return swath?.box;
  };

  const goOn = (to: Position): Box[] => {
    const boxes: Box[] = [];
    const add = (box: Box | undefined) => box && boxes.push(box);
    for (let index = at.done; index < to.done; index++) {
      add(remove(index, course[index]!.step.move));
      if (keyframes.wants(index + 1)) keyframes.keep(index + 1, grid);
    }
    const part = to.partly > 0 ? partOfStep(course[to.done]!.step, to.partly) : undefined;
    if (part) add(remove(to.done, part));
    at = to;
    return boxes;
  };

  return {
    go(program, seconds) {
      const to = positionAt(programs, program, seconds);
      const back = to.done < at.done || (to.done === at.done && to.partly < at.partly);
      if (back) at = { done: keyframes.restore(to.done, grid), partly: 0 };
      return unionBoxes([...(back ? [everything] : []), unionBoxes(goOn(to))]);
    },
  };
}

function positionAt(programs: readonly SteppedProgram[], program: number, seconds: number): Position {
  const before = programs.slice(0, program).reduce((sum, { steps }) => sum + steps.length, 0);
  const steps = programs[program]?.steps ?? [];
  const done = stepsDone(steps, seconds);
  const next = steps[done];
  return { done: before + done, partly: next && next.begins < seconds ? seconds : 0 };
}

/** How many steps end by `seconds`; they end one after the other. */
function stepsDone(steps: readonly Step[], seconds: number): number {
  let [low, high] = [0, steps.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (steps[middle]!.ends <= seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The box of a grid's cells. */
export function gridBox({ origin: { x, y }, cell, columns, rows }: DepthGrid): Box {
  return { minX: x, minY: y, maxX: x + columns * cell, maxY: y + rows * cell };
}
