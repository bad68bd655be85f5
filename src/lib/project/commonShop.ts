import { shop } from './fields/machines.ts';
import { startOf } from './fields/starts.ts';

/** The workshop that is reckoned with until its owner says otherwise. */
export const COMMON_SHOP = startOf(shop);
