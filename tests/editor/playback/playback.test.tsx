// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Playback } from '../../../src/editor/playback/Playback.tsx';
import { playbackCommands } from '../../../src/editor/playback/commands.ts';
import { durationOf, totalSeconds } from '../../../src/editor/playback/moments.ts';
import { NO_OVERLAY, overlay } from '../../../src/editor/playback/overlay.ts';
import { change, initialPlayback, playback, soughtTo } from '../../../src/editor/playback/state.ts';
import { initialSheet, sheet } from '../../../src/editor/sheet/store.ts';
import { editor, initialState } from '../../../src/editor/state/editor.ts';
import { ask } from '../../../src/editor/worker/client.ts';
import type { NodePicture, Relief } from '../../../src/editor/worker/protocol.ts';
import { first, programs } from './fixture.ts';

vi.mock('../../../src/editor/worker/client.ts', () => ({ ask: vi.fn() }));

const relief: Relief = { width: 1, height: 1, pixels: new Uint8ClampedArray(4), box: { minX: 0, minY: 0, maxX: 1, maxY: 1 } };
const pictureOf = (node: string, playable = true): NodePicture => ({ node, playable, outputs: { layers: [], lines: [] }, inputs: [], spots: {}, junctions: {} });
const show = (picture: NodePicture | undefined) => act(() => editor.setState({ picture }));
const answers = (question: string) => Promise.resolve(question === 'playback' ? programs : relief);
const asked = (question: string) => vi.mocked(ask).mock.calls.filter(([q]) => q === question).map(([, about]) => about);

beforeEach(() => {
  vi.mocked(ask).mockReset().mockImplementation(answers as never);
  editor.setState(initialState, true);
  playback.setState(initialPlayback, true);
  overlay.setState(NO_OVERLAY, true);
  sheet.setState(initialSheet, true);
});
afterEach(cleanup);

const seek = (seconds: number) => act(() => change(soughtTo(seconds)));
const told = (name: string) => document.querySelector(`[data-readout=${name}] dd`)?.textContent;
const slider = () => screen.getByRole<HTMLInputElement>('slider', { name: 'Time' });

async function openBar() {
  const user = userEvent.setup();
  show(pictureOf('programs'));
  render(<Playback />);
  await user.click(screen.getByRole('button', { name: 'Play the programs' }));
  await screen.findByRole('slider', { name: 'Time' });
  return user;
}

describe('the bar', () => {
  it('is there only where programs can be played', () => {
    const { container } = render(<Playback />);
    expect(container.innerHTML).toBe('');
    show(pictureOf('board', false));
    expect(container.innerHTML).toBe('');
    show(pictureOf('programs'));
    expect(screen.getByRole('button', { name: 'Play the programs' })).toBeTruthy();
    expect(ask).not.toHaveBeenCalled();
  });

  it('draws cutter, trail and relief while it is open, nothing once it is closed', async () => {
    const user = await openBar();
    await waitFor(() => expect(overlay.getState().relief).toBe(relief));
    seek(10);
    expect(overlay.getState().cutter).toEqual({ x: 25, y: 0, z: -3, diameter: 6 });
    expect(overlay.getState().trail?.cut).toHaveLength(4);
    await user.click(screen.getByRole('button', { name: 'Close' }));
    expect(overlay.getState()).toEqual(NO_OVERLAY);
    expect(playback.getState()).toMatchObject({ open: false, seconds: 0 });
  });

  it('clears the sheet when a step without programs is shown, or the page lets it go', async () => {
    await openBar();
    seek(10);
    show(pictureOf('board', false));
    expect(overlay.getState()).toEqual(NO_OVERLAY);
    expect(playback.getState().open).toBe(false);
  });

  it('tells why there is nothing to play', async () => {
    vi.mocked(ask).mockRejectedValue({ place: 'programs', expected: 'a step with programs', found: 'none', advice: 'Wait.' });
    show(pictureOf('programs'));
    render(<Playback />);
    await userEvent.click(screen.getByRole('button', { name: 'Play the programs' }));
    expect((await screen.findByRole('alert')).textContent).toContain('expected a step with programs, found none. Wait.');
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Play' }).disabled).toBe(true);
  });
});

