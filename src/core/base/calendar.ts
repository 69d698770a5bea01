/** Days as a calendar file, iCalendar as RFC 5545 has it: the library folds and escapes. */

export interface CalendarDay {
  /** The same for the same thing whenever the file is made, so that a calendar changes it instead of having it twice. */
  readonly uid: string;
  /** YYYY-MM-DD */
  readonly day: string;
  readonly title: string;
  readonly says?: string;
}

export interface DayList {
  readonly name: string;
  readonly days: readonly CalendarDay[];
  /** When what the days say was last changed, ISO: the same things give the same file. */
  readonly changed: string;
}

/** The text of the file. Loaded when it is asked for: a single question about anything else should not wait for the library. */
export async function writeCalendar({ name, days, changed }: DayList): Promise<string> {
  const { default: calendar } = await import('ical-generator');
  const file = calendar({ name, prodId: { company: 'Loopwright', product: 'days', language: 'EN' } });
  for (const { uid, day, title, says } of days)
    file.createEvent({
      id: uid,
      start: new Date(`${day}T00:00:00Z`),
      allDay: true,
      summary: title,
      stamp: new Date(changed),
      ...(says === undefined ? {} : { description: says }),
    });
  return file.toString();
}
