import { describe, expect, it } from 'vitest';
import { leastPayMassKg, PERSON_KG, payloadAccount } from '../../src/basics/payload.ts';

/**
 * Commission Regulation (EU) No 1230/2012 on masses and dimensions of motor vehicles, Annex I, part A: 2.6.2.1, a mass
 * of 75 kg for each passenger; 2.6.4.1.2, for motor caravans a pay-mass PM ≥ 10 · (n + L) kg, where n is the greatest
 * number of passengers plus the driver and L the overall length in metres. Seen as quoted by others, not in the
 * official text. EN 1646-2, as printed in owners' manuals of motor caravans, has the same sum as 10 · N + 10 · L, plus
 * 75 kg a passenger seat, the driver being in the mass in running order already. (EU) 2021/535 has replaced the
 * regulation since July 2022.
 */
describe('the least pay-mass of a motor caravan', () => {
  it.each([
    // Printed beside the rule as its example.
    ['4 persons, 7.45 m', 4, 7_450_000, 114.5],
    // Worked out from the rule for two other vehicles.
    ['4 persons, 5.99 m', 4, 5_990_000, 99.9],
    ['2 persons, 5.41 m', 2, 5_410_000, 74.1],
  ])('is 10 kg for every person and every metre: %s', (_what, persons, lengthUm, kg) => {
    expect(leastPayMassKg(persons, lengthUm)).toBe(kg);
  });

  it('grows by the same 10 kg with a person as with a metre', () => {
    expect(leastPayMassKg(3, 6_000_000)).toBe(leastPayMassKg(2, 7_000_000));
  });

  it('is kept beside 75 kg for every passenger, the driver not among them', () => {
    expect(PERSON_KG).toBe(75);
    const of = (persons: number) =>
      payloadAccount(
        { payloadKg: 500, overallLengthUm: 5_990_000 },
        { furnitureKg: 0, appliancesKg: 0 },
        { count: persons, from: 'order' },
      );
    expect(of(1).passengersKg).toBe(0);
    expect(of(4).passengersKg).toBe(225);
    expect(of(4).restKg).toBeCloseTo(500 - 225 - 99.9, 9);
  });
});
