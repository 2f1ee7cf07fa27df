/** The number of a calendar day (YYYY-MM-DD) since 1970-01-01, or undefined when there is no such day. */
export function dayNumber(date: string): number | undefined {
  const time = Date.parse(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(date) || Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date)
    return undefined;
  return time / 86_400_000;
}

/** The calendar day (YYYY-MM-DD) of a number of days since 1970-01-01. */
export function calendarDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}
