/** Which profile model a design's strips pay: the one place where studies learn what sections cost. */
import type { Design } from '../design/document.ts';
import { fixedProfile, type ProfileModel } from '../forces/profile.ts';

export function profileFor(_design: Design): ProfileModel {
  return fixedProfile;
}
