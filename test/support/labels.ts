/** What the texts of a drawing do wrong: reach beyond its frame, or lie on one another. */
export function labelFaults(view: HTMLElement): string[] {
  const frame = view.shadowRoot!.querySelector('svg[viewBox]')!;
  const edge = frame.getBoundingClientRect();
  const labels = Array.from(frame.querySelectorAll('text'), (text) => ({
    name: text.textContent!.trim(),
    box: text.getBoundingClientRect(),
  })).filter(({ name }) => name !== '');
  const faults = labels
    .filter(
      ({ box }) =>
        box.left < edge.left - 1 ||
        box.right > edge.right + 1 ||
        box.top < edge.top - 1 ||
        box.bottom > edge.bottom + 1,
    )
    .map(({ name }) => `“${name}” is cut off`);
  for (const [k, one] of labels.entries())
    for (const other of labels.slice(k + 1)) {
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      if (across > 2 && down > 3) faults.push(`“${one.name}” lies on “${other.name}”`);
    }
  return faults;
}
