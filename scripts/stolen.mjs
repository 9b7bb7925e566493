// How much processor time a virtual machine's host kept for others: what a time measured meanwhile has to be read with.
import { existsSync, readFileSync } from 'node:fs';

const COUNTS = '/proc/stat'; // Linux: "cpu user nice system idle iowait irq softirq steal ..." since the start, see proc(5)
const STEAL = 7;

function counts() {
  if (!existsSync(COUNTS)) return null;
  const [first] = readFileSync(COUNTS, 'utf8').split('\n');
  return first.trim().split(/\s+/).slice(1, 9).map(Number);
}

/** Call it before; what it returns gives the stolen share of all processor time since, null where no count is kept. */
export function watchStolen() {
  const before = counts();
  return () => {
    const after = counts();
    if (!before || !after) return null;
    const spent = after.map((count, k) => count - before[k]);
    const all = spent.reduce((sum, count) => sum + count, 0);
    return all > 0 ? spent[STEAL] / all : 0;
  };
}
