// Stands in for the snapshot server of another test runner, which the assertion package imports.
const no = () => Promise.reject(new Error('snapshots are not used here'));
export const getSnapshot = no;
export const getSnapshotConfig = no;
export const saveSnapshot = no;