describe('the read-outs', () => {
  it('tell time, feed, depth, place, program and pass', async () => {
    await openBar();
    seek(10);
    expect(['time', 'feed', 'depth', 'place', 'program', 'pass'].map(told)).toEqual([
      '0:00:10 of 0:00:31', '1800 mm/min', '3 mm below the top', 'x 25.00, y 0.00 mm', 'a.ngc', 'groove 1',
    ]);
    seek(2);
    expect([told('feed'), told('pass')]).toEqual(['waiting for the spindle', 'none yet']);
    seek(totalSeconds([first]) + 1);
    expect([told('feed'), told('program'), told('depth')]).toEqual(['rapid', 'b.ngc', '4 mm above the top']);
  });

  it('mark the block under way between its neighbours', async () => {
    await openBar();
    seek(10);
    const listing = within(screen.getByRole('listbox'));
    const current = listing.getByRole('option', { selected: true });
    expect(current.textContent).toBe('▸X40.0 F1800.0');
    expect(current.getAttribute('aria-posinset')).toBe('10');
    expect(listing.getAllByRole('option').map(({ textContent }) => textContent)).toContain('G0 Z10.0');
    expect(screen.getByRole('listbox').getAttribute('aria-activedescendant')).toBe(current.id);
  });
});

describe('programs of several set-ups', () => {
  const box = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
  const list = [0, 300].map((x, i) => ({ name: `set-up ${i + 1}`, shift: [x, 0] as const, core: box, window: box }));
  const several = [{ ...programs[0]!, setUp: { name: 'set-up 1', place: 0 } }, { ...programs[1]!, setUp: { name: 'set-up 2', place: 1 } }];

  async function openSeveral() {
    vi.mocked(ask).mockImplementation(((question: string) => Promise.resolve(question === 'playback' ? several : relief)) as never);
    const user = userEvent.setup();
    show({ ...pictureOf('programs'), setUps: { list, reach: box } });
    render(<Playback />);
    await user.click(screen.getByRole('button', { name: 'Play the programs' }));
    await screen.findByRole('slider', { name: 'Time' });
  }

  it('are named with their set-up', async () => {
    await openSeveral();
    expect(screen.getAllByRole('option', { name: / of 2: / }).map(({ textContent }) => textContent)).toEqual(['1 of 2: set-up 1, a.ngc', expect.stringContaining('2 of 2: set-up 2, ')]);
    expect(slider().getAttribute('aria-valuetext')).toContain('set-up 1, a.ngc');
  });

  it('take the sheet along where one is looked at alone, and tell places in its coordinates; otherwise all stay in sight', async () => {
    await openSeveral();
    seek(durationOf(several[0]!) + 1);
    expect(sheet.getState().setUp).toBeUndefined();
    seek(10);
    act(() => sheet.setState({ setUp: 1 }));
    expect(told('place')).toBe('x -275.00, y 0.00 mm');
    act(() => sheet.setState({ setUp: 0 }));
    seek(durationOf(several[0]!) + 1);
    expect(sheet.getState().setUp).toBe(1);
    seek(1);
    expect(sheet.getState().setUp).toBe(0);
  });
});

