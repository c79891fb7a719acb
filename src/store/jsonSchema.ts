import { z } from 'zod';
import { booking } from '../model/store.ts';

/**
 * The JSON Schema (draft 2020-12) of a booking, as a line of a ledger has it, as a text that ends in a line break. What the
 * bookings before it allow is not in it.
 */
export function bookingJsonSchema(): string {
  const check = z
    .string()
    .regex(/^[0-9a-f]{8}$/)
    .describe('CRC-32 of the check of the line before and of this line without its check');
  const schema = z.toJSONSchema(booking.extend({ check }), { target: 'draft-2020-12' });
  return `${JSON.stringify({ title: 'plywright store booking', ...schema }, null, 2)}\n`;
}
