import { useEffect } from 'react';
import { type Problem, formatProblem } from '../../runtime/problem.ts';
import { theme } from '../look/theme.ts';
import { lookAtSetUp } from '../sheet/camera.ts';
import { sheet } from '../sheet/store.ts';
import { editor, useEditor } from '../state/editor.ts';
import { ask } from '../worker/client.ts';
import type { Questions } from '../worker/protocol.ts';
import { momentAt, programAt } from './moments.ts';
import { newestOnly } from './newest.ts';
import { NO_OVERLAY, overlay } from './overlay.ts';
import { change, loaded, passed, playback, refused, usePlayback } from './state.ts';
import { markedAt } from './trail.ts';
import { playedNode, usePlayed } from './played.ts';

/** Reliefs are asked for at most this often, milliseconds: each is a picture of the whole sheet, which the page takes a while to draw. */
const RELIEF_EVERY = 160;

const sentence = (reason: unknown): string =>
  (typeof reason === 'object' && reason !== null && 'advice' in reason ? formatProblem(reason as Problem) : String(reason));

/** Fetches the programs of the step that is played, anew whenever its result is. */
export function useLoading(): void {
  const node = usePlayed();
  const result = useEditor(({ picture, reports }) => (picture?.node === node ? picture : reports.get(node ?? '')));
  useEffect(() => {
    if (node === undefined) return undefined;
    let wanted = true;
    change((state) => ({ ...state, playing: false }));
    ask('playback', { node }).then(
      (programs) => { if (wanted) change(loaded(programs)); },
      (reason: unknown) => { if (wanted) change(refused(sentence(reason))); },
    );
    return () => { wanted = false; };
  }, [node, result]);
}

/** Lets time pass while the programs are playing. */
export function useTicking(): void {
  const playing = usePlayback((state) => state.playing);
  useEffect(() => {
    if (!playing) return undefined;
    let last = performance.now();
    let frame = requestAnimationFrame(function tick(now) {
      change(passed((now - last) / 1000));
      last = now;
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing]);
}

/** Draws cutter and trail over the sheet, and takes everything away at the end. */
export function useMarks(): void {
  useEffect(() => {
    const draw = () => {
      const { programs, seconds } = playback.getState();
      const moment = momentAt(programs, seconds);
      overlay.setState(moment ? markedAt(programs[moment.program]!, moment) : { cutter: undefined, trail: undefined });
    };
    const stop = playback.subscribe((state, before) => { if (state.programs !== before.programs || state.seconds !== before.seconds) draw(); });
    draw();
    return () => {
      stop();
      overlay.setState(NO_OVERLAY);
    };
  }, []);
}

/** While one set-up is looked at alone, the sheet goes on to the next one as its programs do. */
export function useSetUp(): void {
  const place = usePlayback(({ programs, seconds }) => programs[programAt(programs, seconds).program]?.setUp?.place);
  useEffect(() => {
    if (place !== undefined && sheet.getState().setUp !== undefined) lookAtSetUp(place);
  }, [place]);
}

/** Keeps the relief under the sheet at the time of the playback, in the page's theme, as fast as the worker makes it. */
export function useRelief(): void {
  const wanted = usePlayback(({ relief, programs }) => relief && programs.length > 0);
  useEffect(() => {
    if (!wanted) return undefined;
    const asking = newestOnly<Questions['relief']['ask'], Questions['relief']['answer']>({
      send: (question) => ask('relief', question),
      take: (relief) => overlay.setState({ relief }),
      refuse: (reason) => change((state) => ({ ...state, refused: sentence(reason) })),
      every: RELIEF_EVERY,
    });
    const request = () => {
      const node = playedNode(editor.getState());
      const { programs, seconds } = playback.getState();
      if (node !== undefined && programs.length > 0) asking.ask({ node, ...programAt(programs, seconds), dark: theme.getState().dark });
    };
    const stops = [
      playback.subscribe((state, before) => { if (state.programs !== before.programs || state.seconds !== before.seconds) request(); }),
      theme.subscribe((state, before) => { if (state.dark !== before.dark) request(); }),
    ];
    request();
    return () => {
      for (const stop of stops) stop();
      asking.stop();
      overlay.setState({ relief: undefined });
    };
  }, [wanted]);
}
