/** A study that may take a while: work in slices between its cases. */
import type { Sliced } from '../numeric/sliced.ts';

export { finish, within } from '../numeric/sliced.ts';

export type Study<Result> = Sliced<Result>;
