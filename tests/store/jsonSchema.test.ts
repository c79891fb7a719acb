import { expect, it } from 'vitest';
import { bookingJsonSchema } from '../../src/store/jsonSchema.ts';

it('of a booking is published as it is (`vitest -u` writes it anew)', async () => {
  await expect(bookingJsonSchema()).toMatchFileSnapshot('../../schemas/booking.schema.json');
});
