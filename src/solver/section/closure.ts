/**
 * What an integral boundary layer needs to know of its profile, as slots of a Float64Array that the laminar and the
 * turbulent relations fill. Each value is followed by its derivatives: _H by ln H, _R by ln Re_theta, _Q by ln q.
 * H is the shape factor, Re_theta the Reynolds number of the momentum thickness theta and the local speed, q the
 * square root of the shear stress coefficient C_tau.
 */
export const STAR = 0; // H*, the ratio of energy to momentum thickness
export const STAR_H = 1; // of ln H*
export const STAR_R = 2;
export const FRICTION = 3; // cf/2
export const FRICTION_H = 4;
export const FRICTION_R = 5;
export const DISSIPATION = 6; // 2 CD/H*
export const DISSIPATION_H = 7;
export const DISSIPATION_R = 8;
export const DISSIPATION_Q = 9;
export const BALANCE = 10; // q in equilibrium
export const BALANCE_H = 11;
export const BALANCE_R = 12;
export const THICKNESS = 13; // delta/theta
export const THICKNESS_H = 14;
export const CLOSURE_SLOTS = 15;