describe('going to a moment', () => {
  it('by the slider\'s keys: seconds, with Shift moves, pages passes, home and end', async () => {
    const user = await openBar();
    slider().focus();
    const after = async (keys: string) => {
      await user.keyboard(keys);
      return playback.getState().seconds;
    };
    expect(await after('{ArrowRight}')).toBe(1);
    expect(await after('{ArrowUp}{ArrowLeft}')).toBe(1);
    expect(await after('{Shift>}{ArrowRight}{/Shift}')).toBe(4);
    expect(await after('{Shift>}{ArrowLeft}{/Shift}')).toBe(1);
    expect(await after('{PageUp}')).toBe(13);
    expect(await after('{PageDown}')).toBe(1);
    expect(await after('{End}')).toBe(totalSeconds(programs));
    expect(await after('{Home}')).toBe(0);
    expect(slider().getAttribute('aria-valuetext')).toBe('0:00:00 of 0:00:31, a.ngc');
  });

  it('by dragging the slider', async () => {
    await openBar();
    fireEvent.change(slider(), { target: { value: '10' } });
    expect(told('place')).toBe('x 25.00, y 0.00 mm');
  });

  it('by the buttons, a line of the listing, or choosing a program', async () => {
    const user = await openBar();
    await user.click(screen.getByRole('button', { name: 'Next pass' }));
    await user.click(screen.getByRole('button', { name: 'Next move' }));
    expect(playback.getState().seconds).toBe(4);
    await user.click(screen.getByRole('button', { name: 'Previous pass' }));
    expect(playback.getState().seconds).toBe(1);
    await user.click(screen.getByText('G1 Z-3.0 F500.0'));
    expect(playback.getState().seconds).toBe(6);
    await user.selectOptions(screen.getByRole('combobox', { name: 'Program' }), '2 of 2: b.ngc');
    expect(playback.getState().seconds).toBe(totalSeconds([first]));
  });

  it('by the arrows in the listing', async () => {
    const user = await openBar();
    screen.getByRole('listbox').focus();
    await user.keyboard('{ArrowDown}{ArrowDown}{ArrowUp}');
    expect(playback.getState().seconds).toBe(1);
  });

  it('by commands, which say what is in the way', async () => {
    const command = (id: string) => playbackCommands.find((one) => one.id === id)!;
    expect(command('playback-next-move').refusal?.()).toContain('There are no programs yet');
    await openBar();
    expect(command('playback-next-move').refusal?.()).toBeUndefined();
    act(() => void command('playback-next-pass').run());
    expect(playback.getState().seconds).toBe(1);
    act(() => void command('playback-play').run());
    expect(playback.getState().playing).toBe(true);
    act(() => void command('playback-play').run());
    expect(playback.getState().playing).toBe(false);
    expect(new Set(playbackCommands.flatMap(({ keys = [] }) => keys)).size).toBe(playbackCommands.length);
  });
});

describe('playing', () => {
  it('lets time pass at the speed that was chosen, until it is paused', async () => {
    const user = await openBar();
    expect(playback.getState().playing).toBe(false);
    await user.click(screen.getByRole('button', { name: '1 ×' }));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    await waitFor(() => expect(playback.getState().seconds).toBeGreaterThan(0));
    await user.click(screen.getByRole('button', { name: 'Pause' }));
    const { seconds } = playback.getState();
    expect(seconds).toBeLessThan(10);
    await new Promise((resolve) => { setTimeout(resolve, 60); });
    expect(playback.getState().seconds).toBe(seconds);
  });

  it('stops and reads the programs again when they may be others, and stays where it was', async () => {
    const user = await openBar();
    seek(12);
    await user.click(screen.getByRole('button', { name: 'Play' }));
    vi.mocked(ask).mockImplementation(((question: string) => Promise.resolve(question === 'playback' ? [first] : relief)) as never);
    show(pictureOf('programs'));
    await waitFor(() => expect(playback.getState().programs).toHaveLength(1));
    expect(playback.getState().playing).toBe(false);
    expect(playback.getState().seconds).toBeGreaterThanOrEqual(12);
    expect(asked('playback')).toHaveLength(2);
  });

  it('takes no answer about a step that is no longer shown', async () => {
    let late: (value: unknown) => void = () => undefined;
    vi.mocked(ask).mockImplementationOnce(() => new Promise<never>((resolve) => { late = resolve as never; }));
    show(pictureOf('before'));
    render(<Playback />);
    await userEvent.click(screen.getByRole('button', { name: 'Play the programs' }));
    show(pictureOf('programs'));
    await screen.findByRole('slider', { name: 'Time' });
    await act(async () => { late([first]); await Promise.resolve(); });
    expect(playback.getState().programs).toBe(programs);
  });
});

describe('the relief', () => {
  it('is asked for at the time that is shown, counted within its program', async () => {
    await openBar();
    await waitFor(() => expect(asked('relief')).toEqual([{ node: 'programs', program: 0, seconds: 0, dark: false }]));
    seek(totalSeconds([first]) + 3);
    await waitFor(() => expect(asked('relief').at(-1)).toEqual({ node: 'programs', program: 1, seconds: 3, dark: false }));
  });

  it('goes away and comes back by its switch', async () => {
    const user = await openBar();
    await waitFor(() => expect(overlay.getState().relief).toBe(relief));
    await user.click(screen.getByRole('checkbox', { name: 'Show relief' }));
    expect(overlay.getState().relief).toBeUndefined();
    const before = asked('relief').length;
    seek(5);
    expect(asked('relief')).toHaveLength(before);
    await user.click(screen.getByRole('checkbox', { name: 'Show relief' }));
    await waitFor(() => expect(overlay.getState().relief).toBe(relief));
  });
});
