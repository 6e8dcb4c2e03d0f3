import { useEffect } from 'react';
import { Listing } from './Listing.tsx';
import { ReadOuts } from './ReadOuts.tsx';
import { Scrubber } from './Scrubber.tsx';
import { Transport } from './Transport.tsx';
import { useLoading, useMarks, useRelief, useSetUp, useTicking } from './follow.ts';
import { usePlayed } from './played.ts';
import { change, closed, opened, usePlayback } from './state.ts';
import './playback.css';

/** Plays programs back, move by move; closed it is a single button. */
export function Playback() {
  const playable = usePlayed() !== undefined;
  const open = usePlayback((state) => state.open);
  useEffect(() => (playable ? undefined : change(closed)), [playable]);
  if (!playable) return null;
  return (
    <section className="playback" aria-label="Playback of the programs">
      {open ? <OpenBar /> : <button type="button" className="button" onClick={() => change(opened)}>Play the programs</button>}
    </section>
  );
}

function OpenBar() {
  useLoading();
  useTicking();
  useMarks();
  useRelief();
  useSetUp();
  const ready = usePlayback((state) => state.programs.length > 0);
  const refusal = usePlayback((state) => state.refused);
  return (
    <div className="playback-bar">
      {ready && <Scrubber />}
      <Transport />
      {ready && <div className="playback-told"><ReadOuts /><Listing /></div>}
      {!ready && refusal === undefined && <p className="playback-says" role="status">Reading the programs back.</p>}
      {refusal !== undefined && <p className="playback-says is-failed" role="alert">✕ {refusal}</p>}
    </div>
  );
}
