export const CHROME_FLAGS: string[];
export function findChrome(): Promise<string | undefined>;
