/**
 * Prandtl's lifting line once more, by Glauert's Fourier series (H. Glauert, The Elements of Aerofoil and Airscrew
 * Theory, Cambridge 1926, ch. XI): Gamma = 2 b V sum A_n sin(n theta), y = -(b/2) cos theta, with
 * sum A_n sin(n theta) (n mu + sin theta) = mu angle sin theta, mu = a0 c/(4 b). Shares nothing with the program.
 */

export interface Series {
  liftSlope: number; // per rad
  spanEfficiency: number;
}

/** Straight tapered wing of span 1 at uniform angle; odd terms collocated over a quarter wave. */
export function glauertSeries(aspectRatio: number, taper: number, slope = 2 * Math.PI, terms = 60): Series {
  const rows: number[][] = [];
  for (let i = 0; i < terms; i++) {
    const theta = (Math.PI * (i + 0.5)) / (2 * terms);
    const chord = (2 / (aspectRatio * (1 + taper))) * (1 - (1 - taper) * Math.cos(theta));
    const mu = (slope * chord) / 4;
    const sine = Math.sin(theta);
    const row = Array.from(
      { length: terms },
      (_, k) => Math.sin((2 * k + 1) * theta) * ((2 * k + 1) * mu + sine),
    );
    rows.push([...row, mu * sine]);
  }
  const a = eliminate(rows);
  const first = a[0]!;
  const excess = a.reduce((sum, value, k) => sum + (2 * k + 1) * (value / first) ** 2, 0);
  return { liftSlope: Math.PI * aspectRatio * first, spanEfficiency: 1 / excess };
}

/** Gauss and Jordan on an augmented matrix, with row pivoting. */
export function eliminate(rows: number[][]): number[] {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    const pivot = rows[k]!;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const row = rows[i]!;
      const share = row[k]! / pivot[k]!;
      if (share !== 0) for (let j = k; j < row.length; j++) row[j]! -= share * pivot[j]!;
    }
  }
  return rows.map((row, k) => row[n]! / row[k]!);
}
