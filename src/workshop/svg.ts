/** A drawing as SVG in real millimetres: one user unit is one millimetre, the page as large as the drawing. */
import { boxOf, type Drawing, LAYERS, type Layer, type Path } from './drawing.ts';

const MARGIN = 5; // mm
const STROKES: Record<Layer, string> = {
  outline: 'stroke="#000" stroke-width="0.2"',
  core: 'stroke="#0a6e6a" stroke-width="0.2"',
  slot: 'stroke="#b94a24" stroke-width="0.2"',
  jig: 'stroke="#000" stroke-width="0.2"',
  stations: 'stroke="#1653c4" stroke-width="0.1"',
  reference: 'stroke="#666" stroke-width="0.1" stroke-dasharray="4 1 1 1"',
  text: '',
};

/** `remark` stands in the file for whoever finds it: design, fingerprint. */
export function svgOf(drawing: Drawing, remark: string): string {
  const box = boxOf(drawing);
  const left = box.left - MARGIN;
  const top = box.top + MARGIN;
  const width = number(box.right + MARGIN - left);
  const height = number(top - (box.bottom - MARGIN));
  const place = (x: number, y: number) => `${number(x - left)} ${number(top - y)}`;
  const layers = (Object.keys(LAYERS) as Layer[]).map((layer) => {
    const lines = drawing.paths
      .filter((path) => path.layer === layer)
      .map((path) => `<path d="${pathData(path, place)}"/>`);
    return lines.length === 0
      ? ''
      : `<g id="${LAYERS[layer]}" fill="none" ${STROKES[layer]}>\n${lines.join('\n')}\n</g>\n`;
  });
  const words = drawing.labels.map(
    ({ at: [x, y], height: size, text }) =>
      `<text x="${number(x - left)}" y="${number(top - y)}" font-size="${number(size)}">${escaped(text)}</text>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
<title>${escaped(drawing.title)}</title>
<desc>${escaped(remark)}</desc>
${layers.join('')}<g id="${LAYERS.text}" font-family="sans-serif" fill="#000">
${words.join('\n')}
</g>
</svg>
`;
}

function pathData({ points, isClosed }: Path, place: (x: number, y: number) => string): string {
  return `M${points.map(([x, y]) => place(x, y)).join('L')}${isClosed ? 'Z' : ''}`;
}

/** A tenth of a micrometre is enough. */
function number(value: number): string {
  return String(Number(value.toFixed(4)));
}

export function escaped(text: string): string {
  return text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign]!,
  );
}
