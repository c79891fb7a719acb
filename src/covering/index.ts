/**
 * Plans put together from whole sheets: `PatternRounding` turns the linear programme over patterns into sheets to cut,
 * and `coverFromPool` chooses from sheets that are known how to cut.
 */
export { type CoveringRequest, coverFromPool } from './coverFromPool.ts';
export { PatternRounding, type RoundedPatterns, type RoundingLimits } from './patternRounding.ts';
