import { describe, expect, it } from 'vitest';
import { ownTime } from '../../../src/rooms/terminal/clock.ts';

describe('moments in the terminal', () => {
  it('are in the time of the place, and a day stays the day it is', () => {
    const late = '2026-03-02T23:30:00.000Z';
    expect(ownTime(late, 'UTC')).toBe('2 March 2026, 23:30 UTC');
    expect(ownTime(late, 'Asia/Tokyo')).toBe('3 March 2026, 08:30 GMT+9');
    for (const zone of ['Pacific/Kiritimati', 'Pacific/Pago_Pago'])
      expect(ownTime('2026-05-31', zone)).toBe('31 May 2026');
  });
});
