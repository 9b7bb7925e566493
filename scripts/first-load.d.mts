import type { Page } from 'playwright';

export function firstLoad(
  tab: Page,
  address: string,
): Promise<{
  page: number;
  worker: number;
  files: { pathname: string; isWorker: boolean; size: number }[];
}>;
