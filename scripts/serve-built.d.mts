export interface BuiltPage {
  address: string;
  outDir: string;
  close: () => Promise<void>;
}
export function serveBuilt(): Promise<BuiltPage>;
