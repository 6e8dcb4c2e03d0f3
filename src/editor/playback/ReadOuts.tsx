import { momentAt, totalSeconds } from './moments.ts';
import { capital } from '../sheet/set-ups.ts';
import { usePlayback } from './state.ts';
import { clock, depthWords, feedWords, fileName, passName, placeWords } from './words.ts';

/** Where the cutter is, in figures. */
export function ReadOuts() {
  const programs = usePlayback((state) => state.programs);
  const seconds = usePlayback((state) => state.seconds);
  const moment = momentAt(programs, seconds);
  if (moment === undefined) return <p className="playback-says">These programs make no moves.</p>;
  const program = programs[moment.program]!;
  const told: readonly (readonly [string, string, string])[] = [
    ['time', 'Time', `${clock(seconds)} of ${clock(totalSeconds(programs))}`],
    ['feed', 'Feed', feedWords(moment)],
    ['depth', 'Depth', depthWords(moment.z)],
    ['place', 'Place', placeWords(moment)],
    ...(program.setUp ? [['set-up', 'Set-up', capital(program.setUp.name)] as const] : []),
    ['program', 'Program', fileName(program.file)],
    ['pass', 'Pass', passName(program, moment.line) ?? 'none yet'],
  ];
  return (
    <dl className="playback-readouts">
      {told.map(([name, label, value]) => <div key={name} data-readout={name}><dt>{label}</dt><dd className="number">{value}</dd></div>)}
    </dl>
  );
}
