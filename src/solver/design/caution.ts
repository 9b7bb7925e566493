/** What stands beside structural, cavitation and stability figures and on everything that leaves the program. */
export const CAUTION =
  'Structural, cavitation and stability figures compare designs. They are estimates, no approval of strength or safety: ' +
  'a foil that fails or lets go at speed can injure. Proof-load before riding, wear protection, follow local rules and ' +
  'the material maker’s data, and have a qualified person check what carries a rider.';
