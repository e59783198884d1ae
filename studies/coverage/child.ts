// One process of the study: gets the name of a stretch, runs it, sends back its sums.
import { CASES } from './cases.ts';
import type { Order } from './processes.ts';
import { runStretch } from './run-case.ts';

process.on('message', (order: Order) => {
  const one = CASES.find(({ id }) => id === order.caseId);
  if (!one) throw new Error(`There is no case "${order.caseId}".`);
  process.send?.({ order, tally: runStretch(one, order.stretch, order.runs) });
});
