export function waterProperties(kind: 'sea' | 'fresh', _temperature: number) {
  return kind === 'sea'
    ? { density: 1025.8, viscosity: 1.16e-6, vapourPressure: 1800 }
    : { density: 999.1, viscosity: 1.2e-6, vapourPressure: 1700 };
}
