/** The end of the line for anyone who has only a plan file: it is read and sawn again. */
export { readPlan } from '../basics/readPlan.ts';
export { measurePlan, replay } from '../replay/index.ts';
