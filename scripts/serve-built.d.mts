export interface BuiltPage {
  address: string;
  outDir: string;
  close: () => Promise<void>;
}
export function buildPage(): string;
export function dropPage(outDir: string): void;
export function servePage(outDir: string): Promise<BuiltPage>;
export function serveBuilt(): Promise<BuiltPage>;
