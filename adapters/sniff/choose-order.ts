import type { AdapterRemark, Asked, DateOrder } from '../download.js';
import type { OrderEvidence } from './date-order.js';

export interface OrderChoice {
  readonly order: DateOrder;
  readonly matters: boolean;
  /** No row can overturn it. */
  readonly certain: boolean;
  /** Nothing decided it yet. */
  readonly open: boolean;
  readonly assumed: readonly AdapterRemark[];
}

/**
 * Which order the dates are read in: what a saved layout settles, then values above 12, then a pattern the file
 * states (jj/mm/aaaa), then the person's word, then the steps.
 */
export function chooseOrder(evidence: OrderEvidence, stated: DateOrder | null, asked: Asked): OrderChoice {
  const settled = asked.layout?.dateOrder;
  if (settled !== undefined)
    return { order: settled, matters: evidence.kind !== 'plain', certain: true, open: false, assumed: [] };
  if (evidence.kind === 'plain')
    return { order: 'dmy', matters: false, certain: true, open: false, assumed: [] };
  const soft = { matters: true, certain: false, open: false, assumed: [] };
  if (evidence.kind === 'values') {
    const { order } = evidence;
    const against = asked.dateOrder !== undefined && asked.dateOrder !== order;
    const assumed: AdapterRemark[] = against
      ? [{ code: 'date-order-asked-not-used', with: { asked: asked.dateOrder ?? '', found: order } }]
      : [];
    return { order, matters: true, certain: true, open: false, assumed };
  }
  const possible = evidence.kind === 'none' ? evidence.orders : null;
  if (stated !== null && (possible === null || possible.includes(stated))) return { ...soft, order: stated };
  if (asked.dateOrder !== undefined) return { ...soft, order: asked.dateOrder };
  if (evidence.kind === 'steps') {
    const { order } = evidence;
    return { ...soft, order, assumed: [{ code: 'date-order-by-steps', with: { order } }] };
  }
  return { ...soft, order: evidence.orders[0] ?? 'dmy', open: true };
}
