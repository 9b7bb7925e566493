/**
 * Every study by name: what the page asks the solver's study worker for. A study is a generator that yields the share
 * done between cases, or a plain function when it takes milliseconds. To add one, add a line. Only the worker loads
 * this file; the page takes its types.
 */

import { bandStudy } from '../solver/bands.ts';
import type { BeachSetting } from '../solver/design/beach-setting.ts';
import type { Design } from '../solver/design/document.ts';
import { solve } from '../solver/solve.ts';
import { beachStudy, beachTable } from '../solver/studies/beach.ts';
import { builtPlanform } from '../solver/studies/built-shape.ts';
import { cavitationStudy } from '../solver/studies/cavitation-study.ts';
import { type CurveOptions, curveStudy } from '../solver/studies/curve-study.ts';
import { type DroopMapOptions, droopMap } from '../solver/studies/droop-map.ts';
import { type FaultOptions, faultStudy } from '../solver/studies/fault-study.ts';
import { finishStudy } from '../solver/studies/finish-study.ts';
import { type FrequencyOptions, frequencyStudy } from '../solver/studies/frequencies.ts';
import { type HoldOptions, holdStudy } from '../solver/studies/hold-study.ts';
import { type ModeTracksOptions, modeTracks } from '../solver/studies/mode-tracks.ts';
import { priceBand } from '../solver/studies/price-band.ts';
import {
  type ChainOptions,
  type FrontEnds,
  type FrontPoint,
  frontChain,
  frontEnds,
  frontOf,
} from '../solver/studies/propose/front.ts';
import { planOf } from '../solver/studies/propose/plan.ts';
import { type SettleOptions, settle } from '../solver/studies/propose/proposal.ts';
import { type StartOptions, searchFrom } from '../solver/studies/propose/search.ts';
import { type StandingOptions, standingOf } from '../solver/studies/propose/standing.ts';
import { remedies } from '../solver/studies/remedies.ts';
import { type RiddenOptions, riddenStudy } from '../solver/studies/ridden.ts';
import { type RideOptions, rideStudy } from '../solver/studies/ride.ts';
import { riderStudy } from '../solver/studies/rider.ts';
import { compareSections, type SectionChoiceOptions } from '../solver/studies/section-choice.ts';
import { type SectionOptions, sectionPolars, sectionView } from '../solver/studies/section-view.ts';
import { type SideStudyOptions, sideStudy } from '../solver/studies/side-study.ts';
import { type SkinOptions, skinView } from '../solver/studies/skin-study.ts';
import { speedDetails } from '../solver/studies/speed-details.ts';
import { type SpeedStudyOptions, speedStudy } from '../solver/studies/speed-study.ts';
import { type ChangeOptions, stabilizerChanges } from '../solver/studies/stabilizer-changes.ts';
import { type SizingOptions, sizeStabilizer } from '../solver/studies/stabilizer-sizing.ts';
import { type StallOptions, stallStudy } from '../solver/studies/stall.ts';
import { type StiffnessOptions, stiffness } from '../solver/studies/stiffness.ts';
import { thinStudy } from '../solver/studies/thin.ts';
import { type TransitionOptions, transitionMap } from '../solver/studies/transition-map.ts';
import { type WaveStudyOptions, waveStudy } from '../solver/studies/wave-study.ts';
import { whistle } from '../solver/studies/whistle.ts';
import { type OverviewOptions, workshopOverview } from '../workshop/overview.ts';

type NoOptions = Record<string, never>;

export const STUDIES = {
  report: (design: Design, _options: NoOptions) => solve(design),
  bands: (design: Design, _options: NoOptions) => bandStudy(design),
  workshop: (design: Design, options: OverviewOptions) => workshopOverview(design, options),
  curve: (design: Design, options: CurveOptions) => curveStudy(design, options),
  priceBand: (design: Design, options: Parameters<typeof priceBand>[1]) => priceBand(design, options),
  droopMap: (design: Design, options: DroopMapOptions) => droopMap(design, options),
  sections: (design: Design, options: SectionChoiceOptions) => compareSections(design, options),
  hold: (design: Design, options: HoldOptions) => holdStudy(design, options),
  modeTracks: (design: Design, options: ModeTracksOptions) => modeTracks(design, options),
  sizing: (design: Design, options: SizingOptions) => sizeStabilizer(design, options),
  stabilizerChanges: (design: Design, options: ChangeOptions) => stabilizerChanges(design, options),
  speed: (design: Design, options: SpeedStudyOptions) => speedStudy(design, options),
  speedDetails: (design: Design, _options: NoOptions) => speedDetails(design),
  stall: (design: Design, options: StallOptions) => stallStudy(design, options),
  sidePull: (design: Design, options: SideStudyOptions) => sideStudy(design, options),
  waves: (design: Design, options: WaveStudyOptions) => waveStudy(design, options),
  cavitation: (design: Design, _options: NoOptions) => cavitationStudy(design),
  section: (design: Design, options: SectionOptions) => sectionView(design, options),
  sectionPolars: (design: Design, options: Omit<SectionOptions, 'cl'>) => sectionPolars(design, options),
  skin: (design: Design, options: SkinOptions) => skinView(design, options),
  transition: (design: Design, options: TransitionOptions) => transitionMap(design, options),
  finish: (design: Design, _options: NoOptions) => finishStudy(design),
  faults: (design: Design, options: FaultOptions) => faultStudy(design, options),
  stiffness: (design: Design, options: StiffnessOptions) => stiffness(design, options),
  proposalPlan: (design: Design, _options: NoOptions) => planOf(design),
  proposalStart: (design: Design, options: StartOptions) => searchFrom(design, options),
  proposal: (design: Design, options: SettleOptions) => settle(design, options),
  standing: (design: Design, options: StandingOptions) => standingOf(design, options),
  frontEnds: (design: Design, options: { near: Design; variant: number }) => frontEnds(design, options),
  frontChain: (design: Design, options: ChainOptions) => frontChain(design, options),
  front: (_design: Design, { ends, chains }: { ends: FrontEnds; chains: FrontPoint[][] }) =>
    frontOf(ends, chains),
  remedies: (design: Design, _options: NoOptions) => remedies(design),
  thin: (design: Design, _options: NoOptions) => thinStudy(design),
  toBuild: (design: Design, _options: NoOptions) => builtPlanform(design),
  ride: (design: Design, options: RideOptions) => rideStudy(design, options),
  ridden: (design: Design, options: RiddenOptions) => riddenStudy(design, options),
  frequencies: (design: Design, options: FrequencyOptions) => frequencyStudy(design, options),
  beach: (design: Design, options: { setting: BeachSetting }) => beachStudy(design, options),
  beachTable: (design: Design, _options: NoOptions) => beachTable(design),
  rider: (design: Design, options: { against: Design }) => riderStudy(design, options),
  whistle: (design: Design, _options: NoOptions) => whistle(design),
};

export type StudyRegistry = typeof STUDIES;
