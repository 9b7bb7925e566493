/** Waves: what they do to the foil at the brief's speeds, and what a downwind rider can take from them. SI; degrees. */
import type { Design } from '../design/document.ts';
import { attempt } from './attempt.ts';
import { PressureWatch } from './cavitation.ts';
import { bestSpeeds, speedSeries } from './speed.ts';
import { makeRunner } from './speed-study.ts';
import {
  type DownwindRow,
  downwindTable,
  type FaceRide,
  faceRide,
  type Pumping,
  pumping,
  type WaveSwing,
  type Waves,
  waveSwing,
} from './waves.ts';

export interface WaveStudyOptions {
  waves: Waves;
  pumpFrequency: number; // Hz
}

export interface WaveStudy {
  swing: Array<{ speed: number; swing: WaveSwing | null }>; // at the three speeds of the brief
  downwind: DownwindRow[];
  leastSlope: DownwindRow | null;
  ride: FaceRide | null;
  pumpSpeed: number; // of least power, or take-off
  pumping: Pumping | null;
}

const SPEEDS = 12;

export function waveStudy(design: Design, { waves, pumpFrequency }: WaveStudyOptions): WaveStudy {
  const runner = makeRunner(design);
  const watch = new PressureWatch(runner);
  const { takeOff, cruise, top } = design.brief.speeds;
  const glide = speedSeries(runner, takeOff, top, SPEEDS, 'incidence');
  const downwind = downwindTable(runner, glide);
  const pumpSpeed = bestSpeeds(glide).leastPower?.speed ?? takeOff;
  const swing = [takeOff, cruise, top].map((speed) => ({
    speed,
    swing: attempt(() => waveSwing(runner, watch, speed, waves)),
  }));
  return {
    swing,
    downwind,
    leastSlope: downwind.reduce<DownwindRow | null>(
      (least, row) => (least === null || row.slope < least.slope ? row : least),
      null,
    ),
    ride: faceRide(runner, waves),
    pumpSpeed,
    pumping: attempt(() => {
      const { totalDrag } = runner.run(pumpSpeed, 'incidence');
      return pumping(runner, pumpSpeed, totalDrag, pumpFrequency, runner.density);
    }),
  };
}
