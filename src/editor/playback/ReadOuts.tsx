import { momentAt, totalSeconds } from './moments.ts';
import { read } from '../sheet/set-ups.ts';
import { useAlone } from '../sheet/use-alone.ts';
import { usePlayback } from './state.ts';
import { clock, depthWords, feedWords, fileName, passName, placeWords } from './words.ts';

/** Where the cutter is, in figures: in the coordinates the sheet's rulers show. */
export function ReadOuts() {
  const programs = usePlayback((state) => state.programs);
  const seconds = usePlayback((state) => state.seconds);
  const alone = useAlone();
  const moment = momentAt(programs, seconds);
  if (moment === undefined) return <p className="playback-says">These programs make no moves.</p>;
  const program = programs[moment.program]!;
  const told: readonly (readonly [string, string, string])[] = [
    ['time', 'Time', `${clock(seconds)} of ${clock(totalSeconds(programs))}`],
    ['feed', 'Feed', feedWords(moment)],
    ['depth', 'Depth', depthWords(moment.z)],
    ['place', 'Place', placeWords(read(moment, alone))],
    ['program', 'Program', fileName(program.file)],
    ['pass', 'Pass', passName(program, moment.line) ?? 'none yet'],
  ];
  return (
    <dl className="playback-readouts">
      {told.map(([name, label, value]) => <div key={name} data-readout={name}><dt>{label}</dt><dd className="number">{value}</dd></div>)}
    </dl>
  );
}
