// @vitest-environment happy-dom
import { act, cleanup, createEvent, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { NodeForm } from '../../../src/editor/form/NodeForm.tsx';
import { editor, initialState, openDocument, present, redoStep, undoStep } from '../../../src/editor/state/editor.ts';
import type { NodeReport } from '../../../src/editor/worker/protocol.ts';
import { LIMITS } from '../../../src/runtime/index.ts';
import { documentWith, shape } from './every-kind.ts';

function show(values: Readonly<Record<string, unknown>> = {}, type?: string) {
  const document = documentWith(values, type);
  openDocument(document, { name: 'test.json', saved: document });
  editor.setState({ shapes: new Map([['every-kind', shape]]) });
  return { ...render(<NodeForm node="one" />), user: userEvent.setup({ delay: null }) };
}

const values = () => present().nodes[0]!.params;
const steps = () => editor.getState().history.past.length;
// By label rather than by role, which takes far longer to look for.
const field = (name: string) => screen.getByLabelText<HTMLInputElement>(name, { selector: 'input[type=text], textarea' });
const slider = (name: string) => screen.getByLabelText<HTMLInputElement>(name, { selector: 'input[type=range]' });
const described = (element: Element) => (element.getAttribute('aria-describedby') ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ');

async function type(user: ReturnType<typeof userEvent.setup>, name: string, text: string) {
  await user.clear(field(name));
  await user.type(field(name), text);
}

afterEach(() => {
  cleanup();
  editor.setState(initialState);
});

describe('the text field of a number', () => {
  it('takes an expression on Enter, as one step, and shows what it comes to while it is typed', async () => {
    const { user } = show();
    await type(user, 'Width', '1/2 in');
    expect(screen.getByText('= 12.7 mm')).toBeTruthy();
    expect(steps()).toBe(0);
    await user.keyboard('{Enter}');
    expect(values()).toEqual({ width: 12.7 });
    expect(field('Width').value).toBe('12.7');
    expect(steps()).toBe(1);
  });

  it('takes it too when it is left', async () => {
    const { user } = show();
    await type(user, 'Width', '25.4*2');
    await user.tab();
    expect(values()).toEqual({ width: 50.8 });
  });

  it('puts the value back on Escape, which then goes no further', async () => {
    const heard = vi.fn();
    const { user, baseElement } = show();
    baseElement.addEventListener('keydown', ({ key }) => heard(key));
    await type(user, 'Width', '77');
    heard.mockClear();
    await user.keyboard('{Escape}');
    expect(field('Width').value).toBe('10');
    expect(heard).not.toHaveBeenCalled();
    await user.keyboard('{Escape}');
    expect(heard).toHaveBeenCalledWith('Escape');
    await user.tab();
    expect(steps()).toBe(0);
  });

  it.each([['200', '0.5 to 100 mm'], ['0.1', '0.5 to 100 mm'], ['10 s', 'a length in mm'], ['1/0', 'a divisor other than 0'], ['', 'a number'], ['ten', 'a number, a sign or a unit']])(
    'keeps %j, tells why it is refused and changes nothing', async (text, expected) => {
      const { user } = show();
      await user.clear(field('Width'));
      if (text !== '') await user.type(field('Width'), text);
      await user.tab();
      expect(field('Width').value).toBe(text);
      expect(field('Width').getAttribute('aria-invalid')).toBe('true');
      expect(screen.getByRole('alert').textContent).toContain(`Expected ${expected}, found`);
      expect(described(field('Width'))).toContain(expected);
      expect(values()).toEqual({});
    });

  it('offers what a comma may have meant, and the value it had', async () => {
    const { user } = show();
    await type(user, 'Width', '12,5{Enter}');
    await user.click(screen.getByRole('button', { name: 'Keep 10 mm' }));
    expect([field('Width').value, steps()]).toEqual(['10', 0]);
    await type(user, 'Width', '12,5{Enter}');
    await user.click(screen.getByRole('button', { name: 'Take 12.5' }));
    expect(values()).toEqual({ width: 12.5 });
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('refuses part of a whole number', async () => {
    const { user } = show();
    await type(user, 'Flutes', '5/2{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Give a whole number.');
  });

  it('does not round what is typed to the slider\'s step, and shows it whole when it is entered', async () => {
    const { user } = show();
    await type(user, 'Width', '10/3{Enter}');
    expect(values()).toEqual({ width: 10 / 3 });
    await user.tab();
    expect(field('Width').value).toBe('3.3333333');
    await user.click(field('Width'));
    expect(field('Width').value).toBe(String(10 / 3));
    await user.tab();
    expect(steps()).toBe(1);
  });

  it('drops what was being typed when the value changes under it', async () => {
    const { user } = show();
    await type(user, 'Width', '20{Enter}');
    await type(user, 'Width', '33');
    act(undoStep);
    expect(field('Width').value).toBe('10');
    act(redoStep);
    expect(field('Width').value).toBe('20');
  });
});

describe('the slider of a number', () => {
  it('goes by steps with the arrows, by ten with the page keys, to the limits with Home and End', async () => {
    const { user } = show();
    act(() => slider('Width').focus());
    const seen: unknown[] = [];
    for (const key of ['ArrowRight', 'ArrowUp', 'ArrowLeft', 'PageUp', 'PageDown', 'End', 'Home', 'ArrowDown']) {
      await user.keyboard(`{${key}}`);
      seen.push(values()['width']);
    }
    expect(seen).toEqual([10.1, 10.2, 10.1, 11.1, 10.1, 100, 0.5, 0.5]);
    expect(slider('Width').getAttribute('aria-valuetext')).toBe('0.5 mm');
  });

  it('makes one step of keys pressed in a run, and another one after a pause', () => {
    show();
    const press = (at: number) => {
      const event = createEvent.keyDown(slider('Width'), { key: 'ArrowRight' });
      Object.defineProperty(event, 'timeStamp', { value: at });
      fireEvent(slider('Width'), event);
    };
    for (const at of [1000, 1500, 2400]) press(at);
    expect([steps(), values()['width']]).toEqual([1, 10.3]);
    press(3500);
    expect(steps()).toBe(2);
    act(undoStep);
    expect(values()['width']).toBe(10.3);
    act(undoStep);
    expect(values()).toEqual({});
  });

  const slide = (share: number) => {
    const element = slider('Width');
    const [low, high] = [Number(element.min), Number(element.max)];
    fireEvent.change(element, { target: { value: String(low + share * (high - low)) } });
  };

  it('edits live while it is dragged, as one step, and says that a gesture is under way', () => {
    show();
    fireEvent.pointerDown(slider('Width'));
    expect(editor.getState().gesturing).toBe(true);
    const seen = [0.3, 0.5, 0.9].map((share) => {
      slide(share);
      return values()['width'] as number;
    });
    expect(seen).toEqual([...new Set(seen)].sort((a, b) => a - b));
    fireEvent.pointerUp(document.body);
    expect([editor.getState().gesturing, steps()]).toEqual([false, 1]);
    fireEvent.pointerDown(slider('Width'));
    slide(0.2);
    fireEvent.pointerUp(document.body);
    expect(steps()).toBe(2);
  });

  it.each([
    ['the pointer is taken away', () => fireEvent.pointerCancel(document.body)],
    ['the window is left', () => fireEvent.blur(window)],
    ['the slider loses the focus', () => fireEvent.blur(slider('Width'))],
    ['the form goes', () => cleanup()],
  ])('ends the gesture when %s', (_, end) => {
    show();
    fireEvent.pointerDown(slider('Width'));
    slide(0.5);
    act(() => void end());
    expect(editor.getState().gesturing).toBe(false);
  });

  it('takes away what the field had refused', async () => {
    const { user } = show();
    await type(user, 'Width', '999{Enter}');
    expect(screen.getByRole('alert')).toBeTruthy();
    slide(0.5);
    expect(screen.queryByRole('alert')).toBeNull();
    expect(field('Width').value).toBe(String(values()['width']));
  });

  it('does not let the card around it feel the press', () => {
    const pressed = vi.fn();
    const { baseElement } = show();
    baseElement.addEventListener('pointerdown', pressed);
    fireEvent.pointerDown(slider('Width'));
    expect(pressed).not.toHaveBeenCalled();
    fireEvent.pointerDown(baseElement);
    expect(pressed).toHaveBeenCalledTimes(1);
  });
});

describe('every field', () => {
  it('puts its default back, and offers that only where the value differs', async () => {
    const { user } = show({ width: 12, pattern: 'by hand', places: [{ x: 1, y: 2 }] });
    expect(screen.getAllByRole('button', { name: /^Put .* back to/ })).toHaveLength(3);
    await user.click(screen.getByRole('button', { name: 'Put Width back to 10 mm' }));
    await user.click(screen.getByRole('button', { name: 'Put Places back to no points' }));
    expect(values()).toEqual({ pattern: 'by hand' });
    expect(screen.queryByRole('button', { name: /^Put Width/ })).toBeNull();
  });

  it('has its doc sentence and its limits at hand', async () => {
    const { user } = show();
    expect(described(field('Width'))).toContain('Width of the groove. From 0.5 to 100 mm.');
    const about = screen.getByRole('button', { name: 'About Width' });
    await user.click(about);
    expect(about.getAttribute('aria-expanded')).toBe('true');
  });

  it('names the recipe\'s input that sets it', () => {
    show();
    expect(screen.getByText('The form asks for it: Groove width.')).toBeTruthy();
  });

  it('tells the problems and cautions of its place, and leaves the others to the card', () => {
    show();
    const problem = (place: string) => ({ place, expected: 'more', found: 'less', advice: `Look at ${place}.` });
    const report: NodeReport = {
      state: 'failed', says: '', thumbnail: { layers: [] } as unknown as NodeReport['thumbnail'], missing: [], milliseconds: 0,
      problems: [problem('width'), problem('region')], cautions: [problem('feed')],
    };
    act(() => editor.setState({ reports: new Map([['one', report]]) }));
    expect(described(field('Width'))).toContain('Stops here. Expected more, found less. Look at width.');
    expect(described(field('Feed'))).toContain('Caution. Expected more, found less. Look at feed.');
    expect(screen.queryByText(/Look at region/)).toBeNull();
  });

  it('shows a value that does not fit, with what is wrong, and changes it only when told to', async () => {
    const { user } = show({ width: 'wide', flutes: 99, pattern: 'spiral', helical: 'yes', places: 'everywhere', name: 7 });
    expect(screen.getByText('"wide"')).toBeTruthy();
    expect(field('Flutes').value).toBe('99');
    expect(described(field('Flutes'))).toContain('a whole number, 1 to 8');
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: 'Pattern' }).value).toBe('spiral');
    expect(screen.getByText('"everywhere"')).toBeTruthy();
    expect(steps()).toBe(0);
    await user.click(screen.getByRole('button', { name: 'Put Width back to 10 mm' }));
    expect(field('Width').value).toBe('10');
  });

  it('keeps plain keys from the page, and lets those with Control go on', () => {
    const heard = vi.fn();
    const { baseElement } = show();
    baseElement.addEventListener('keydown', ({ key }) => heard(key));
    fireEvent.keyDown(slider('Width'), { key: 'ArrowRight' });
    fireEvent.keyDown(field('Name'), { key: 'Delete' });
    fireEvent.keyDown(field('Name'), { key: 'z', ctrlKey: true });
    expect(heard.mock.calls).toEqual([['z']]);
  });
});

describe('choices and switches', () => {
  it('lays few short words side by side, and sets the one that is chosen', async () => {
    const { user } = show();
    const words = within(screen.getByRole('radiogroup', { name: 'Direction' }));
    expect(words.getByRole<HTMLInputElement>('radio', { name: 'climb' }).checked).toBe(true);
    await user.click(words.getByRole('radio', { name: 'conventional' }));
    expect(values()).toEqual({ direction: 'conventional' });
  });

  it('lists many words', async () => {
    const { user } = show();
    await user.selectOptions(screen.getByRole('combobox', { name: 'Pattern' }), 'by hand');
    expect(values()).toEqual({ pattern: 'by hand' });
  });

  it('turns a switch off by its label, and says so in a word', async () => {
    const { user } = show();
    await user.click(screen.getByText('Helical arcs'));
    expect(values()).toEqual({ helical: false });
    expect(screen.getByText('off')).toBeTruthy();
    expect(screen.getByRole<HTMLInputElement>('switch', { name: 'Helical arcs' }).checked).toBe(false);
  });
});

describe('text', () => {
  it('is taken as it is typed: one step for a visit', async () => {
    const { user } = show();
    await type(user, 'Name', 'door');
    expect([values()['name'], steps()]).toEqual(['door', 1]);
    await user.tab();
    await user.type(field('Name'), 's');
    expect([values()['name'], steps()]).toEqual(['doors', 2]);
  });

  it('counts near its limit, and keeps but does not take what is longer', async () => {
    const { user } = show();
    await user.type(field('Name'), 'post');
    expect(screen.getByText('8 of 10 characters')).toBeTruthy();
    await user.type(field('Name'), '2345');
    expect(field('Name').value).toBe('signpost2345');
    expect(values()).toEqual({ name: 'signpost23' });
    expect(screen.getByRole('alert').textContent).toContain('at most 10 characters');
    await user.keyboard('{Escape}');
    expect(field('Name').value).toBe('signpost23');
  });

  it('has several lines where it may be long', async () => {
    const { user } = show();
    expect(field('Story').tagName).toBe('TEXTAREA');
    await user.type(field('Story'), 'first{Enter}second');
    expect(values()).toEqual({ story: 'first\nsecond' });
  });
});

describe('a file', () => {
  const input = () => screen.getByRole('group', { name: 'Drawing' }).querySelector<HTMLInputElement>('input[type=file]')!;
  const choose = async (file: File) => {
    await userEvent.setup({ applyAccept: false, delay: null }).upload(input(), file);
    await vi.waitFor(() => expect(screen.queryByText(/^Reading/)).toBeNull());
  };

  it('is kept as text when its bytes are UTF-8, else as base64', async () => {
    show();
    await choose(new File(['<svg>ü</svg>'], 'sign.svg'));
    expect(values()).toEqual({ drawing: { name: 'sign.svg', text: '<svg>ü</svg>' } });
    await choose(new File([new Uint8Array([255, 254, 0, 1])], 'odd.SVG'));
    expect(values()).toEqual({ drawing: { name: 'odd.SVG', base64: '//4AAQ==' } });
    expect(screen.getByText('4 bytes')).toBeTruthy();
  });

  it('shows name and size, and is taken out again', async () => {
    const { user } = show({ drawing: { name: 'sign.svg', text: 'ü'.repeat(1024) } });
    expect(screen.getByText('sign.svg')).toBeTruthy();
    expect(screen.getByText('2.0 KiB')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Take out sign.svg' }));
    expect(values()).toEqual({ drawing: null });
  });

  it('refuses another ending, one too large and one that cannot be read', async () => {
    show();
    await choose(new File(['x'], 'sign.png'));
    expect(screen.getByRole('alert').textContent).toContain('a file ending in .svg');
    const large = new File(['x'], 'large.svg');
    Object.defineProperty(large, 'size', { value: LIMITS.characters + 1 });
    await choose(large);
    expect(screen.getByRole('alert').textContent).toContain('64.0 MiB');
    const gone = new File(['x'], 'gone.svg');
    gone.arrayBuffer = () => Promise.reject(new Error('gone'));
    await choose(gone);
    expect(screen.getByRole('alert').textContent).toContain('“gone.svg”, which could not be');
    expect(values()).toEqual({});
  });

  it('is taken when dropped onto the field, and the page does not take it too', async () => {
    const heard = vi.fn();
    const { baseElement } = show();
    baseElement.addEventListener('drop', heard);
    const dataTransfer = { types: ['Files'], files: [new File(['<svg/>'], 'dropped.svg')] };
    const zone = screen.getByText(/drop it here/).parentElement!;
    expect(fireEvent.dragOver(zone, { dataTransfer })).toBe(false);
    fireEvent.drop(zone, { dataTransfer });
    await vi.waitFor(() => expect(values()).toEqual({ drawing: { name: 'dropped.svg', text: '<svg/>' } }));
    expect(heard).not.toHaveBeenCalled();
  });

  it('sets nothing when the form went while it was read', async () => {
    const { unmount } = show();
    let finish: (bytes: ArrayBuffer) => void = () => undefined;
    const slow = new File(['x'], 'slow.svg');
    slow.arrayBuffer = () => new Promise((resolve) => {
      finish = resolve;
    });
    await userEvent.upload(input(), slow);
    unmount();
    finish(new ArrayBuffer(1));
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(values()).toEqual({});
  });

  it('is handed back as a copy with the same bytes', async () => {
    const { user } = show({ drawing: { name: 'odd.svg', base64: '//4AAQ==' } });
    const blobs: Blob[] = [];
    const create = vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      blobs.push(blob as Blob);
      return 'blob:copy';
    });
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
    await user.click(screen.getByRole('button', { name: 'Save a copy of odd.svg' }));
    expect([...new Uint8Array(await blobs[0]!.arrayBuffer())]).toEqual([255, 254, 0, 1]);
    expect(click).toHaveBeenCalledTimes(1);
    create.mockRestore();
    click.mockRestore();
  });
});

