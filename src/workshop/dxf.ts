/** A drawing as DXF: millimetres, layers by name, closed polylines closed. */
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import { type Drawing, LAYERS, type Layer } from './drawing.ts';

const COLOURS: Record<Layer, number> = {
  outline: Colors.White,
  core: Colors.Green,
  slot: Colors.Red,
  jig: Colors.White,
  stations: Colors.Blue,
  reference: Colors.Cyan,
  text: Colors.Magenta,
};

export function dxfOf(drawing: Drawing): string {
  const writer = new DxfWriter();
  writer.setUnits(Units.Millimeters);
  writer.setVariable('$MEASUREMENT', { 70: 1 }); // metric
  for (const layer of Object.keys(LAYERS) as Layer[])
    writer.addLayer(LAYERS[layer], COLOURS[layer], 'Continuous');
  for (const { layer, isClosed, points } of drawing.paths)
    writer.addLWPolyline(
      points.map(([x, y]) => ({ point: point2d(rounded(x), rounded(y)) })),
      {
        layerName: LAYERS[layer],
        flags: isClosed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
      },
    );
  for (const { at, height, text } of drawing.labels)
    writer.addText(point3d(rounded(at[0]), rounded(at[1]), 0), height, plain(text), {
      layerName: LAYERS.text,
    });
  return writer.stringify();
}

function rounded(value: number): number {
  return Number(value.toFixed(4)) + 0;
}

/** One line of printable characters: a line break would end the group. */
function plain(text: string): string {
  return text.replace(/\s+/g, ' ');
}
