/** An edit of the design: what changes, how the step is called, and whether it is still moving. */

export interface Change {
  path: string; // dotted key path in the design document: "wing.droop.tipAngle", "wing.chord" ...
  value: unknown; // undefined takes the key away
}

export interface EditDetail {
  changes: Change[];
  label: string; // names the step for undo: "tip drop", "wing span"
  phase: 'live' | 'settled' | 'cancelled'; // moving, let go, or Escape: back to where the gesture began
}