describe('points', () => {
  const three = [{ x: 1, y: 2 }, { x: 3, y: 4 }, { x: 5, y: 6 }];
  const button = (name: string) => screen.getByRole('button', { name });

  it('takes expressions in each place', async () => {
    const { user } = show({ places: three });
    await type(user, 'y of point 2, mm', '1/2 in{Enter}');
    expect(values()['places']).toEqual([three[0], { x: 3, y: 12.7 }, three[2]]);
    await type(user, 'x of point 1, mm', 'far{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('“far”');
  });

  it('adds after the chosen point, removes it and moves it, one step each', async () => {
    const { user } = show({ places: three });
    await user.click(field('x of point 2, mm'));
    await user.click(button('Move 2 up'));
    expect(values()['places']).toEqual([three[1], three[0], three[2]]);
    await user.click(button('Move 1 down'));
    await user.click(button('Move 2 down'));
    expect(values()['places']).toEqual([three[0], three[2], three[1]]);
    await user.click(button('Remove 3'));
    await user.click(button('Add a point'));
    expect(values()['places']).toEqual([three[0], three[2], three[2]]);
    expect(steps()).toBe(5);
    expect(screen.getByText('3 points')).toBeTruthy();
  });

  it('does nothing at the ends of the list', async () => {
    const { user } = show({ places: three });
    await user.click(button('Move 1 up'));
    expect(button('Move 1 up').getAttribute('aria-disabled')).toBe('true');
    expect(steps()).toBe(0);
  });

  it('can be removed until none is left, and begun anew', async () => {
    const { user } = show({ places: three });
    for (let i = 0; i < 3; i += 1) await user.click(button('Remove 1'));
    expect(values()['places']).toEqual([]);
    expect(screen.getByText('no points')).toBeTruthy();
    await user.click(button('Add a point'));
    expect(values()['places']).toEqual([{ x: 0, y: 0 }]);
  });

  it('takes a pasted list after the chosen point, from a table too, and leaves a pasted number to its field', async () => {
    const { user } = show({ places: three });
    await user.click(field('x of point 1, mm'));
    await user.paste('7,8\n9\t10');
    expect(values()['places']).toEqual([three[0], { x: 7, y: 8 }, { x: 9, y: 10 }, three[1], three[2]]);
    await user.paste('55');
    expect(steps()).toBe(1);
  });

  it('can be written as text, refused and taken as a whole', async () => {
    const { user } = show({ places: three });
    await user.click(button('As text'));
    const text = field('Places: a line for each point, x,y in mm');
    expect(text.value).toBe('1,2\n3,4\n5,6');
    await user.clear(text);
    await user.type(text, '1,2 3');
    await user.click(button('Take these points'));
    expect(screen.getByRole('alert')).toBeTruthy();
    await user.type(text, ',4');
    await user.click(button('Take these points'));
    expect(values()['places']).toEqual([three[0], three[1]]);
  });

  it('shows a long list a page at a time', async () => {
    const { user } = show({ places: Array.from({ length: 120 }, (_, i) => ({ x: i, y: 0 })) });
    expect(screen.queryByLabelText('x of point 51, mm')).toBeNull();
    await user.click(button('Later points'));
    await user.click(button('Later points'));
    await type(user, 'x of point 120, mm', '7{Enter}');
    expect((values()['places'] as readonly unknown[])[119]).toEqual({ x: 7, y: 0 });
    expect(screen.getByText('101 to 120 of 120')).toBeTruthy();
  });

  it('says that they can be taken hold of on the sheet', () => {
    show();
    expect(described(screen.getByRole('group', { name: 'Places' }))).toContain('On the sheet: Drag a hole to where it should be.');
  });
});

describe('what this version does not know', () => {
  it('lists the values of an unknown type and changes none', () => {
    show({ some: 1, more: ['text'] }, 'from-the-future');
    expect(screen.getByText('["text"]')).toBeTruthy();
    expect(screen.queryByRole('textbox')).toBeNull();
    expect(values()).toEqual({ some: 1, more: ['text'] });
  });

  it('lists an unknown parameter and removes it when told to', async () => {
    const { user } = show({ width: 12, glow: 3 });
    expect(screen.getByText(/Not known to this version/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Remove it: glow' }));
    expect(values()).toEqual({ width: 12 });
  });

  it('shows nothing for a node that is gone', () => {
    const { container } = show();
    act(() => openDocument({ ...present(), nodes: [] }, editor.getState().file));
    expect(container.textContent).toBe('');
  });
});

it('has no fault that an accessibility checker finds, refused values included', async () => {
  const { user, container } = show({ width: 12, glow: 3, feed: 'fast', places: [{ x: 1, y: 2 }, { x: 3, y: 4 }], drawing: { name: 'a.svg', text: '<svg/>' } });
  await type(user, 'Flutes', '99{Enter}');
  await user.type(field('Name'), ' that is too long');
  const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
});
